using FitCheck.Catalog;
using FitCheck.Facts.Contexts;
using FitCheck.Facts.Values;
using FitCheck.Physics.Geometry;
using FitCheck.Physics.Quantities;

namespace FitCheck.Facts.Fitting;

/// <summary>Depth behind the panel, height before it, the hole, the flange: the tilted stack-up of driver, spacer and vehicle.</summary>
internal static class MountingFacts
{
    /// <summary>Thickness in metres that a panel counts as where nobody recorded it (common practice, no source).</summary>
    internal const double UsualPanel = 1e-3;

    private const string Gauge = "Take the door card off, run the window fully down, and measure from the mounting plane with a depth gauge.";
    private const string FrontGauge = "Fit the door card and measure from the mounting plane to the back of the grille, with modelling clay or a depth gauge.";
    private const string Calliper = "Measure with a calliper, in two directions.";

    private static readonly FactGroup OfSpacer = new(Subject.Position);

    public static readonly NumberFact AdapterThickness = OfSpacer.Number(
        "adapter_thickness", Dimension.Metre, "Thickness of the spacer at its centre.",
        Reads.Mounted.Itself, Reads.Adapter["thickness"]);
    public static readonly NumberFact AdapterTilt = OfSpacer.Number(
        "adapter_tilt", Dimension.Radian, "Angle between the spacer's two faces.",
        Reads.Mounted.Itself, Reads.Adapter["tilt"]);

    private static readonly FactGroup OfDepth = new(Subject.Position);

    public static readonly NumberFact DepthNeeded = OfDepth.Number(
        "depth_needed", Dimension.Metre, "How far the tilted driver on its spacer reaches behind the mounting plane.",
        Reads.Mounted.Itself,
        Reads.Driver["dimensions.cutout", "dimensions.depth", "dimensions.magnet_diameter", "dimensions.magnet_height", "dimensions.profile"],
        Reads.Adapter["thickness", "tilt"]);
    public static readonly NumberFact DepthAvailable = OfDepth.Number(
        "depth_available", Dimension.Metre, "Depth behind the mounting plane before the nearest fixed thing.",
        Reads.Mounted.Itself, Reads.Place["mounting.depth"],
        Reads.Measured["fit.measured.depth"]);
    public static readonly NumberFact DepthMargin = OfDepth.Number(
        "depth_margin", Dimension.Metre, "Least clearance behind the driver to anything fixed.",
        Reads.Mounted.Itself,
        Reads.Driver["dimensions.cutout", "dimensions.depth", "dimensions.magnet_diameter", "dimensions.magnet_height", "dimensions.profile"],
        Reads.Adapter["thickness", "tilt"],
        Reads.Place["mounting.depth", "mounting.aim_clock", "mounting.obstructions"],
        Reads.Measured["fit.measured.depth"]);
    public static readonly TruthFact HasGlass = OfDepth.Truth(
        "has_glass", "A window glass or another moving thing stands behind the panel.",
        Reads.Mounted.Itself, Reads.Place["mounting.obstructions"]);
    public static readonly NumberFact GlassDepth = OfDepth.Number(
        "glass_depth", Dimension.Metre, "Depth behind the mounting plane before the moving glass, fully down.",
        Reads.Mounted.Itself, Reads.Place["mounting.obstructions"]);
    public static readonly NumberFact GlassMargin = OfDepth.Number(
        "glass_margin", Dimension.Metre, "Least clearance behind the driver to the moving glass, fully down.",
        Reads.Mounted.Itself,
        Reads.Driver["dimensions.cutout", "dimensions.depth", "dimensions.magnet_diameter", "dimensions.magnet_height", "dimensions.profile"],
        Reads.Adapter["thickness", "tilt"], Reads.Place["mounting.obstructions"]);

    private static readonly FactGroup OfFront = new(Subject.Position);

    public static readonly NumberFact FrontNeeded = OfFront.Number(
        "front_needed", Dimension.Metre, "Height that spacer, flange, surround and travel take up before the mounting plane.",
        Reads.Mounted.Itself,
        Reads.Driver["dimensions.flange", "dimensions.flange_thickness", "dimensions.front_height", "parameters.xmax"],
        Reads.Adapter["thickness", "tilt"]);
    public static readonly NumberFact FrontAvailable = OfFront.Number(
        "front_available", Dimension.Metre, "Gap from the mounting plane to the back of the grille.",
        Reads.Mounted.Itself, Reads.Place["mounting.grille_gap"],
        Reads.Measured["fit.measured.grille_gap"]);
    public static readonly NumberFact FrontMargin = OfFront.Number(
        "front_margin", Dimension.Metre, "Clearance between the moving driver and the grille.",
        Reads.Mounted.Itself,
        Reads.Driver["dimensions.flange", "dimensions.flange_thickness", "dimensions.front_height", "parameters.xmax"],
        Reads.Adapter["thickness", "tilt"], Reads.Place["mounting.grille_gap"],
        Reads.Measured["fit.measured.grille_gap"]);

    private static readonly FactGroup OfHole = new(Subject.Position);

    public static readonly NumberFact HoleNeeded = OfHole.Number(
        "hole_needed", Dimension.Metre, "Diameter of the panel's hole that the tilted body needs at its worst clock angle.",
        Reads.Mounted.Itself, Reads.Driver["dimensions"], Reads.Adapter["thickness", "tilt"], Reads.Place.Itself);
    public static readonly NumberFact HoleAvailable = OfHole.Number(
        "hole_available", Dimension.Metre, "Diameter of the hole in the panel; the short axis when it is oval and the driver round.",
        Reads.Mounted.Itself, Reads.Driver["dimensions.cutout_minor"], Reads.Place["mounting.cutout", "mounting.cutout_minor"],
        Reads.Measured["fit.measured.cutout"]);
    public static readonly NumberFact HoleMargin = OfHole.Number(
        "hole_margin", Dimension.Metre, "Diameter that the panel's hole has to spare around the body.",
        Reads.Mounted.Itself, Reads.Driver["dimensions"], Reads.Adapter["thickness", "tilt"],
        Reads.Place["mounting.cutout", "mounting.cutout_minor"],
        Reads.Measured["fit.measured.cutout"]);
    public static readonly NumberFact LargestHoleMargin = OfHole.Number(
        "largest_hole_margin", Dimension.Metre, "Diameter to spare when the hole is enlarged as far as the panel allows.",
        Reads.Mounted.Itself, Reads.Driver["dimensions"], Reads.Adapter["thickness", "tilt"], Reads.Place["mounting.largest_cutout"]);

    private static readonly FactGroup OfFlange = new(Subject.Position);

    public static readonly NumberFact OpeningMargin = OfFlange.Number(
        "opening_margin", Dimension.Metre, "Diameter that the spacer's opening has to spare around the driver's cutout.",
        Reads.Mounted.Itself, Reads.Driver["dimensions.cutout"], Reads.Adapter["opening"]);
    public static readonly NumberFact TabMargin = OfFlange.Number(
        "tab_margin", Dimension.Metre, "Diameter between the spacer's inner tabs to spare around the driver's cutout.",
        Reads.Mounted.Itself, Reads.Driver["dimensions.cutout"], Reads.Adapter["inner_tabs.radius"]);
    public static readonly NumberFact FlangeMargin = OfFlange.Number(
        "flange_margin", Dimension.Metre, "Diameter that the recess or trim ring has to spare around the driver's flange.",
        Reads.Mounted.Itself, Reads.Driver["dimensions.flange"], Reads.Place["mounting.recess"]);
    public static readonly NumberFact AdapterRecessMargin = OfFlange.Number(
        "adapter_recess_margin", Dimension.Metre, "Diameter that the recess or trim ring has to spare around the spacer.",
        Reads.Mounted.Itself, Reads.Adapter["outer"], Reads.Place["mounting.recess"]);
    public static readonly NumberFact FlangeOverlap = OfFlange.Number(
        "flange_overlap", Dimension.Metre, "Width on which the driver's flange rests beyond the hole under it.",
        Reads.Mounted.Itself, Reads.Driver["dimensions.flange"], Reads.Adapter["opening"],
        Reads.Under["adapter.opening", "position.mounting.cutout"],
        Reads.Measured["fit.measured.cutout"]);
    public static readonly NumberFact AdapterOverlap = OfFlange.Number(
        "adapter_overlap", Dimension.Metre, "Width on which the spacer rests beyond the hole in the panel.",
        Reads.Mounted.Itself, Reads.Adapter["outer"], Reads.Place["mounting.cutout"],
        Reads.Measured["fit.measured.cutout"]);

    public static readonly IReadOnlyList<Fact> Declarations = [.. OfSpacer, .. OfDepth, .. OfFront, .. OfHole, .. OfFlange];

    /// <summary>What is worked out together; each for itself, as who asks for the hole does not need the depth.</summary>
    public static readonly IReadOnlyList<(IReadOnlyList<Fact> Declarations, Action<PositionContext, FactSheet> Compute)> Parts =
    [
        (OfSpacer, Spacer), (OfDepth, Behind), (OfFront, Before), (OfHole, Hole), (OfFlange, Flange),
    ];

    public static void Compute(PositionContext c, FactSheet sheet)
    {
        foreach (var (_, compute) in Parts)
            compute(c, sheet);
    }

    private static bool IsMounted(PositionContext c) => c.Driver is not null && c.Cup is null;

    private static void Spacer(PositionContext c, FactSheet sheet)
    {
        if (!IsMounted(c) || c.Adapter is not { } adapter)
            return;
        sheet.Set(AdapterThickness, adapter.Thickness?.Si);
        sheet.Set(AdapterTilt, adapter.Tilt?.Si ?? 0);
    }

    private static void Behind(PositionContext c, FactSheet sheet)
    {
        if (!IsMounted(c))
            return;
        var needs = new Stack(Dimension.Metre);
        sheet.Set(DepthNeeded, needs.Of(Reach(c, needs, null)));
        var fixedThings = c.Position.Mounting.Obstructions.Where(o => !o.Moving).ToList();
        var moving = c.Position.Mounting.Obstructions.Where(o => o.Moving).ToList();
        var available = new Stack(Dimension.Metre);
        var depth = available.Need(c.AtPosition("free depth behind the panel"), Gauge, c.Placed.Depth);
        sheet.Set(DepthAvailable, available.Of(v => v[depth]));
        var margins = new List<FactValue> { Margin(c, c.AtPosition("free depth behind the panel"), c.Placed.Depth, null) };
        margins.AddRange(fixedThings.Select(o => Margin(c, c.AtPosition($"depth to the {o.Name}"), o.Depth, o)));
        sheet.Set(DepthMargin, Least(margins));
        sheet.Set(HasGlass, moving.Count > 0);
        if (moving.Count == 0)
            return;
        var glass = moving.MinBy(o => o.Depth?.Si ?? 0)!;
        sheet.Set(GlassDepth, glass.Depth?.Si);
        sheet.Set(GlassMargin, Least([.. moving.Select(o => Margin(c, c.AtPosition($"depth to the {o.Name}, fully down"), o.Depth, o))]));
    }

    /// <summary>True when a thing stands at every hour and from the middle on, so that the whole depth of the driver counts.</summary>
    internal static bool StandsEverywhere(Position position, Obstruction? thing) => thing?.FromRadius is not { Si: > 0 } && Sector(position, thing).IsWhole;

    /// <summary>The part of the clock face that a thing takes up; all of it where nobody recorded which way the driver leans.</summary>
    internal static ClockSector Sector(Position position, Obstruction? thing) =>
        thing is { FromClock: { } first, ToClock: { } last } && position.Mounting.AimClock is not null ? new ClockSector(first, last) : ClockSector.All;

    private static FactValue Margin(PositionContext c, string what, Figure? depth, Obstruction? thing)
    {
        var stack = new Stack(Dimension.Metre);
        var there = stack.Need(what, Gauge, depth);
        var reach = Reach(c, stack, thing);
        return stack.Of(v => v[there] - reach(v));
    }

    // Where nothing of the body is as far out as the obstruction or at its hours, the whole depth is free. A tilt whose direction nobody recorded counts as
    // pointing anywhere.
    private static Func<double[], double> Reach(PositionContext c, Stack stack, Obstruction? thing)
    {
        var body = BodyFacts.Inputs(c.Size, c.OfDriver, stack);
        var thickness = Thickness(c, stack);
        var tilt = Tilt(c, stack);
        var sector = Sector(c.Position, thing);
        if (StandsEverywhere(c.Position, thing))
            return v => TiltedBody.DepthNeeded(body(v), v[tilt], v[thickness]);
        var aim = c.Position.Mounting.AimClock ?? 0;
        var radius = stack.Optional(c.AtPosition("radius from which the obstruction stands"), Gauge, thing!.FromRadius, 0);
        return v => TiltedBody.DepthNeededInSector(body(v), v[tilt], v[thickness], v[radius], aim, sector) ?? 0;
    }

    private static void Before(PositionContext c, FactSheet sheet)
    {
        if (!IsMounted(c))
            return;
        var needs = new Stack(Dimension.Metre);
        sheet.Set(FrontNeeded, needs.Of(Front(c, needs)));
        sheet.Set(FrontAvailable, c.Placed.GrilleGap?.Si);
        var margin = new Stack(Dimension.Metre);
        var gap = margin.Need(c.AtPosition("gap from the panel to the grille"), FrontGauge, c.Placed.GrilleGap);
        var taken = Front(c, margin);
        sheet.Set(FrontMargin, margin.Of(v => v[gap] - taken(v)));
    }

    private static Func<double[], double> Front(PositionContext c, Stack stack)
    {
        const string sheet = "Read it from the maker's drawing, or measure the driver.";
        var thickness = Thickness(c, stack);
        var tilt = Tilt(c, stack);
        var flange = stack.Need(c.OfDriver("flange thickness"), sheet, c.Size?.FlangeThickness);
        var front = stack.Need(c.OfDriver("height before the flange"), sheet, c.Size?.FrontHeight);
        var radius = stack.Need(c.OfDriver("flange diameter"), sheet, c.Size?.Flange);
        // A tweeter's travel is nothing; a woofer's is its peak linear excursion.
        var travel = c.Driver!.IsTweeter ? stack.Optional("travel", sheet, null, 0) : stack.Need(c.OfDriver("peak linear excursion"), sheet, Travel(c.Driver));
        return v => TiltedBody.FrontReach(v[thickness], v[flange], v[front], v[radius] / 2, v[travel], v[tilt]);
    }

    /// <summary>A woofer's travel: a limit that the maker states, not a length that someone measured on the part.</summary>
    internal static Figure? Travel(Driver driver) =>
        driver.Parameters?.Xmax is { } limit ? limit with { Quantity = limit.Quantity with { Tolerance = limit.Quantity.Tolerance ?? 0 } } : null;

    private static void Hole(PositionContext c, FactSheet sheet)
    {
        if (!IsMounted(c))
            return;
        var needs = new Stack(Dimension.Metre);
        sheet.Set(HoleNeeded, needs.Of(HoleNeededOf(c, needs)));
        // A round body in an oval hole is held by the short axis.
        var shortAxis = c.Size?.CutoutMinor is null && c.Placed.MeasuredCutout is null ? c.Position.Mounting.CutoutMinor : null;
        var hole = shortAxis ?? c.Placed.Cutout;
        sheet.Set(HoleAvailable, hole?.Si);
        sheet.Set(HoleMargin, HoleMarginOf(c, hole, c.AtPosition(shortAxis is null ? "diameter of the hole in the panel" : "short axis of the hole in the panel")));
        if (c.Position.Mounting.LargestCutout is { } largest)
            sheet.Set(LargestHoleMargin, HoleMarginOf(c, largest, c.AtPosition("largest hole that the panel allows")));
    }

    private static FactValue HoleMarginOf(PositionContext c, Figure? hole, string what)
    {
        var major = new Stack(Dimension.Metre);
        var there = major.Need(what, Calliper, hole);
        var diameter = HoleNeededOf(c, major);
        var margin = major.Of(v => v[there] - diameter(v));
        // An oval's short axis is checked on its own, straight through; a flat position without a short axis is round.
        if (c.Size?.CutoutMinor is not { } bodyMinor)
            return margin;
        var minor = new Stack(Dimension.Metre);
        var holeMinor = minor.Need(c.AtPosition("short axis of the hole in the panel"), Calliper, c.Position.Mounting.CutoutMinor ?? c.Placed.Cutout);
        var need = minor.Need(c.OfDriver("short axis of the cutout"), Calliper, bodyMinor);
        return Least([margin, minor.Of(v => v[holeMinor] - v[need])]);
    }

    private static Func<double[], double> HoleNeededOf(PositionContext c, Stack stack)
    {
        // Straight on the panel, the maker's cutout is what the hole must have, whatever the body behind it looks like.
        if (c.Adapter is null)
        {
            var cutout = stack.Need(c.OfDriver("cutout diameter"), Calliper, c.Size?.Cutout);
            return v => v[cutout];
        }
        var body = BodyFacts.Inputs(c.Size, c.OfDriver, stack);
        var thickness = Thickness(c, stack);
        var tilt = Tilt(c, stack);
        var panel = stack.Optional(c.AtPosition("thickness of the panel"), Calliper, c.Position.Mounting.PanelThickness, UsualPanel);
        return v => 2 * TiltedBody.HoleRadiusNeeded(body(v), v[tilt], v[thickness], v[panel]);
    }

    private static void Flange(PositionContext c, FactSheet sheet)
    {
        if (!IsMounted(c))
            return;
        if (c.Adapter is { } adapter)
        {
            sheet.Set(OpeningMargin, Difference(("diameter of the spacer's opening", adapter.Opening), (c.OfDriver("cutout diameter"), c.Size?.Cutout)));
            if (adapter.TabRadius is { } tabs)
            {
                var stack = new Stack(Dimension.Metre);
                var radius = stack.Need("radius of the spacer's inner tabs", Calliper, tabs);
                var cutout = stack.Need(c.OfDriver("cutout diameter"), Calliper, c.Size?.Cutout);
                sheet.Set(TabMargin, stack.Of(v => (2 * v[radius]) - v[cutout]));
            }
            sheet.Set(FlangeOverlap, Half(Difference((c.OfDriver("flange diameter"), c.Size?.Flange), ("diameter of the spacer's opening", adapter.Opening))));
            sheet.Set(AdapterRecessMargin, Difference((c.AtPosition("diameter of the recess or trim ring"), c.Position.Mounting.Recess), ("outer diameter of the spacer", adapter.Outer)));
            sheet.Set(AdapterOverlap, Half(Difference(("outer diameter of the spacer", adapter.Outer), (c.AtPosition("diameter of the hole in the panel"), c.Placed.Cutout))));
        }
        else
        {
            sheet.Set(FlangeOverlap, Half(Difference((c.OfDriver("flange diameter"), c.Size?.Flange), (c.AtPosition("diameter of the hole in the panel"), c.Placed.Cutout))));
        }
        sheet.Set(FlangeMargin, Difference((c.AtPosition("diameter of the recess or trim ring"), c.Position.Mounting.Recess), (c.OfDriver("flange diameter"), c.Size?.Flange)));
    }

    private static FactValue Difference((string What, Figure? Figure) a, (string What, Figure? Figure) b)
    {
        var stack = new Stack(Dimension.Metre);
        var x = stack.Need(a.What, Calliper, a.Figure);
        var y = stack.Need(b.What, Calliper, b.Figure);
        return stack.Of(v => v[x] - v[y]);
    }

    private static FactValue Half(FactValue full) => full.Number is { } n
        ? full with { Number = n * Uncertain.Exact(0.5), Unsure = [.. full.Unsure.Select(Halved)], Rereadings = full.Rereadings?.Select(Halved) }
        : full with { Unsure = [.. full.Unsure.Select(Halved)] };

    private static Unsure Halved(Unsure unsure) => unsure with { Passing = Halved(unsure.Passing) };

    private static Func<PassLimit, string?>? Halved(Func<PassLimit, string?>? passing) =>
        passing is null ? null : limit => passing(limit with { Limit = 2 * limit.Limit });

    private static int Thickness(PositionContext c, Stack stack) => c.Adapter is { } a
        ? stack.Need("thickness of the spacer", Calliper, a.Thickness)
        : stack.Optional("thickness of the spacer", Calliper, null, 0);

    private static int Tilt(PositionContext c, Stack stack) => stack.Optional("tilt of the spacer", Calliper, c.Adapter?.Tilt, 0);

    /// <summary>The smallest of several margins; unknown when one of them is unknown, unless a known one is certainly worse than nothing.</summary>
    internal static FactValue Least(IReadOnlyList<FactValue> margins)
    {
        var known = margins.Where(m => m.Number is not null).ToList();
        var unsure = margins.SelectMany(m => m.Unsure).DistinctBy(u => u.What).ToList();
        var data = margins.SelectMany(m => m.Data).Distinct().ToList();
        // A part that certainly hits one thing does not need the distance to another measured.
        if (known.Count < margins.Count && known.All(m => m.Number!.Value.High >= 0))
            return FactValue.Unknown(margins[0].Type, [.. unsure.Where(u => !u.Estimated)]) with { Data = data };
        var least = known.MinBy(m => m.Number!.Value.Low)!;
        return FactValue.Of(least.Type.Dimension, least.Number!.Value) with { Unsure = [.. unsure.Where(u => u.Estimated)], Data = least.Data, Rereadings = least.Rereadings };
    }
}
