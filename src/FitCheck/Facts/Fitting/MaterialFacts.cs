using FitCheck.Builds.Readable;
using FitCheck.Catalog;
using FitCheck.Facts.Contexts;
using FitCheck.Facts.Values;
using FitCheck.Physics.Quantities;
using Formulas = FitCheck.Facts.Fitting.MountingFormulas<
    FitCheck.Facts.Fitting.PositionLengths, FitCheck.Facts.Fitting.StackedLength, FitCheck.Catalog.Obstruction?>;

namespace FitCheck.Facts.Fitting;

/// <summary>Whether there is material where screws go, and what it has to carry.</summary>
internal static class MaterialFacts
{
    public static readonly FactGroup Declarations = new(Subject.Position);

    public static readonly NumberFact PanelMaterialLeft = Declarations.Number(
        "panel_material_left", Dimension.Metre,
        "Material between a screw of what lies on the panel and the edge of the panel's hole, enlarged as the driver needs it.",
        Reads.Mounted.Itself, Reads.Driver["dimensions", "holes.circle", "holes.screw", "shape"],
        Reads.Adapter["thickness", "tilt", "vehicle_holes.circle", "vehicle_holes.screw"],
        Reads.OnPanel["adapter.vehicle_holes", "driver.holes"],
        Reads.Place["mounting.cutout", "mounting.cutout_minor", "mounting.panel_thickness"], Reads.Measured["fit.measured.cutout"]);
    public static readonly NumberFact SpacerMaterialLeft = Declarations.Number(
        "spacer_material_left", Dimension.Metre, "Material between a screw of the driver in the spacer and the nearer of its edges.",
        Reads.Mounted.Itself, Reads.Driver["holes.circle", "holes.screw"],
        Reads.Adapter["opening", "opening_minor", "outer", "outer_minor"]);
    public static readonly TruthFact PanelEdgeRound = Declarations.Truth(
        "panel_edge_round", "Driver or hole is round, so that the hole's edge is as near to its screws at every hour.",
        Reads.Mounted.Itself, Reads.Driver["shape"], Reads.Place["mounting.cutout_minor"])
        .Saying("an oval in an oval hole");
    public static readonly TruthFact SpacerEdgeRound = Declarations.Truth(
        "spacer_edge_round", "The spacer's opening or its rim is round.",
        Reads.Mounted.Itself, Reads.Adapter["opening_minor", "outer_minor"])
        .Saying("an oval spacer");
    public static readonly NumberFact DriverMass = Declarations.Number(
        "driver_mass", Dimension.Kilogram, "Mass of the driver.", Reads.Mounted.Itself, Reads.Driver["mass"]);

    public static void Compute(PositionContext c, FactSheet sheet)
    {
        if (c.Driver is not { IsTweeter: false } driver || c.Cup is not null)
            return;
        var lengths = new PositionLengths(c);
        var inPanel = new StackedMargins();
        Formulas.PanelMaterials(lengths, ref inPanel);
        sheet.Set(PanelEdgeRound, IsPanelRound(c.Position, driver));
        if (inPanel.ToFact() is { } panel)
            sheet.Set(PanelMaterialLeft, panel);
        if (c.Adapter is { } adapter)
        {
            sheet.Set(SpacerEdgeRound, IsSpacerRound(adapter));
            var inSpacer = new StackedMargins();
            Formulas.SpacerMaterials(lengths, ref inSpacer);
            if (inSpacer.ToFact() is { } spacer)
                sheet.Set(SpacerMaterialLeft, spacer);
        }
        var weighed = new Unsure(c.OfDriver("mass"), "Put the driver on a scale.", driver.Mass is not null)
        { Key = DatumKey.In(driver, "mass") };
        sheet.Set(DriverMass, driver.Mass is not { } mass ? FactValue.Unknown(FactType.Number(Dimension.Kilogram), weighed)
            : FactValue.Of(Dimension.Kilogram, Uncertain.Within(mass.Si, mass.HalfWidth)) with
            {
                Data = [new Datum(c.OfDriver("mass"), mass)],
                Unsure = mass.IsEstimated ? [weighed] : [],
            });
    }

    /// <summary>False where an oval driver goes into an oval hole.</summary>
    internal static bool IsPanelRound(Position position, Driver driver) => !driver.Oval || position.Mounting.CutoutMinor is null;

    /// <summary>False where both edges of a spacer are oval.</summary>
    internal static bool IsSpacerRound(Adapter adapter) => adapter.OpeningMinor is null || adapter.OuterMinor is null;

    /// <summary>Thread and screw sizes are nominal ones, not lengths that someone measured.</summary>
    internal static Figure? Exact(Figure? size) =>
        size is null ? null : size with { Quantity = size.Quantity with { Tolerance = size.Quantity.Tolerance ?? 0 } };
}
