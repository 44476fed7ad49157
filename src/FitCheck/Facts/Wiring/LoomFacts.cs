using FitCheck.Builds;
using FitCheck.Catalog;
using FitCheck.Facts.Contexts;
using FitCheck.Facts.Values;
using FitCheck.Physics.Quantities;

namespace FitCheck.Facts.Wiring;

/// <summary>What an output shares its wires with: other outputs, both sides of the vehicle, woofer and tweeter.</summary>
internal static class LoomFacts
{
    public static readonly FactGroup Declarations = new(Subject.Channel);

    public static readonly NumberFact OutputsMet = Declarations.Number(
        "outputs_met", Dimension.One, "Other outputs that drive the same pair of wires.",
        Reads.Loom.Itself);
    public static readonly WordFact OutputsMetNames = Declarations.Word(
        "outputs_met_names", "The other outputs that drive the same pair of wires.",
        Reads.Loom.Itself);
    public static readonly TruthFact TakesOverWire = Declarations.Truth(
        "takes_over_wire", "An amplifier drives a wire of the vehicle, that the radio drove before.",
        Reads.Loom.Itself);
    public static readonly WordFact FactoryPairs = Declarations.Word(
        "factory_pairs", "The factory wires that it drives, by the radio's outputs.",
        Reads.Loom.Itself);
    public static readonly TruthFact BandShared = Declarations.Truth(
        "band_shared", "A woofer and a tweeter are connected to it, and what stands in front of the tweeter is known.",
        Reads.OwnNetwork.Itself, Reads.OwnOutput.Itself, Reads.OwnFilters.Itself)
        .Saying("no woofer and tweeter share it");
    public static readonly WordFact Dividing = Declarations.Word(
        "dividing", "What divides the band between woofer and tweeter on this output: there, left out (the set's own crossover), or none.",
        Reads.OwnNetwork.Itself, Reads.OwnOutput.Itself, Reads.OwnFilters.Itself);
    public static readonly TruthFact LeftAndRight = Declarations.Truth(
        "left_and_right", "It feeds drivers on both sides that are not subwoofers.",
        Reads.Loom.Itself);
    public static readonly TruthFact InSeries = Declarations.Truth(
        "in_series", "Several drivers are connected to it in series.",
        Reads.Loom.Itself);
    public static readonly TruthFact SeriesDiffers = Declarations.Truth(
        "series_differs", "Drivers of different models, or behind different filters, are in series.",
        Reads.Loom.Itself);
    public static readonly TruthFact SignalFollowed = Declarations.Truth(
        "signal_followed", "It is recorded from which outputs of the source its signal comes.",
        Reads.Loom.Itself);
    public static readonly WordFact SignalTaken = Declarations.Word(
        "signal_taken", "The outputs of the source from which its signal comes.",
        Reads.Loom.Itself);
    public static readonly TruthFact SidesCrossed = Declarations.Truth(
        "sides_crossed", "The left plays the right signal, or the other way round.",
        Reads.Loom.Itself);
    public static readonly TruthFact AxlesCrossed = Declarations.Truth(
        "axles_crossed", "The front plays the rear signal, or the other way round.",
        Reads.Loom.Itself);

    public static void Compute(ChannelContext c, FactSheet sheet)
    {
        var graph = new WireGraph(c.Build);
        var met = graph.Meeting(c.Channel);
        sheet.Set(OutputsMet, met.Count);
        sheet.Set(OutputsMetNames, met.Count == 0 ? "none" : string.Join(", ", met));
        sheet.Set(TakesOverWire, WireGraph.TakesOver(c.Channel));
        sheet.Set(FactoryPairs, WireGraph.FactoryPairs(c.Channel) is { Count: > 0 } pairs ? string.Join(", ", pairs) : "none");
        var dividing = DividingOf(c);
        sheet.Set(BandShared, dividing is not null);
        if (dividing == "none" && c.Channel.Feeds.Select(p => p.Set?.Part).FirstOrDefault(s => s is { HasCrossover: null }) is { } set)
            sheet.Set(Dividing, FactValue.Unknown(FactType.Word, new Unsure($"whether a crossover lies in the box of {set.Name}",
                "Look in the box or in the data sheet, and write it into the set's entry as `crossover`, or `none`.", Estimated: false)));
        else
            sheet.Set(Dividing, dividing);
        var drivers = c.Channel.Feeds.Where(p => p.Driver is not null).ToList();
        sheet.Set(InSeries, c.Channel.InSeries && drivers.Count > 1);
        sheet.Set(SeriesDiffers, c.Channel.InSeries && drivers.Select(p => p.Driver!.Part.Id).Distinct(StringComparer.Ordinal).Count() > 1);
        var sided = c.Channel.Feeds.Where(IsSided).ToList();
        sheet.Set(LeftAndRight, sided.Exists(p => p.Position.Side == "left") && sided.Exists(p => p.Position.Side == "right"));
        Signal(graph.Signals(c.Channel), sided, sheet);
    }

    private static void Signal(IReadOnlyList<string> signals, List<FittedPosition> places, FactSheet sheet)
    {
        sheet.Set(SignalFollowed, signals.Count > 0);
        if (signals.Count == 0)
            return;
        sheet.Set(SignalTaken, string.Join(", ", signals));
        sheet.Set(SidesCrossed, places.Exists(p => Crossed(p.Position.Side, signals, "left", "right")));
        sheet.Set(AxlesCrossed, places.Exists(p => Crossed(Sides.Axle(p.Position), signals, "front", "rear")));
    }

    // Only what is certain: every signal that it may be is of the other sort.
    private static bool Crossed(string? here, IReadOnlyList<string> signals, string one, string other) =>
        (here == one && signals.All(s => s.Contains(other, StringComparison.Ordinal)))
        || (here == other && signals.All(s => s.Contains(one, StringComparison.Ordinal)));

    // Bass has no side: a subwoofer takes whatever is there.
    private static bool IsSided(FittedPosition placed) =>
        placed.Position.Role != "subwoofer" && placed.Driver?.Part.Type != "subwoofer";

    private static string? DividingOf(ChannelContext c)
    {
        var fitted = c.Branches.Where(b => b.Placed?.Driver is not null).ToList();
        var tweeters = fitted.Where(b => b.Placed!.Driver!.Part.IsTweeter).ToList();
        if (tweeters.Count == 0 || tweeters.Count == fitted.Count)
            return null;
        if (c.Channel.Crossover is not null)
            return "there";
        // Whether a capacitor stands in the wire, or a filter is there, is asked for at the tweeter.
        if (tweeters.Exists(b => b.FeedUnknown || b.Doubted is { Exists: null }))
            return null;
        return tweeters.Exists(b => b.HighPasses.Count == 0) ? "none"
            : fitted.Exists(b => b.Placed!.Set?.Part.Crossover is not null) ? "left out" : "there";
    }
}
