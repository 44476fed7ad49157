using FitCheck.Catalog;
using FitCheck.Facts.Fitting;
using FitCheck.Facts.Sound;
using FitCheck.Facts.Values;

namespace FitCheck.Charts.BestMount;

/// <summary>What a chart asks of a position.</summary>
internal sealed class ChartedPlace
{
    public ChartedPlace(Vehicle vehicle, Position position, Practice practice, Func<object, int> number)
    {
        var m = position.Mounting;
        (Vehicle, Position) = (vehicle, position);
        (Behind, GrilleGap, Recess) = (ObstacleBehind.Of(position, null, number), LengthTerm.Of(m.GrilleGap), LengthTerm.Of(m.Recess));
        RecessMinor = LengthTerm.Of(m.RecessMinor);
        (Cutout, CutoutMinor, LargestCutout) = (LengthTerm.Of(m.Cutout), LengthTerm.Of(m.CutoutMinor), LengthTerm.Of(m.LargestCutout));
        PanelThickness = LengthTerm.Of(m.PanelThickness, practice.PanelThickness);
        Panel = number(("panel", PanelThickness));
        Pattern = number(("holes", HolePattern.Of(m.Holes), m.CutoutMinor is not null, m.AimClock));
        Fixed = Array.ConvertAll(m.Behind(moving: false), o => ObstacleBehind.Of(position, o, number));
        Moving = Array.ConvertAll(m.Behind(moving: true), o => ObstacleBehind.Of(position, o, number));
        HasThingsBeside = Array.Exists(Fixed, o => o.IsAside) || Array.Exists(Moving, o => o.IsAside) ? true
            : m.AreObstructionsRecorded ? false : null;
        (Angle, AngleIsGuess) = (Aim.Of(position, 0)?.Angle, Aim.IsEstimated(position));
    }

    public Vehicle Vehicle { get; }
    public Position Position { get; }
    /// <summary>The free depth behind the panel.</summary>
    public ObstacleBehind Behind { get; }
    public LengthTerm GrilleGap { get; }
    public LengthTerm Recess { get; }
    public LengthTerm RecessMinor { get; }
    public LengthTerm Cutout { get; }
    public LengthTerm CutoutMinor { get; }
    public LengthTerm LargestCutout { get; }
    public ObstacleBehind[] Fixed { get; }
    public ObstacleBehind[] Moving { get; }
    /// <summary>Whether anything behind begins at a radius; null where nobody has looked.</summary>
    public bool? HasThingsBeside { get; }
    public LengthTerm PanelThickness { get; }
    /// <summary>Panels of the same thickness have the same number here.</summary>
    public int Panel { get; }
    /// <summary>Places with the same screw holes, turned by the same lean, have the same number here.</summary>
    public int Pattern { get; }
    /// <summary>Between the panel's axis and the line to the listener, radians.</summary>
    public double? Angle { get; }
    public bool AngleIsGuess { get; }
}
