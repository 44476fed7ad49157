using FitCheck.Catalog;
using FitCheck.Facts.Values;
using FitCheck.Physics.Electrical.Cables;
using FitCheck.Physics.Quantities;

namespace FitCheck.Facts.Entries;

/// <summary>Figures whose order of magnitude tells a slip of the unit: powers, currents, capacitances, corners, efficiencies.</summary>
internal static class MagnitudeFacts
{
    public static readonly FactGroup Declarations = new(Subject.Entry);

    public static readonly WordFact FigureName = Declarations.Word("figure_name", "What the figure is.", Reads.Entry.Itself);
    public static readonly NumberFact LargestPower = Declarations.Number(
        "largest_power", Dimension.Watt, "The largest power that the entry states.", Reads.Entry.Itself);
    public static readonly NumberFact LargestCurrent = Declarations.Number(
        "largest_current", Dimension.Ampere, "The largest current that the entry states.", Reads.Entry.Itself);
    public static readonly NumberFact Capacitance = Declarations.Number(
        "capacitance", Dimension.Farad, "One capacitance of the entry.", Reads.Entry.Itself);
    public static readonly NumberFact Corner = Declarations.Number(
        "corner", Dimension.Hertz, "One end of a filter's range, or the frequency of a crossover.", Reads.Entry.Itself);
    public static readonly NumberFact TweeterLimit = Declarations.Number(
        "tweeter_limit", Dimension.Hertz, "Lowest crossover of a tweeter.", Reads.Entry.Itself);
    public static readonly NumberFact AmplifierEfficiency = Declarations.Number(
        "amplifier_efficiency", Dimension.One, "Efficiency of an amplifier.", Reads.Entry.Itself);
    public static readonly WordFact AmplifierClass = Declarations.Word(
        "amplifier_class", "Class of an amplifier's output stage.", Reads.Entry.Itself);
    public static readonly NumberFact FuseCurrent = Declarations.Number(
        "fuse_current", Dimension.Ampere, "Rating of a fuse of known pattern.", Reads.Entry.Itself);
    public static readonly NumberFact PatternLargest = Declarations.Number(
        "pattern_largest", Dimension.Ampere, "The largest rating in which fuses of this pattern are made.", Reads.Entry.Itself);
    public static readonly WordFact PatternName = Declarations.Word("pattern_name", "Pattern of the fuse.", Reads.Entry.Itself);

    /// <summary>What an entry has once.</summary>
    public static void Compute(Entry entry, FactSheet sheet)
    {
        Largest(sheet, LargestPower, Powers(entry));
        Largest(sheet, LargestCurrent, Currents(entry));
        if (entry is Driver { IsTweeter: true, LowestCrossover: { } limit })
            Set(sheet, TweeterLimit, "lowest crossover", limit);
        if (entry is Amplifier { Efficiency: { } efficiency } amplifier)
        {
            Set(sheet, AmplifierEfficiency, "efficiency", efficiency);
            sheet.Set(AmplifierClass, amplifier.Class);
        }
        if (entry is not WiringPart { Type: "fuse", FuseStandard: { } pattern, Current: { } rating }
            || StandardFuse.Largest(pattern) is not { } most)
            return;
        Set(sheet, FuseCurrent, "current", rating);
        sheet.Set(PatternLargest, most);
        sheet.Set(PatternName, pattern);
    }

    /// <summary>Of each figure that it may have several of, and that can be too small as well as too large.</summary>
    public static IEnumerable<FactTable> Each(Entry entry) =>
        Capacitances(entry).Select(f => Table(entry, Capacitance, f)).Concat(Corners(entry).Select(f => Table(entry, Corner, f)));

    private static FactTable Table(Entry entry, NumberFact fact, (string What, Figure Figure) one)
    {
        var sheet = new FactSheet();
        sheet.Set(EntryFacts.EntryName, entry.Name);
        sheet.Set(FigureName, one.What);
        Set(sheet, fact, one.What, one.Figure);
        return new FactTable(Subject.Entry, entry.Id, entry.Name, sheet.Values) { At = one.Figure.At };
    }

    private static IEnumerable<(string What, Figure Figure)> Powers(Entry entry) => entry switch
    {
        Driver d => Known(("continuous power", d.ContinuousPower), ("peak power", d.PeakPower)),
        Amplifier a => a.Ratings.Select(r => ("power", r.Power)),
        SourceUnit s => s.Ratings.Select(r => ("power", r.Power)),
        Crossover c => Known(("power", c.Power)),
        _ => [],
    };

    private static IEnumerable<(string What, Figure Figure)> Currents(Entry entry) => entry switch
    {
        Amplifier a => a.Fuses.Select(f => ("fuse on the case", f)),
        WiringPart w => Known(("current", w.Current)),
        Vehicle v => Known(("current of the alternator", v.Alternator)),
        _ => [],
    };

    private static IEnumerable<(string What, Figure Figure)> Capacitances(Entry entry) => entry switch
    {
        Driver d => Known(("capacitor of the built-in tweeter", d.BuiltInCapacitor), ("capacitor on the driver", d.OwnCapacitor)),
        Sundry s => Known(("capacitance", s.Capacitance)),
        Crossover c => InLadder(c.LowPass.Concat(c.HighPass).Concat(c.Settings.SelectMany(s => s.Network))),
        Vehicle v => v.Positions.Where(p => !p.Mirrored)
            .SelectMany(p => Known(("capacitor of the factory driver", p.OwnCapacitor)).Concat(InLadder(p.FeedNetwork))),
        _ => [],
    };

    private static IEnumerable<(string What, Figure Figure)> Corners(Entry entry)
    {
        if (entry is Crossover { Frequency: { } frequency })
            return [("crossover frequency", frequency)];
        return entry is Part part && DeviceFilters.Of(part) is { } filters
            ? Known(("lower end of the high-pass", filters.HighPass?.Lowest), ("upper end of the high-pass", filters.HighPass?.Highest),
                ("lower end of the low-pass", filters.LowPass?.Lowest), ("upper end of the low-pass", filters.LowPass?.Highest)) : [];
    }

    private static IEnumerable<(string What, Figure Figure)> InLadder(IEnumerable<LadderPart> parts) =>
        Known([.. parts.Select(p => ("capacitor of the network", p.Capacitance))]);

    private static IEnumerable<(string What, Figure Figure)> Known(params (string What, Figure? Figure)[] all) =>
        all.Where(f => f.Figure is not null).Select(f => (f.What, f.Figure!));

    private static void Largest(FactSheet sheet, NumberFact fact, IEnumerable<(string What, Figure Figure)> all)
    {
        if (all.DefaultIfEmpty().MaxBy(f => f.Figure?.Si) is { Figure: { } figure } largest)
            Set(sheet, fact, largest.What, figure);
    }

    private static void Set(FactSheet sheet, NumberFact fact, string what, Figure figure) =>
        sheet.Set(fact, FactValue.Of(fact.Dimension, figure.Si) with { Data = [new Datum(what, figure)], Shown = figure.ToString() });
}
