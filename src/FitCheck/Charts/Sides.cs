using FitCheck.Catalog;
using FitCheck.Facts.Fitting;
using FitCheck.Facts.Sound;
using FitCheck.Physics.Geometry;

namespace FitCheck.Charts;

/// <summary>What a chart asks of a driver again and again.</summary>
internal sealed class DriverSide(Driver driver, int pattern)
{
    public Driver Driver => driver;
    public Term Flange { get; } = Term.Of(driver.Dimensions?.Flange);
    public Term Cutout { get; } = Term.Of(driver.Dimensions?.Cutout);
    public Term CutoutMinor { get; } = Term.Of(driver.Dimensions?.CutoutMinor);
    public Term Depth { get; } = Term.Of(driver.Dimensions?.Depth);
    public Term FrontHeight { get; } = Term.Of(driver.Dimensions?.FrontHeight);
    public Term FlangeThickness { get; } = Term.Of(driver.Dimensions?.FlangeThickness);
    /// <summary>Nothing for a tweeter.</summary>
    public Term Travel { get; } = driver.IsTweeter ? Term.Exactly(0) : Term.Of(MountingFacts.Travel(driver));
    public BodyVariants Body { get; } = BodyVariants.Of(driver);
    public double? Radius { get; } = AimFacts.Radius(driver);
    /// <summary>Drivers with the same screw holes have the same number here.</summary>
    public int Pattern => pattern;
}

/// <summary>What a chart asks of a spacer or a cup.</summary>
internal sealed class MountSide(Part part, int index)
{
    public Part Part => part;
    /// <summary>Its place in the list of all of its kind.</summary>
    public int Index => index;
    public Adapter? Adapter => part as Adapter;
    public Cup? Cup => part as Cup;
    /// <summary>Of a spacer its opening, of a cup its hole.</summary>
    public Term Opening { get; } = Term.Of(part is Adapter a ? a.Opening : ((Cup)part).Hole);
    public Term Outer { get; } = Term.Of(part is Adapter a ? a.Outer : ((Cup)part).Outer);
    public Term Depth { get; } = Term.Of((part as Cup)?.Depth);
    public Term GrilleGap { get; } = Term.Of((part as Cup)?.GrilleGap);
    public Figure? Tabs { get; } = (part as Adapter)?.TabRadius;
}

/// <summary>Something behind the panel; those with the same number stand at the same hours and from the same radius on, for the same lean.</summary>
/// <param name="Depth">Behind the mounting plane.</param>
/// <param name="Where">Its number; 0 where it stands everywhere.</param>
/// <param name="FromRadius">Where it begins.</param>
/// <param name="Reach">How deep a body reaches there, from the spacer and that radius.</param>
internal readonly record struct Thing(Term Depth, int Where, Term FromRadius, Func<BodyProfile, Mounted, double, double> Reach)
{
    /// <summary>One that stands everywhere.</summary>
    public static Thing Everywhere(Figure? depth) => new(Term.Of(depth), 0, Term.Exactly(0), static (body, on, _) => TiltedBody.DepthNeeded(body, on.Tilt.Si, on.Thickness.Si));
}

/// <summary>What a chart asks of a position.</summary>
internal sealed class PlaceSide
{
    public PlaceSide(Vehicle vehicle, Position position, Func<object, int> number)
    {
        var m = position.Mounting;
        (Vehicle, Position) = (vehicle, position);
        (Behind, GrilleGap, Recess) = (Thing.Everywhere(m.Depth), Term.Of(m.GrilleGap), Term.Of(m.Recess));
        (Cutout, CutoutMinor, LargestCutout) = (Term.Of(m.Cutout), Term.Of(m.CutoutMinor), Term.Of(m.LargestCutout));
        PanelThickness = Term.Of(m.PanelThickness, MountingFacts.UsualPanel);
        Panel = number(("panel", PanelThickness));
        Pattern = number(("holes", HolePattern.Of(m.Holes), m.CutoutMinor is not null, m.AimClock));
        Fixed = [.. m.Obstructions.Where(o => !o.Moving).Select(o => Read(o, number))];
        Moving = [.. m.Obstructions.Where(o => o.Moving).Select(o => Read(o, number))];
        (Angle, AngleIsGuess) = (Aim.Of(position, 0)?.Angle, Aim.IsEstimated(position));
    }

    public Vehicle Vehicle { get; }
    public Position Position { get; }
    /// <summary>The free depth behind the panel.</summary>
    public Thing Behind { get; }
    public Term GrilleGap { get; }
    public Term Recess { get; }
    public Term Cutout { get; }
    public Term CutoutMinor { get; }
    public Term LargestCutout { get; }
    public Thing[] Fixed { get; }
    public Thing[] Moving { get; }
    public Term PanelThickness { get; }
    /// <summary>Panels of the same thickness have the same number here.</summary>
    public int Panel { get; }
    /// <summary>Places with the same screw holes, turned by the same lean, have the same number here.</summary>
    public int Pattern { get; }
    /// <summary>Between the panel's axis and the line to the listener, radians.</summary>
    public double? Angle { get; }
    public bool AngleIsGuess { get; }

    private Thing Read(Obstruction o, Func<object, int> number)
    {
        if (MountingFacts.StandsEverywhere(Position, o))
            return Thing.Everywhere(o.Depth);
        var radius = Term.Of(o.FromRadius, 0);
        var (sector, aim) = (MountingFacts.Sector(Position, o), Position.Mounting.AimClock ?? 0);
        return new Thing(Term.Of(o.Depth), number(("thing", radius, sector, Position.Mounting.AimClock)), radius,
            (body, on, from) => TiltedBody.DepthNeededInSector(body, on.Tilt.Si, on.Thickness.Si, from, aim, sector) ?? 0);
    }
}

/// <summary>Screw holes by value: two with the same figures are the same.</summary>
internal static class HolePattern
{
    public static string Of(HoleCircle? holes) => holes is null ? ""
        : string.Create(System.Globalization.CultureInfo.InvariantCulture, $"{holes.Circle.Si:R} {holes.Circle.IsEstimated} {holes.Slot?.Si:R} {string.Join(' ', holes.Angles)}");
}
