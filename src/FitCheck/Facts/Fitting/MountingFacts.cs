using FitCheck.Catalog;
using FitCheck.Facts.Contexts;
using FitCheck.Facts.Values;
using FitCheck.Physics.Quantities;
using Formulas = FitCheck.Facts.Fitting.MountingFormulas<
    FitCheck.Facts.Fitting.PositionLengths, FitCheck.Facts.Fitting.StackedLength, FitCheck.Catalog.Obstruction?>;

namespace FitCheck.Facts.Fitting;

/// <summary>Depth behind the panel, height before it, the hole, the flange: the tilted stack-up of driver, spacer and vehicle.</summary>
internal static class MountingFacts
{
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
        Reads.Driver["dimensions.cutout", "dimensions.depth", "dimensions.magnet_diameter", "dimensions.magnet_height",
            "dimensions.profile"],
        Reads.Adapter["thickness", "tilt"]);
    public static readonly NumberFact DepthAvailable = OfDepth.Number(
        "depth_available", Dimension.Metre, "Depth behind the mounting plane, to the nearest fixed thing.",
        Reads.Mounted.Itself, Reads.Place["mounting.depth"],
        Reads.Measured["fit.measured.depth"]);
    public static readonly NumberFact DepthMargin = OfDepth.Number(
        "depth_margin", Dimension.Metre, "Least clearance behind the driver to anything fixed.",
        Reads.Mounted.Itself,
        Reads.Driver["dimensions.cutout", "dimensions.depth", "dimensions.magnet_diameter", "dimensions.magnet_height",
            "dimensions.profile"],
        Reads.Adapter["thickness", "tilt"],
        Reads.Place["mounting.depth", "mounting.aim_clock", "mounting.obstructions"],
        Reads.Measured["fit.measured.depth"]);
    public static readonly TruthFact HasGlass = OfDepth.Truth(
        "has_glass", "A window glass or another moving thing stands behind the panel.",
        Reads.Mounted.Itself, Reads.Place["mounting.obstructions"])
        .Saying("no glass");
    public static readonly NumberFact GlassDepth = OfDepth.Number(
        "glass_depth", Dimension.Metre, "Depth behind the mounting plane, to the window glass when it is fully down.",
        Reads.Mounted.Itself, Reads.Place["mounting.obstructions"]);
    public static readonly NumberFact GlassMargin = OfDepth.Number(
        "glass_margin", Dimension.Metre, "Least clearance behind the driver to the window glass when it is fully down.",
        Reads.Mounted.Itself,
        Reads.Driver["dimensions.cutout", "dimensions.depth", "dimensions.magnet_diameter", "dimensions.magnet_height",
            "dimensions.profile"],
        Reads.Adapter["thickness", "tilt"], Reads.Place["mounting.obstructions"]);

    public static readonly TruthFact HasThingsBeside = OfDepth.Truth(
        "has_things_beside", "Something behind the panel begins at a radius, so that the driver may stand beside it.",
        Reads.Mounted.Itself, Reads.Place["mounting.obstructions"])
        .Saying("nothing begins at a radius");
    public static readonly NumberFact SideMargin = OfDepth.Number(
        "side_margin", Dimension.Metre,
        "Least room sideways between the driver, where it is deep enough to meet it, and anything that begins at a radius.",
        Reads.Mounted.Itself,
        Reads.Driver["dimensions.cutout", "dimensions.depth", "dimensions.magnet_diameter", "dimensions.magnet_height",
            "dimensions.profile"],
        Reads.Adapter["thickness", "tilt"], Reads.Place["mounting.obstructions"]);

    private static readonly FactGroup OfFront = new(Subject.Position);

    public static readonly NumberFact FrontNeeded = OfFront.Number(
        "front_needed", Dimension.Metre, "Height that spacer, flange, surround and travel take up in front of the mounting plane.",
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
        Reads.Mounted.Itself, Reads.Driver["shape"], Reads.Place["mounting.cutout", "mounting.cutout_minor"],
        Reads.Measured["fit.measured.cutout"]);
    public static readonly NumberFact HoleMargin = OfHole.Number(
        "hole_margin", Dimension.Metre, "Diameter that the panel's hole has to spare around the body.",
        Reads.Mounted.Itself, Reads.Driver["dimensions", "shape"], Reads.Adapter["thickness", "tilt"],
        Reads.Place["mounting.cutout", "mounting.cutout_minor", "mounting.panel_thickness"],
        Reads.Measured["fit.measured.cutout"]);
    public static readonly NumberFact LargestHoleMargin = OfHole.Number(
        "largest_hole_margin", Dimension.Metre, "Diameter to spare when the hole is enlarged as far as the panel allows.",
        Reads.Mounted.Itself, Reads.Driver["dimensions", "shape"], Reads.Adapter["thickness", "tilt"],
        Reads.Place["mounting.cutout", "mounting.cutout_minor", "mounting.largest_cutout", "mounting.panel_thickness"],
        Reads.Measured["fit.measured.cutout"]);

    private static readonly FactGroup OfFlange = new(Subject.Position);

    public static readonly NumberFact OpeningMargin = OfFlange.Number(
        "opening_margin", Dimension.Metre, "Diameter that the spacer's opening has to spare around the driver's cutout.",
        Reads.Mounted.Itself, Reads.Driver["dimensions.cutout", "dimensions.cutout_minor", "shape"],
        Reads.Adapter["opening", "opening_minor"]);
    public static readonly NumberFact TabMargin = OfFlange.Number(
        "tab_margin", Dimension.Metre, "Diameter between the spacer's inner tabs to spare around the driver's cutout.",
        Reads.Mounted.Itself, Reads.Driver["dimensions.cutout"], Reads.Adapter["inner_tabs.radius"]);
    public static readonly NumberFact FlangeMargin = OfFlange.Number(
        "flange_margin", Dimension.Metre, "Diameter that the recess or trim ring has to spare around the driver's flange.",
        Reads.Mounted.Itself, Reads.Driver["dimensions.flange", "dimensions.flange_minor", "shape"],
        Reads.Place["mounting.recess", "mounting.recess_minor"]);
    public static readonly NumberFact AdapterRecessMargin = OfFlange.Number(
        "adapter_recess_margin", Dimension.Metre, "Diameter that the recess or trim ring has to spare around the spacer.",
        Reads.Mounted.Itself, Reads.Adapter["outer", "outer_minor"], Reads.Place["mounting.recess", "mounting.recess_minor"]);
    public static readonly NumberFact FlangeOverlap = OfFlange.Number(
        "flange_overlap", Dimension.Metre, "Width on which the driver's flange rests beyond the hole under it.",
        Reads.Mounted.Itself, Reads.Driver["dimensions.flange", "dimensions.flange_minor", "shape"],
        Reads.Adapter["opening", "opening_minor"],
        Reads.Under["adapter.opening", "adapter.opening_minor", "position.mounting.cutout", "position.mounting.cutout_minor"],
        Reads.Measured["fit.measured.cutout"]);
    public static readonly NumberFact AdapterOverlap = OfFlange.Number(
        "adapter_overlap", Dimension.Metre, "Width on which the spacer rests beyond the hole in the panel.",
        Reads.Mounted.Itself, Reads.Adapter["outer", "outer_minor"], Reads.Place["mounting.cutout", "mounting.cutout_minor"],
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
        sheet.Set(AdapterTilt, adapter.Tilt?.Si);
    }

    private static void Behind(PositionContext c, FactSheet sheet)
    {
        if (!IsMounted(c))
            return;
        var lengths = new PositionLengths(c);
        sheet.Set(DepthNeeded, lengths.DepthNeeded(null).ToFact());
        sheet.Set(DepthAvailable, lengths.DepthTo(null).ToFact());
        var depths = new StackedMargins();
        Formulas.DepthMargins(lengths, ref depths);
        sheet.Set(DepthMargin, depths.ToFact()!);
        var moving = lengths.Moving;
        var glass = moving.ToArray().MinBy(o => o!.Depth?.Si ?? 0);
        sheet.Set(HasGlass, c.Position.Mounting.HasMoving, glass is null ? PositionLengths.Unlooked(c)
            : new Unsure(c.AtPosition($"whether the {glass.Name} moves"), "Run the window up and down and watch it.", Estimated: false)
            { Key = c.Thing(glass, "moving") });
        var beside = new StackedMargins();
        Formulas.SideMargins(lengths, ref beside);
        var least = beside.ToFact();
        sheet.Set(HasThingsBeside, least is not null ? true : c.Position.Mounting.AreObstructionsRecorded ? false : null,
            PositionLengths.Unlooked(c));
        if (least is not null)
            sheet.Set(SideMargin, least);
        if (moving.Length == 0 && c.Position.Mounting.AreObstructionsRecorded)
            return;
        sheet.Set(GlassDepth, glass?.Depth?.Si);
        var glasses = new StackedMargins();
        Formulas.GlassMargins(lengths, ref glasses);
        sheet.Set(GlassMargin, glasses.ToFact()!);
    }

    private static void Before(PositionContext c, FactSheet sheet)
    {
        if (!IsMounted(c))
            return;
        var lengths = new PositionLengths(c);
        sheet.Set(FrontNeeded, lengths.FrontNeeded.ToFact());
        sheet.Set(FrontAvailable, c.Position.Mounting.GrilleGap?.Si);
        sheet.Set(FrontMargin, Formulas.FrontMargin(lengths).ToFact());
    }

    /// <summary>A woofer's travel: a limit that the maker states, not a length that someone measured on the part.</summary>
    internal static Figure? Travel(Driver driver) =>
        driver.Parameters?.Xmax is { } limit ? limit with { Quantity = limit.Quantity with { Tolerance = limit.Quantity.Tolerance ?? 0 } }
            : null;

    private static void Hole(PositionContext c, FactSheet sheet)
    {
        if (!IsMounted(c))
            return;
        var lengths = new PositionLengths(c);
        sheet.Set(HoleNeeded, Formulas.HoleNeeded(lengths).ToFact());
        sheet.Set(HoleAvailable, Formulas.HoleAvailable(lengths).Figure?.Si);
        var now = new StackedMargins();
        Formulas.HoleMargins(lengths, ref now);
        sheet.Set(HoleMargin, now.ToFact()!);
        var enlarged = new StackedMargins();
        Formulas.LargestHoleMargins(lengths, ref enlarged);
        sheet.Set(LargestHoleMargin, enlarged.ToFact()
            ?? FactValue.Unknown(FactType.Number(Dimension.Metre), new Unsure(c.AtPosition("largest hole that the panel allows"),
                "Look behind the panel how far it can be cut, and measure that diameter.", Estimated: false)
            { Key = c.Here("mounting.largest_cutout") }));
    }

    private static void Flange(PositionContext c, FactSheet sheet)
    {
        if (!IsMounted(c))
            return;
        var lengths = new PositionLengths(c);
        if (c.Adapter is not null)
            sheet.Set(OpeningMargin, Least(lengths, Formulas.OpeningMargins));
        if (c.Adapter is { HasTabs: not false })
            sheet.Set(TabMargin, Formulas.TabMargin(lengths).ToFact());
        sheet.Set(FlangeOverlap, Least(lengths, Formulas.FlangeOverlaps));
        if (c.Adapter is not null)
        {
            if (c.Position.Mounting.HasRecess != false)
                sheet.Set(AdapterRecessMargin, Least(lengths, Formulas.SpacerRecessMargins));
            sheet.Set(AdapterOverlap, Least(lengths, Formulas.SpacerOverlaps));
        }
        if (c.Position.Mounting.HasRecess != false)
            sheet.Set(FlangeMargin, Least(lengths, Formulas.FlangeMargins));
    }

    private delegate void Margins(in PositionLengths pair, ref StackedMargins margins);

    private static FactValue Least(PositionLengths pair, Margins of)
    {
        var margins = new StackedMargins();
        of(pair, ref margins);
        return margins.ToFact()!;
    }
}
