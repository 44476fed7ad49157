using FitCheck.Builds;
using FitCheck.Builds.Readable;
using FitCheck.Catalog;
using FitCheck.Facts.Contexts;
using FitCheck.Facts.Values;
using FitCheck.Findings;
using FitCheck.Physics.Quantities;

namespace FitCheck.Facts.Fitting;

/// <summary>
/// The driver's screws in the spacer. A screw of length L under the head goes through the flange (f) and into the boss (b): it holds over
/// min(L − f, b). Its tip may go as deep as the spacer is thick there before it stands on the panel: on a tilted spacer the screw at the
/// thin edge decides, where along the driver's axis (t − r·sinθ)/cosθ of material lie under the flange, r being the radius of the driver's
/// bolt circle; a boss is as deep as its maker says all around. The panel is taken to reach under every screw. Of several kinds of screws
/// at one place the shortest hold the driver; what goes into the panel is told by <see cref="PanelScrewFacts"/>.
/// </summary>
internal static class ScrewFacts
{
    private const string Gauge = "Measure the depth of a screw boss with a depth gauge.";
    private const string Calliper = "Measure with a calliper.";

    /// <summary>How the tilt of a spacer is found.</summary>
    internal const string TwoHeights =
        "Measure its height at the thickest and at the thinnest edge, and the distance between them; a flat one has `tilt: 0 deg`.";

    public static readonly FactGroup Declarations = new(Subject.Position);

    public static readonly TruthFact HasScrews = Declarations.Truth(
        "has_screws", "Screws for the driver are on the list of the build; a tweeter has none of its own.",
        Reads.Mounted.Itself, Reads.Driver.Itself, Reads.Adapter.Itself, Reads.Cup.Itself, Reads.Place.Itself,
        Reads.Screws["length", "type"])
        .Saying("no screws listed");
    public static readonly WordFact ScrewName = Declarations.Word(
        "screw_name", "Name of the screws.",
        Reads.Mounted.Itself, Reads.Driver.Itself, Reads.Adapter.Itself, Reads.Cup.Itself, Reads.Place.Itself,
        Reads.Screws["length", "type"]);
    public static readonly NumberFact ScrewHold = Declarations.Number(
        "screw_hold", Dimension.Metre, "Length over which the driver's screw holds in the spacer.",
        Reads.Mounted.Itself, Reads.Driver["dimensions.flange_thickness"], Reads.Adapter["boss_depth"], Reads.Place.Itself,
        Reads.Screws["length", "type"]);
    public static readonly NumberFact ScrewHoldRatio = Declarations.Number(
        "screw_hold_ratio", Dimension.One, "That length over the screw's diameter.",
        Reads.Mounted.Itself, Reads.Driver["dimensions.flange_thickness"], Reads.Adapter["boss_depth"], Reads.Place.Itself,
        Reads.Screws["diameter", "length", "type"]);
    public static readonly NumberFact ScrewTipRoom = Declarations.Number(
        "screw_tip_room", Dimension.Metre,
        "Distance between the tip of the driver's screw and the panel; negative when it stands on the panel.",
        Reads.Mounted.Itself, Reads.Driver["dimensions.flange_thickness"], Reads.Adapter["thickness"], Reads.Place.Itself,
        Reads.Screws["length", "type"]);
    public static readonly NumberFact ScrewPlay = Declarations.Number(
        "screw_play", Dimension.Metre, "Diameter that the driver's screw holes have to spare around the screw.",
        Reads.Mounted.Itself, Reads.Driver["holes.screw"], Reads.Adapter.Itself, Reads.Cup.Itself, Reads.Place.Itself,
        Reads.Screws["diameter", "length", "type"]);
    public static readonly NumberFact ScrewBossPlay = Declarations.Number(
        "screw_boss_play", Dimension.Metre,
        "Diameter of the screws for which the spacer's bosses are bored, less that of the driver's screws.",
        Reads.Mounted.Itself, Reads.Adapter["screw"], Reads.Driver.Itself, Reads.Cup.Itself, Reads.Place.Itself,
        Reads.Screws["diameter", "length", "type"]);
    public static readonly NumberFact ScrewLongest = Declarations.Number(
        "screw_longest", Dimension.Metre, "Longest screw that holds the driver without reaching the panel, under the head.",
        Reads.Mounted.Itself, Reads.Driver["dimensions.flange_thickness"], Reads.Adapter["boss_depth", "thickness", "tilt"]);
    public static readonly NumberFact ScrewWholeBoss = Declarations.Number(
        "screw_whole_boss", Dimension.Metre, "Shortest screw that uses the whole depth of the spacer's bosses, under the head.",
        Reads.Mounted.Itself, Reads.Driver["dimensions.flange_thickness"], Reads.Adapter["boss_depth"]);

    public static void Compute(PositionContext c, FactSheet sheet)
    {
        if (c.Driver is not { } driver)
            return;
        if (driver.IsTweeter || c.Cup is not null)
        {
            sheet.Set(HasScrews, false);
            return;
        }
        var screw = Holding(c.Placed);
        sheet.Set(HasScrews, screw is not null);
        if (screw is not null)
        {
            sheet.Set(ScrewName, SpokenName.Of(screw.Name));
            sheet.Set(ScrewPlay, Play(driver.Holes?.Screw, c.OfDriver("screw size"), screw, DatumKey.In(driver, "holes.screw")));
        }
        if (c.Adapter is { } adapter)
            InSpacer(c, adapter, screw, sheet);
    }

    private static void InSpacer(PositionContext c, Adapter adapter, Sundry? screw, FactSheet sheet)
    {
        var longest = new Stack(Dimension.Metre);
        var (flange, room) = (Flange(c, longest), Room(c, adapter, longest));
        sheet.Set(ScrewLongest, longest.Of(v => v[flange] + room(v)));
        var whole = new Stack(Dimension.Metre);
        var (under, boss) = (Flange(c, whole), whole.Need("depth of the spacer's screw bosses", Gauge, adapter.BossDepth,
            DatumKey.In(adapter, "boss_depth")));
        sheet.Set(ScrewWholeBoss, whole.Of(v => v[under] + v[boss]));
        if (screw is null)
            return;
        Hold(c, adapter, screw, sheet);
        var tip = new Stack(Dimension.Metre);
        var (through, length, depth) = (Flange(c, tip), tip.Need($"length of {screw.Name}", Calliper, screw.Length,
            DatumKey.In(screw, "length")), Room(c, adapter, tip));
        sheet.Set(ScrewTipRoom, tip.Of(v => v[through] + depth(v) - v[length]));
        sheet.Set(ScrewBossPlay, Play(adapter.Screw, "screw size of the spacer's bosses", screw, DatumKey.In(adapter, "screw")));
    }

    /// <summary>What a hole has to spare around a screw.</summary>
    internal static FactValue Play(Figure? hole, string named, Sundry screw, DatumKey? key)
    {
        var play = new Stack(Dimension.Metre);
        var (around, thread) = (play.Need(named, Calliper, MaterialFacts.Exact(hole), key),
            play.Need($"diameter of {screw.Name}", Calliper, MaterialFacts.Exact(screw.Diameter), DatumKey.In(screw, "diameter")));
        return play.Of(v => v[around] - v[thread]);
    }

    /// <summary>The kinds of screws at a place, the shortest first; those of unknown length come last.</summary>
    internal static List<Sundry> Kinds(FittedPosition placed) => [.. placed.Sundries.Select(s => s.Part).Where(s => s.Type == "screws")
        .DistinctBy(s => s.Id).OrderBy(s => s.Length?.Si ?? double.PositiveInfinity)];

    private static Sundry? Holding(FittedPosition placed) => Kinds(placed) is [var shortest, ..] ? shortest : null;

    private static void Hold(PositionContext c, Adapter adapter, Sundry screw, FactSheet sheet)
    {
        var hold = new Stack(Dimension.Metre);
        var length = hold.Need($"length of {screw.Name}", Calliper, screw.Length, DatumKey.In(screw, "length"));
        var flange = Flange(c, hold);
        var boss = hold.Need("depth of the spacer's screw bosses", Gauge, adapter.BossDepth, DatumKey.In(adapter, "boss_depth"));
        var value = hold.Of(v => Math.Min(v[length] - v[flange], v[boss]));
        sheet.Set(ScrewHold, value);
        var ratio = new Stack(Dimension.One);
        var (longest, under, deep) =
            (ratio.Need($"length of {screw.Name}", Calliper, screw.Length, DatumKey.In(screw, "length")), Flange(c, ratio),
                ratio.Need("depth of the spacer's screw bosses", Gauge, adapter.BossDepth, DatumKey.In(adapter, "boss_depth")));
        var diameter = ratio.Need($"diameter of {screw.Name}", Calliper, MaterialFacts.Exact(screw.Diameter),
            DatumKey.In(screw, "diameter"));
        sheet.Set(ScrewHoldRatio, ratio.Of(v => Math.Min(v[longest] - v[under], v[deep]) / v[diameter]));
    }

    private static Func<double[], double> Room(PositionContext c, Adapter adapter, Stack stack)
    {
        var thickness = stack.Need("thickness of the spacer", Calliper, adapter.Thickness, DatumKey.In(adapter, "thickness"));
        if (adapter.Tilt is { Si: 0 })
            return v => v[thickness];
        var tilt = stack.Need("tilt of the spacer", TwoHeights, adapter.Tilt, Dimension.Radian, DatumKey.In(adapter, "tilt"));
        var circle = stack.Need(c.OfDriver("bolt circle"), Calliper, c.Driver!.Holes?.Circle ?? c.Size?.Flange,
            DatumKey.In(c.Driver, "holes.circle"));
        var boss = stack.Need("depth of the spacer's screw bosses", Gauge, adapter.BossDepth, DatumKey.In(adapter, "boss_depth"));
        return v => Math.Max(v[boss], (v[thickness] - (v[circle] / 2 * Math.Sin(Math.Abs(v[tilt])))) / Math.Cos(v[tilt]));
    }

    private static int Flange(PositionContext c, Stack stack) =>
        stack.Need(c.OfDriver("flange thickness"), Calliper, c.Size?.FlangeThickness, DatumKey.In(c.Driver, "dimensions.flange_thickness"));
}
