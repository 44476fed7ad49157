using FitCheck.Builds.Readable;
using FitCheck.Catalog;
using FitCheck.Facts.Contexts;
using FitCheck.Facts.Values;
using FitCheck.Findings;
using FitCheck.Physics.Geometry;
using FitCheck.Physics.Quantities;

namespace FitCheck.Facts.Fitting;

/// <summary>
/// The screws that go into the panel, and what stands behind it. Without a spacer those are the driver's own, through its flange (f). On
/// a spacer the shortest kind on the list holds the driver, and every other goes through the spacer with its head on it. The tip of a screw
/// of length L stands L − f, or L less the spacer's thickness, behind the mounting plane: on a tilted one farthest at the thin edge, and
/// least far at the thick one, at the radius of its bolt circle. A thing behind the panel counts where it reaches in to that circle, at the
/// hour of a hole of the panel.
/// </summary>
internal static class PanelScrewFacts
{
    private const string Calliper = "Measure with a calliper.";
    private const string Gauge =
        "Take the door card off, run the window fully down, and measure from the mounting plane with a depth gauge.";

    public static readonly FactGroup Declarations = new(Subject.Position);

    private static readonly Input[] All =
    [
        Reads.Mounted.Itself, Reads.Driver["dimensions.flange_thickness", "holes"],
        Reads.Adapter["thickness", "tilt", "vehicle_holes"], Reads.Cup.Itself, Reads.Place["mounting", "airbag_near"],
        Reads.Screws["type", "length", "diameter"], Reads.Measured["fit.measured.depth"],
    ];

    public static readonly TruthFact HasPanelScrews = Declarations.Truth(
        "has_panel_screws", "Screws that go into the panel are on the list of the build.", All);
    public static readonly WordFact PanelScrewName = Declarations.Word(
        "panel_screw_name", "Names of the screws that go into the panel.", All);
    public static readonly NumberFact PanelScrewReach = Declarations.Number(
        "panel_screw_reach", Dimension.Metre, "Length of the shortest screw in the panel that stands out behind it.", All);
    public static readonly NumberFact PanelScrewPlay = Declarations.Number(
        "panel_screw_play", Dimension.Metre, "Diameter that the spacer's holes for the panel have to spare around the thickest screw.",
        All);
    public static readonly NumberFact PanelScrewLooseness = Declarations.Number(
        "panel_screw_looseness", Dimension.Metre, "Diameter for which the panel's holes are made, less that of the thinnest screw.", All);
    public static readonly TruthFact HasClipNuts = Declarations.Truth(
        "has_clip_nuts", "Clip nuts for the panel's holes are on the list.", All);
    public static readonly TruthFact ScrewsComeOut = Declarations.Truth(
        "screws_come_out", "A screw may stand out behind the panel.", All);
    public static readonly NumberFact ScrewBehind = Declarations.Number(
        "screw_behind", Dimension.Metre, "How far the longest screw stands out behind the panel.", All);
    public static readonly TruthFact ScrewsMeetGlass = Declarations.Truth(
        "screws_meet_glass", "A window glass or another moving thing stands where the screws come out.", All);
    public static readonly NumberFact ScrewGlassMargin = Declarations.Number(
        "screw_glass_margin", Dimension.Metre, "Least distance from the tip of a screw to the window glass when it is down.", All);
    public static readonly NumberFact ScrewFixedMargin = Declarations.Number(
        "screw_fixed_margin", Dimension.Metre, "Least distance from the tip of a screw to anything fixed behind the panel.", All);

    public static void Compute(PositionContext c, FactSheet sheet)
    {
        if (c.Driver is not { } driver)
            return;
        var kinds = driver.IsTweeter || c.Cup is not null ? [] : ScrewFacts.Kinds(c.Placed);
        IReadOnlyList<Sundry> panel = c.Adapter is null ? kinds : [.. kinds.Skip(1)];
        sheet.Set(HasPanelScrews, panel.Count > 0);
        sheet.Set(ScrewsComeOut, false);
        if (panel.Count == 0)
            return;
        sheet.Set(PanelScrewName, string.Join(", ", panel.Select(s => SpokenName.Of(s.Name))));
        sheet.Set(HasClipNuts, c.Placed.Sundries.Exists(s => s.Part.Type == "clip-nut"));
        sheet.Set(PanelScrewReach, Least(panel.Select(s => Out(c, s, thick: true))));
        if (c.Adapter is { } adapter)
            sheet.Set(PanelScrewPlay,
                Least(panel.Select(s => ScrewFacts.Play(adapter.VehicleHoles?.Screw, "screw size of the spacer", s,
                    DatumKey.In(adapter, "vehicle_holes.screw")))));
        var sized = c.Position.Mounting.Holes?.Screw;
        sheet.Set(PanelScrewLooseness,
            Most(panel.Select(s => ScrewFacts.Play(sized, c.AtPosition("screw size of the panel's holes"), s,
                c.Here("mounting.holes.screw")))));
        Behind(c, panel, sheet);
    }

    private static void Behind(PositionContext c, IReadOnlyList<Sundry> panel, FactSheet sheet)
    {
        var behind = Most(panel.Select(s => Out(c, s, thick: false)));
        sheet.Set(ScrewBehind, behind);
        var comesOut = behind.Number is not { } known || known.High > 0;
        sheet.Set(ScrewsComeOut, comesOut);
        if (!comesOut)
            return;
        if (!c.Position.Mounting.AreObstructionsRecorded)
        {
            // Whatever stands there may stand in their way.
            var unlooked = PositionLengths.Unlooked(c);
            sheet.Set(ScrewsMeetGlass, null, unlooked);
            sheet.Set(ScrewGlassMargin, FactValue.Unknown(FactType.Number(Dimension.Metre), unlooked));
            sheet.Set(ScrewFixedMargin, FactValue.Unknown(FactType.Number(Dimension.Metre), unlooked));
            return;
        }
        var moving = c.Position.Mounting.Behind(moving: true).Where(o => IsThere(c, o)).ToList();
        sheet.Set(ScrewsMeetGlass, moving.Count > 0);
        if (moving.Count > 0)
            sheet.Set(ScrewGlassMargin, Least(moving.SelectMany(o => panel.Select(s => ToTip(c, o, s)))));
        var standing = c.Position.Mounting.Behind(moving: false).Where(o => IsThere(c, o)).ToList();
        sheet.Set(ScrewFixedMargin, Least(standing.Prepend(null).SelectMany(o => panel.Select(s => ToTip(c, o, s)))));
    }

    // Where it reaches in to the screws, at the hour of one of the panel's holes.
    private static bool IsThere(PositionContext c, Obstruction thing)
    {
        var own = (c.Adapter is null ? c.Driver!.Holes : c.Adapter.VehicleHoles)?.Circle;
        var outermost = new[] { c.Position.Mounting.Holes?.Circle, own }.OfType<Figure>().Select(f => (f.Si + f.HalfWidth) / 2)
            .DefaultIfEmpty(double.PositiveInfinity).Max();
        if (thing.FromRadius is { } from && from.Si - from.HalfWidth > outermost)
            return false;
        return thing is not { FromClock: { } first, ToClock: { } last } || c.Position.Mounting.Holes is not { } holes
            || holes.Angles.Any(a => new ClockSector(first, last).Contains(HoleFit.Hour(a)));
    }

    private static FactValue ToTip(PositionContext c, Obstruction? thing, Sundry screw)
    {
        var stack = new Stack(Dimension.Metre);
        var depth = thing is null ? stack.Need(c.AtPosition("free depth behind the panel"), Gauge, c.Position.Mounting.Depth,
            c.Here("mounting.depth"))
            : stack.Need(c.AtPosition($"depth to the {thing.Name}{(thing.Moving == true ? ", fully down" : "")}"), Gauge, thing.Depth,
                c.Thing(thing, "depth"));
        var tip = Tip(c, screw, stack, thick: false);
        return stack.Of(v => v[depth] - tip(v));
    }

    // How far the tip stands out behind the panel.
    private static FactValue Out(PositionContext c, Sundry screw, bool thick)
    {
        var stack = new Stack(Dimension.Metre);
        var tip = Tip(c, screw, stack, thick);
        var panel = stack.Optional(c.AtPosition("thickness of the panel"), Calliper, c.Position.Mounting.PanelThickness,
            c.Practice.PanelThickness, c.Here("mounting.panel_thickness"));
        return stack.Of(v => tip(v) - v[panel]);
    }

    // How far the tip stands behind the mounting plane.
    private static Func<double[], double> Tip(PositionContext c, Sundry screw, Stack stack, bool thick)
    {
        var length = stack.Need($"length of {screw.Name}", Calliper, screw.Length, DatumKey.In(screw, "length"));
        if (c.Adapter is not { } adapter)
        {
            var flange = stack.Need(c.OfDriver("flange thickness"), Calliper, c.Size?.FlangeThickness,
                DatumKey.In(c.Driver, "dimensions.flange_thickness"));
            return v => v[length] - v[flange];
        }
        var thickness = stack.Need("thickness of the spacer", Calliper, adapter.Thickness, DatumKey.In(adapter, "thickness"));
        if (adapter.Tilt is not { Si: not 0 } leaning)
            return v => v[length] - v[thickness];
        var tilt = stack.Need("tilt of the spacer", Calliper, leaning, DatumKey.In(adapter, "tilt"));
        var circle = stack.Need("bolt circle of the spacer", Calliper, adapter.VehicleHoles?.Circle ?? adapter.Outer,
            DatumKey.In(adapter, "vehicle_holes.circle"));
        return v => v[length] - Math.Max(0, v[thickness] + ((thick ? 1 : -1) * v[circle] / 2 * Math.Sin(Math.Abs(v[tilt]))));
    }

    private static FactValue Least(IEnumerable<FactValue> values)
    {
        var all = values.ToList();
        return all.Find(v => !v.IsKnown) is { } unknown && !all.Exists(v => v.Number?.High < 0) ? unknown
            : all.Where(v => v.IsKnown).MinBy(v => v.Number!.Value.Low)!;
    }

    private static FactValue Most(IEnumerable<FactValue> values)
    {
        var all = values.ToList();
        return all.Find(v => !v.IsKnown) ?? all.MaxBy(v => v.Number!.Value.High)!;
    }
}
