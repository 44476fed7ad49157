using FitCheck.Builds;
using FitCheck.Builds.Readable;
using FitCheck.Catalog;
using FitCheck.Facts.Contexts;
using FitCheck.Facts.Devices;
using FitCheck.Facts.Sound;
using FitCheck.Facts.Values;
using FitCheck.Facts.Wiring;
using FitCheck.Physics.Quantities;

namespace FitCheck.Facts;

/// <summary>The whole proposal: what it costs, what the seller's list lacks, what is no longer made.</summary>
internal static class BuildFacts
{
    public static readonly FactGroup Declarations = new(Subject.Build);

    public static readonly NumberFact TotalCost = Declarations.Number(
        "total_cost", Dimension.Currency, "Price of everything on the list, in the budget's currency.",
        Reads.Whole.Itself);
    public static readonly NumberFact Budget = Declarations.Number(
        "budget", Dimension.Currency, "What the person wants to spend.",
        Reads.Whole.Itself);
    public static readonly TruthFact HasBudget = Declarations.Truth("has_budget", "The build names a budget.", Reads.Whole.Itself)
        .Saying("no budget");
    public static readonly NumberFact OtherCurrencies = Declarations.Number(
        "other_currencies", Dimension.One, "Parts priced in another currency than the budget.",
        Reads.Whole.Itself);
    public static readonly NumberFact DiscontinuedCount = Declarations.Number(
        "discontinued_count", Dimension.One, "Parts that are no longer made.",
        Reads.Whole.Itself);
    public static readonly WordFact DiscontinuedNames = Declarations.Word(
        "discontinued_names", "The parts that are no longer made.",
        Reads.Whole.Itself);
    public static readonly NumberFact ToOrderCount = Declarations.Number(
        "to_order_count", Dimension.One, "Parts that must be ordered.",
        Reads.Whole.Itself);
    public static readonly WordFact ToOrderNames = Declarations.Word(
        "to_order_names", "The parts that must be ordered.",
        Reads.Whole.Itself);
    public static readonly TruthFact HasQuote = Declarations.Truth("has_quote", "The build carries the seller's list.", Reads.Whole.Itself)
        .Saying("no seller's list");
    public static readonly NumberFact QuoteLacksCount = Declarations.Number(
        "quote_lacks_count", Dimension.One, "Parts that the build needs and the seller's list lacks or has too few of.",
        Reads.Whole.Itself);
    public static readonly WordFact QuoteLacksNames = Declarations.Word(
        "quote_lacks_names", "What the seller's list lacks.",
        Reads.Whole.Itself);
    public static readonly NumberFact QuoteUnusedCount = Declarations.Number(
        "quote_unused_count", Dimension.One, "Parts on the seller's list that the build does not use.",
        Reads.Whole.Itself);
    public static readonly WordFact QuoteUnusedNames = Declarations.Word(
        "quote_unused_names", "Parts on the seller's list that the build does not use.",
        Reads.Whole.Itself);
    public static readonly NumberFact QuoteSurplusCount = Declarations.Number(
        "quote_surplus_count", Dimension.One, "Parts of which the seller's list has more packs than the build needs.",
        Reads.Whole.Itself);
    public static readonly WordFact QuoteSurplusNames = Declarations.Word(
        "quote_surplus_names", "What the seller's list has too much of.",
        Reads.Whole.Itself);
    public static readonly TruthFact FactoryAmplifierKept = Declarations.Truth(
        "factory_amplifier_kept", "The vehicle has a factory amplifier and its source stays.",
        Reads.Whole.Itself);
    public static readonly TruthFact FactoryEqualiserKept = Declarations.Truth(
        "factory_equaliser_kept", "The factory source shapes the sound for its own drivers and stays.",
        Reads.Whole.Itself);
    public static readonly TruthFact AddsAmplifier = Declarations.Truth("adds_amplifier", "An amplifier is added.", Reads.Whole.Itself)
        .Saying("no amplifier");
    public static readonly NumberFact SignalChannelsTaken = Declarations.Number(
        "signal_channels_taken", Dimension.One, "Channels that the amplifiers take at line level.",
        Reads.Whole.Itself);
    public static readonly NumberFact SignalChannelsListed = Declarations.Number(
        "signal_channels_listed", Dimension.One, "Channels of all signal cables on the list, in kits too.",
        Reads.Whole.Itself);
    public static readonly TruthFact SplicesSomewhere = Declarations.Truth(
        "splices_somewhere", "Factory wires are cut somewhere.",
        Reads.Whole.Itself)
        .Saying("no splice");
    public static readonly TruthFact HasHeatShrink = Declarations.Truth(
        "has_heat_shrink", "Heat-shrink for splices is on the list.",
        Reads.Whole.Itself);
    public static readonly NumberFact SetHalfCount = Declarations.Number(
        "set_half_count", Dimension.One, "Component sets of which only the woofers or only the tweeters are used.",
        Reads.Whole.Itself);
    public static readonly WordFact SetHalfNames = Declarations.Word(
        "set_half_names", "Component sets of which only one half is used.",
        Reads.Whole.Itself);

    private static readonly IReadOnlySet<string> Loudness = FactSheet.Names(LoudnessFacts.Declarations);

    /// <summary>The facts that the list of parts alone tells.</summary>
    public static readonly IReadOnlySet<string> OfListNames = FactSheet.Names([TotalCost, Budget, HasBudget, OtherCurrencies,
        DiscontinuedCount, DiscontinuedNames, ToOrderCount, ToOrderNames, HasQuote, QuoteLacksCount, QuoteLacksNames, QuoteUnusedCount,
        QuoteUnusedNames, QuoteSurplusCount, QuoteSurplusNames]);

    /// <summary>Those facts by themselves.</summary>
    public static FactTable OfList(Build build, IReadOnlyList<ListLine> list)
    {
        var sheet = new FactSheet();
        List(build, list, sheet);
        return Table(build, sheet);
    }

    public static FactTable Compute(Build build, IReadOnlyList<ListLine> list, IReadOnlyList<FactTable> tables, DeviceFacts devices)
    {
        var sheet = new FactSheet();
        List(build, list, sheet);
        bool? kept = build.Devices.Any(d => d.IsFactory) ? true
            : build.Vehicle.FactorySource is null && !build.Devices.Any(d => d.Part is Catalog.SourceUnit) ? null : false;
        sheet.Set(FactoryAmplifierKept, Both(kept, build.Vehicle.FactoryAmplified),
            new Unsure($"whether {build.Vehicle.Name} has a factory amplifier",
                "Follow the speaker wires from the radio: look under the seats and behind the side trim for a box in between.",
                Estimated: false)
            { Key = DatumKey.In(build.Vehicle, "factory_amplified") });
        sheet.Set(FactoryEqualiserKept, Both(kept, build.Vehicle.FactoryEqualised),
            new Unsure($"whether the factory source of {build.Vehicle.Name} shapes the sound",
                "Play pink noise and compare the voltage at a speaker output over the bands, at low and at high volume.",
                Estimated: false)
            { Key = DatumKey.In(build.Vehicle, "factory_equalised") });
        sheet.Set(AddsAmplifier, build.Devices.Any(d => d.Part is Catalog.Amplifier));
        SignalCables(build, devices, sheet);
        var splices = tables.Select(t => t.Of(WiringFacts.NeedsSplice)).OfType<FactValue>().ToList();
        sheet.Set(SplicesSomewhere, !build.Accepted("cut-wires") ? FactValue.Of(false)
            : splices.Exists(s => s.Truth == true) ? FactValue.Of(true)
            : splices.Find(s => !s.IsKnown) is { } open ? FactValue.Unknown(FactType.Truth, [.. open.Unsure]) : FactValue.Of(false));
        SupplyFacts.Compute(build, devices, sheet);
        PassageFacts.Compute(build, sheet);
        sheet.Set(HasHeatShrink, Sundry(build, list, "heat-shrink"));
        var halves = build.Placed.Where(p => p.Set is not null).GroupBy(p => p.Set!.Part.Id, StringComparer.Ordinal)
            .Where(g => g.All(IsTweeter) || !g.Any(IsTweeter)).Select(g => g.First().Set!.Part.Name);
        Names(sheet, SetHalfCount, SetHalfNames, halves);
        sheet.Later(Loudness, s => LoudnessFacts.Compute(tables, s));
        return Table(build, sheet);
    }

    private static FactTable Table(Build build, FactSheet sheet) => new(Subject.Build, "build", "The whole build", sheet.Values)
    {
        At = build.At,
        Currency = build.Budget?.Value.Currency,
        Choices = Choices(build),
        Lacking = new RecordedEntries(build).Add(build.Vehicle).Lacking,
    };

    private static void List(Build build, IReadOnlyList<ListLine> list, FactSheet sheet)
    {
        Cost(build, list, sheet);
        Names(sheet, DiscontinuedCount, DiscontinuedNames, list.Where(l => l.Availability == "discontinued").Select(l => l.Name));
        Names(sheet, ToOrderCount, ToOrderNames, list.Where(l => l.Availability == "to-order").Select(l => l.Name));
        Quote(build, list, sheet);
    }

    private static bool? Both(bool? a, bool? b) => a == false || b == false ? false : a & b;

    private static bool IsTweeter(FittedPosition placed) => placed.Position.Role == "tweeter";

    private static void Cost(Build build, IReadOnlyList<ListLine> list, FactSheet sheet)
    {
        sheet.Set(HasBudget, build.Budget is not null);
        if (build.Budget is not { } budget)
            return;
        var total = new Money(0, budget.Value.Currency);
        var others = 0;
        foreach (var line in list)
        {
            if (line.Sum.Currency == total.Currency)
                total = total with { Amount = total.Amount + line.Sum.Amount };
            else if (line.Sum.Amount != 0)
                others++;
        }
        sheet.Set(TotalCost, Amount(total));
        sheet.Set(Budget, Amount(budget.Value) with { Data = [new Datum($"budget: {budget.Value}", budget.At)] });
        sheet.Set(OtherCurrencies, others);
    }

    private static void Quote(Build build, IReadOnlyList<ListLine> list, FactSheet sheet)
    {
        sheet.Set(HasQuote, build.Quote is not null);
        if (build.Quote is not { } quote)
            return;
        var packs = new Dictionary<string, int>(StringComparer.Ordinal);
        foreach (var line in quote)
            packs[line.Part.Id] = packs.GetValueOrDefault(line.Part.Id) + line.Packs;
        Names(sheet, QuoteLacksCount, QuoteLacksNames, list.Where(l => packs.GetValueOrDefault(l.Part) < l.Packs)
            .Select(l => $"{l.Packs - packs.GetValueOrDefault(l.Part)} × {l.Name}"));
        Names(sheet, QuoteSurplusCount, QuoteSurplusNames, list.Where(l => packs.GetValueOrDefault(l.Part) > l.Packs
            && (l.Packs > 0 || l.IsOwned))
            .Select(l => $"{packs[l.Part] - l.Packs} × {l.Name} too many"));
        Names(sheet, QuoteUnusedCount, QuoteUnusedNames, quote.Where(q => list.All(l => l.Part != q.Part.Id)).Select(q => q.Part.Name));
    }

    private static void SignalCables(Build build, DeviceFacts devices, FactSheet sheet)
    {
        Unsure[] open = [.. devices.Devices.Select(SignalFacts.LineUnsure).OfType<Unsure>()];
        sheet.Set(SignalChannelsTaken, open.Length > 0 ? FactValue.Unknown(FactType.Number(Dimension.One), open)
            : FactValue.Of(Dimension.One, devices.Devices.Sum(SignalFacts.LineChannelsTaken)));
        var cables = build.Supply.Pieces.Where(p => p.Part.Type == "signal-cable").ToList();
        sheet.Set(SignalChannelsListed, cables.Find(c => c.Part.Channels is null) is { Part: { } untold }
            ? FactValue.Unknown(FactType.Number(Dimension.One),
            new Unsure($"channels of {untold.Name}", "Count its plugs at one end.", Estimated: false)
            { Key = DatumKey.In(untold, "channels") })
            : FactValue.Of(Dimension.One, cables.Sum(c => c.Count * c.Part.Channels!.Value)));
    }

    private static bool Sundry(Build build, IReadOnlyList<ListLine> list, string type) =>
        build.Extras.Any(e => e.Part is Catalog.Sundry s && s.Type == type)
        || build.Placed.Any(p => p.Sundries.Any(s => s.Part.Type == type))
        || (build.Quote ?? []).Any(q => q.Part is Catalog.Sundry s && s.Type == type && list.Count > 0);

    private static void Names(FactSheet sheet, NumberFact count, WordFact told, IEnumerable<string> names)
    {
        var all = names.Distinct(StringComparer.Ordinal).ToList();
        sheet.Set(count, all.Count);
        sheet.Set(told, all.Count == 0 ? "none" : string.Join(", ", all));
    }

    private static Dictionary<string, Choice> Choices(Build build)
    {
        var choices = new Dictionary<string, Choice>(StringComparer.Ordinal);
        if (build.Budget is { } budget)
            choices["budget"] = new Choice("budget", budget.At);
        choices["vehicle"] = new Choice(build.Vehicle.Id, build.VehicleAt);
        if (build.QuoteAt is { } quote)
            choices["quote"] = new Choice("quote", quote);
        return choices;
    }

    private static FactValue Amount(Money money) =>
        FactValue.Of(Dimension.Currency, (double)money.Amount) with { Shown = money.ToString() };
}
