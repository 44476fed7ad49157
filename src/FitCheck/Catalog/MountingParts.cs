using FitCheck.Foundation.Problems;
using FitCheck.Physics.Geometry;
using FitCheck.Physics.Quantities;
using FitCheck.Yaml;

namespace FitCheck.Catalog;

/// <summary>A mounting adapter or spacer between the panel and the driver.</summary>
internal sealed record Adapter : Part
{
    internal Adapter(Fields f) : base(f)
    {
        Thickness = f.Length("thickness");
        Tilt = f.Figure("tilt", Dimension.Radian);
        // A right angle has no thickness in the middle; how much is usual is for the rules to say.
        if (Tilt is { } tilt && (tilt.Si < 0 || tilt.Si + tilt.HalfWidth >= Math.PI / 2))
        {
            f.Problems.Error(tilt.At, "a spacer's faces stand at an angle from 0 deg to less than 90 deg, with its tolerance too, "
                + $"found `{f.Word("tilt")}`", ProblemKind.WrongShape);
        }
        Handed = f.Text("handed")?.Value;
        Opening = f.Length("opening");
        OpeningMinor = f.Length("opening_minor");
        FigureOrder.Axes(f, "opening", Opening, OpeningMinor);
        Outer = f.Length("outer");
        OuterMinor = f.Length("outer_minor");
        Material = f.Text("material");
        Cuttable = f.Truth("cuttable");
        TabRadius = f.Inner("inner_tabs")?.Length("radius");
        HasTabs = f.Inner("inner_tabs") is not null ? true : f.Word("inner_tabs") == FilterRange.None ? false : null;
        TabsRemovable = f.Inner("inner_tabs")?.Truth("removable");
        CableExit = f.Truth("cable_exit");
        BossDepth = f.Length("boss_depth");
        Screw = f.Length("screw");
        VehicleHoles = HoleCircle.Read(f.Inner("vehicle_holes"));
        HasVehicleHoles = VehicleHoles is not null ? true : f.Word("vehicle_holes") == FilterRange.None ? false : null;
        DriverHoles = [.. f.Each("driver_holes").Select(HoleCircle.Read).OfType<HoleCircle>()];
        HasDriverHoles = f.Map["driver_holes"] is null ? null : DriverHoles.Count > 0;
        (Fits, IsUniversal) = (Fit.Read(f), Fit.IsAny(f));
    }

    /// <summary>At the centre.</summary>
    public Figure? Thickness { get; }
    /// <summary>Between its faces; null when not recorded, which is not flat.</summary>
    public Figure? Tilt { get; }
    /// <summary>`left`, `right` or `no`; null when not recorded.</summary>
    public string? Handed { get; }
    public Figure? Opening { get; }
    public Figure? OpeningMinor { get; }
    public Figure? Outer { get; }
    public Figure? OuterMinor { get; }
    public Located<string>? Material { get; }
    public bool? Cuttable { get; }
    public Figure? TabRadius { get; }
    /// <summary>Whether tabs stand into its opening; null when not recorded.</summary>
    public bool? HasTabs { get; }
    public bool? TabsRemovable { get; }
    public bool? CableExit { get; }
    /// <summary>How deep the driver's screws find hold in it.</summary>
    public Figure? BossDepth { get; }
    /// <summary>Diameter of the screws for which its bosses are bored.</summary>
    public Figure? Screw { get; }
    /// <summary>The holes on the vehicle's face; null when they are for the fitter to drill, and when not recorded.</summary>
    public HoleCircle? VehicleHoles { get; }
    /// <summary>Whether the vehicle's face has holes; null when not recorded.</summary>
    public bool? HasVehicleHoles { get; }
    /// <summary>Whether the driver's face has holes; null when not recorded.</summary>
    public bool? HasDriverHoles { get; }
    /// <summary>The patterns on the driver's face; empty when they are for the fitter to drill, and when not recorded.</summary>
    public IReadOnlyList<HoleCircle> DriverHoles { get; }
    public IReadOnlyList<Fit> Fits { get; }
    /// <summary>True when it is written that it is made for no vehicle in particular.</summary>
    public bool IsUniversal { get; }
}

/// <summary>Screw holes on one circle.</summary>
/// <param name="Circle">Diameter of the circle, metres.</param>
/// <param name="Angles">Degrees clockwise from the top, seen from the listener, in the order of the file.</param>
/// <param name="Slot">Length of each hole along the radius, metres; null when none is written.</param>
/// <param name="Screw">Diameter of the screws, metres; null when not recorded.</param>
/// <param name="At">Where they are written.</param>
public sealed record HoleCircle(Figure Circle, IReadOnlyList<double> Angles, Figure? Slot, Figure? Screw, Foundation.Problems.Location At)
{
    /// <summary>Circle, slot and angles in metres and radians.</summary>
    public BoltPattern Pattern { get; } = new(Circle.Si / 2, Slot?.Si ?? 0, [.. Angles.Select(a => a * Math.PI / 180)]);

    /// <summary>True while the angles are those of another vehicle, and nobody counted the holes of this one.</summary>
    internal bool AreAnglesTakenOver { get; init; }

    internal static HoleCircle? Read(Fields? f)
    {
        if (f?.Length("circle") is not { Si: > 0 } circle || f.Numbers("angles") is not { Count: > 0 } angles)
            return null;
        var takenOver = f.Map["angles"] is YamlList { Items: [YamlScalar { IsTakenOver: true }, ..] };
        if (f.Count("count") is { } count && count != angles.Count)
        {
            // So many stand elsewhere.
            if (takenOver)
                return null;
            f.Problems.Error(f.Text("count")!.At, $"`count` says {count} holes, and `angles` has {angles.Count}", ProblemKind.WrongShape);
        }
        return new HoleCircle(circle, angles, f.Length("slot") is { Si: >= 0 } slot ? slot : null, f.Length("screw"), f.At)
        { AreAnglesTakenOver = takenOver && f.Map["count"] is null };
    }
}

/// <summary>A cup that holds a tweeter in the vehicle's place for it.</summary>
internal sealed record Cup : Part
{
    internal Cup(Fields f) : base(f)
    {
        Hole = f.Length("hole");
        Depth = f.Length("depth");
        Outer = f.Length("outer");
        GrilleGap = f.Length("grille_gap");
        FlangeRecess = f.Length("flange_recess");
        Cutout = f.Length("cutout");
        Material = f.Text("material");
        Cuttable = f.Truth("cuttable");
        ModuleRoom = f.Figures("module_room", Dimension.Metre);
        (Fits, IsUniversal) = (Fit.Read(f), Fit.IsAny(f));
    }

    public Figure? Hole { get; }
    public Figure? Depth { get; }
    public Figure? Outer { get; }
    public Figure? GrilleGap { get; }
    /// <summary>Diameter of the seat into which the tweeter's flange sinks.</summary>
    public Figure? FlangeRecess { get; }
    /// <summary>The hole that it needs in the panel: for its body, or of a cup that stands before the panel for its cable alone.</summary>
    public Figure? Cutout { get; }
    /// <summary>True when it stands before the panel, with the tweeter in it.</summary>
    public bool StandsBefore => Cutout is { } needed && Hole is { } hole && needed.Si < hole.Si / 2;
    public Located<string>? Material { get; }
    public bool? Cuttable { get; }
    public IReadOnlyList<Figure> ModuleRoom { get; }
    public IReadOnlyList<Fit> Fits { get; }
    /// <summary>True when it is written that it is made for no vehicle in particular.</summary>
    public bool IsUniversal { get; }
}

/// <summary>A harness adapter: the factory plug on one end, the driver's terminals on the other.</summary>
internal sealed record Harness : Part
{
    internal Harness(Fields f) : base(f)
    {
        From = f.Text("from");
        To = Terminals.Read(f.Inner("to"));
        Length = f.Length("length");
        Polarity = f.Text("polarity");
    }

    public Located<string>? From { get; }
    public Terminals? To { get; }
    public Figure? Length { get; }
    public Located<string>? Polarity { get; }
}
