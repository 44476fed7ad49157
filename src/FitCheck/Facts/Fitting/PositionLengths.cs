using FitCheck.Builds.Readable;
using FitCheck.Catalog;
using FitCheck.Facts.Contexts;
using FitCheck.Facts.Values;

namespace FitCheck.Facts.Fitting;

/// <summary>The lengths of a position of a build by the names that a work sheet has for them, each with how to measure it.</summary>
internal readonly struct PositionLengths(PositionContext c) : IMountedPair<StackedLength, Obstruction?>, ICuppedTweeter<StackedLength>
{
    private const string Gauge =
        "Take the door card off, run the window fully down, and measure from the mounting plane with a depth gauge.";
    private const string FrontGauge =
        "Fit the door card and measure from the mounting plane to the back of the grille, with modelling clay or a depth gauge.";
    private const string Calliper = "Measure with a calliper, in two directions.";
    private const string CupCalliper = "Measure with a calliper.";
    private const string OnSheet = "Read it from the maker's drawing, or measure the driver.";

    public bool IsOval => c.Driver?.Oval == true;
    public StackedLength Flange => OfDriver("flange diameter", c.Size?.Flange, "dimensions.flange");
    public StackedLength FlangeMinor => OfDriver("short axis of the flange", c.Size?.FlangeMinor, "dimensions.flange_minor");
    public StackedLength Cutout => OfDriver("cutout diameter", c.Size?.Cutout, "dimensions.cutout");
    public StackedLength CutoutMinor => OfDriver("short axis of the cutout", c.Size?.CutoutMinor, "dimensions.cutout_minor");

    public bool IsOnSpacer => c.Adapter is not null;
    public StackedLength Opening => StackedLength.Need("diameter of the spacer's opening", Calliper, c.Adapter?.Opening,
        DatumKey.In(c.Adapter, "opening"));
    public StackedLength OpeningMinor => StackedLength.Need("short axis of the spacer's opening", Calliper, c.Adapter?.OpeningMinor,
        DatumKey.In(c.Adapter, "opening_minor"));
    public StackedLength SpacerOuter => StackedLength.Need("outer diameter of the spacer", Calliper, c.Adapter?.Outer,
        DatumKey.In(c.Adapter, "outer"));
    public StackedLength SpacerOuterMinor => StackedLength.Need("short axis of the spacer", Calliper, c.Adapter?.OuterMinor,
        DatumKey.In(c.Adapter, "outer_minor"));
    public StackedLength Tabs => StackedLength.Need("radius of the spacer's inner tabs", Calliper, c.Adapter?.TabRadius,
        DatumKey.In(c.Adapter, "inner_tabs.radius"));

    public StackedLength Recess => AtPosition("diameter of the recess or trim ring", c.Position.Mounting.Recess, "mounting.recess");

    public StackedLength RecessMinor =>
               AtPosition("short axis of the recess or trim ring", c.Position.Mounting.RecessMinor, "mounting.recess_minor");
    public StackedLength GrilleGap =>
        StackedLength.Need(c.AtPosition("gap from the panel to the grille"), FrontGauge, c.Position.Mounting.GrilleGap,
            c.Here("mounting.grille_gap"));
    public StackedLength Hole => AtPosition("diameter of the hole in the panel", c.Position.Mounting.Cutout, "mounting.cutout");

    public StackedLength HoleMinor =>
               AtPosition("short axis of the hole in the panel", c.Position.Mounting.CutoutMinor, "mounting.cutout_minor");

    public StackedLength LargestHole =>
               AtPosition("largest hole that the panel allows", c.Position.Mounting.LargestCutout, "mounting.largest_cutout");

    public Obstruction? Behind => null;
    public ReadOnlySpan<Obstruction?> Fixed => c.Position.Mounting.Behind(moving: false);
    public ReadOnlySpan<Obstruction?> Moving => c.Position.Mounting.Behind(moving: true);

    public StackedLength DepthTo(in Obstruction? thing) => thing is null
        ? StackedLength.Need(c.AtPosition("free depth behind the panel"), Gauge, c.Position.Mounting.Depth, c.Here("mounting.depth"))
        : StackedLength.Need(c.AtPosition($"depth to the {thing.Name}{(thing.Moving == true ? ", fully down" : "")}"), Gauge, thing.Depth,
            c.Thing(thing, "depth"));

    public bool AreThingsRecorded => c.Position.Mounting.AreObstructionsRecorded;

    public StackedLength ToUnrecorded
    {
        get
        {
            var (needed, unknown) = (DepthNeeded(null), Unlooked(c));
            return needed.ToFact().Number is { High: <= 0 }
                ? StackedLength.Difference(StackedLength.Optional(unknown.What, unknown.How, null, 0), needed)
                : StackedLength.Need(unknown.What, unknown.How, null, unknown.Key);
        }
    }

    /// <summary>What stands behind a panel behind which nobody has looked.</summary>
    public static Unsure Unlooked(PositionContext c) => new(c.AtPosition("what stands behind the panel"),
        "Look for window glass (run it down), rails, rods and bars, and measure how far behind the panel each stands; where there is "
            + "nothing, write `obstructions: []`.", Estimated: false)
    { Key = c.Here("mounting.obstructions") };

    public StackedLength DepthNeeded(in Obstruction? thing)
    {
        var reach = ObstructionReach.Of(c.Position, thing);
        return OfBody(StackedLength.Optional(c.AtPosition($"radius from which the {thing?.Name} stands"), Gauge, reach.FromRadius, 0,
            c.Thing(thing, "from_radius")),
            reach.Reach);
    }

    public bool IsAside(in Obstruction? thing) => thing?.FromRadius is { Si: > 0 };

    public StackedLength BeginOf(in Obstruction? thing) =>
        StackedLength.Need(c.AtPosition($"radius from which the {thing?.Name} stands"), Gauge, thing?.FromRadius,
            c.Thing(thing, "from_radius"));

    public StackedLength ReachBehind(in Obstruction? thing) => OfBody(DepthTo(thing), BodyFormulas.ReachBehind);

    public StackedLength FrontNeeded => MountingFormulas.FrontNeeded(Thickness, Tilt,
        StackedLength.Need(c.OfDriver("flange thickness"), OnSheet, c.Size?.FlangeThickness,
            DatumKey.In(c.Driver, "dimensions.flange_thickness")),
        StackedLength.Need(c.OfDriver("height in front of the flange"), OnSheet, c.Size?.FrontHeight,
            DatumKey.In(c.Driver, "dimensions.front_height")),
        StackedLength.Need(c.OfDriver("flange diameter"), OnSheet, c.Size?.Flange, DatumKey.In(c.Driver, "dimensions.flange")),
        // A tweeter's travel is nothing; a woofer's is its peak linear excursion.
        c.Driver!.IsTweeter ? StackedLength.Optional("travel", OnSheet, null, 0)
            : StackedLength.Need(c.OfDriver("peak linear excursion"), OnSheet, MountingFacts.Travel(c.Driver),
                DatumKey.In(c.Driver, "parameters.xmax")));

    public StackedLength HoleOfBody => OfBody(Panel, BodyFormulas.HoleNeeded);
    public StackedLength HoleOfBodyMinor => OfBody(Panel, BodyFormulas.HoleNeeded, acrossShortAxis: true);

    public StackedLength Body => StackedLength.Need(c.OfDriver("body diameter"), CupCalliper, c.Size?.Cutout,
        DatumKey.In(c.Driver, "dimensions.cutout"));
    public StackedLength Depth => StackedLength.Need(c.OfDriver("mounting depth"), CupCalliper, c.Size?.Depth,
        DatumKey.In(c.Driver, "dimensions.depth"));
    public StackedLength FrontHeight => StackedLength.Need(c.OfDriver("height in front of the flange"), CupCalliper, c.Size?.FrontHeight,
        DatumKey.In(c.Driver, "dimensions.front_height"));
    public StackedLength CupHole => StackedLength.Need("hole of the cup", CupCalliper, c.Cup?.Hole, DatumKey.In(c.Cup, "hole"));
    public StackedLength CupOuter => StackedLength.Need("outer diameter of the cup", CupCalliper, c.Cup?.Outer,
        DatumKey.In(c.Cup, "outer"));
    public StackedLength CupDepth => StackedLength.Need("depth of the cup", CupCalliper, c.Cup?.Depth, DatumKey.In(c.Cup, "depth"));
    public StackedLength CupGrilleGap => StackedLength.Need("gap to the grille of the cup", CupCalliper, c.Cup?.GrilleGap,
        DatumKey.In(c.Cup, "grille_gap"));

    public StackedLength CupRecess => StackedLength.Need("seat for the flange in the cup", CupCalliper, c.Cup?.FlangeRecess,
        DatumKey.In(c.Cup, "flange_recess"));
    public StackedLength CupCutout => StackedLength.Need("hole in the panel that the cup needs", CupCalliper, c.Cup?.Cutout,
        DatumKey.In(c.Cup, "cutout"));
    public bool IsCupMadeHere => c.Cup is { } cup && CupPlaceFacts.IsMadeFor(cup, c.Build.Vehicle.ListedAs, c.Position.Id);
    public StackedLength PlaceDepth => DepthTo(null);

    public StackedLength DriverCircle => OfDriver("bolt circle", c.Driver?.Holes?.Circle, "holes.circle");
    public StackedLength DriverScrew => StackedLength.Optional(c.OfDriver("screw size"), Calliper,
        MaterialFacts.Exact(c.Driver?.Holes?.Screw), c.Practice.ScrewSize, DatumKey.In(c.Driver, "holes.screw"));
    public StackedLength PanelCircle => c.Adapter is null ? DriverCircle
        : StackedLength.Need("bolt circle of the spacer", Calliper, c.Adapter.VehicleHoles?.Circle,
            DatumKey.In(c.Adapter, "vehicle_holes.circle"));
    public StackedLength PanelScrew => c.Adapter is null ? DriverScrew
        : StackedLength.Optional("screw size of the spacer", Calliper, MaterialFacts.Exact(c.Adapter.VehicleHoles?.Screw),
            c.Practice.ScrewSize, DatumKey.In(c.Adapter, "vehicle_holes.screw"));

    private StackedLength Thickness => c.Adapter is { } adapter
        ? StackedLength.Need("thickness of the spacer", Calliper, adapter.Thickness, DatumKey.In(adapter, "thickness"))
        : StackedLength.Optional("thickness of the spacer", Calliper, null, 0);

    private StackedLength Tilt => c.Adapter is { } adapter
        ? StackedLength.Angle("tilt of the spacer", ScrewFacts.TwoHeights, adapter.Tilt, DatumKey.In(adapter, "tilt"))
        : StackedLength.Optional("tilt of the spacer", Calliper, null, 0);

    private StackedLength Panel => StackedLength.Optional(c.AtPosition("thickness of the panel"), Calliper,
        c.Position.Mounting.PanelThickness, c.Practice.PanelThickness, c.Here("mounting.panel_thickness"));

    private StackedLength OfBody(StackedLength third, BodyFormula formula, bool acrossShortAxis = false)
    {
        var context = c;

        return StackedLength.OfBody(stack =>
            BodyFacts.Inputs(context.Size, context.OfDriver, stack, acrossShortAxis, context.Driver), Thickness, Tilt,
 third, formula);
    }

    private StackedLength OfDriver(string what, Figure? figure, string key) =>
        StackedLength.Need(c.OfDriver(what), Calliper, figure, DatumKey.In(c.Driver, key));

    private StackedLength AtPosition(string what, Figure? figure, string key) =>
        StackedLength.Need(c.AtPosition(what), Calliper, figure, c.Here(key));
}
