using FitCheck.Catalog;
using FitCheck.Facts.Devices;
using FitCheck.Facts.Values;
using FitCheck.Physics.Quantities;

namespace FitCheck.Facts.Entries;

/// <summary>What an entry of any kind says of itself that can't be.</summary>
internal static class EntryFacts
{
    public static readonly FactGroup Declarations = new(Subject.Entry);

    public static readonly WordFact EntryName = Declarations.Word("entry_name", "Name of the entry.", Reads.Entry.Itself);
    public static readonly WordFact EntryKind = Declarations.Word("entry_kind", "Kind of the entry.", Reads.Entry.Itself);
    public static readonly TruthFact IdIsUnique = Declarations.Truth(
        "id_is_unique", "No other file of the same folder has the same id.",
        Reads.Entry.Itself);
    public static readonly WordFact FirstFile = Declarations.Word("first_file", "The file that took the id first.", Reads.Entry.Itself);
    public static readonly TruthFact IsFactoryPart = Declarations.Truth(
        "is_factory_part", "It came with the vehicle and is not for sale.",
        Reads.Entry.Itself);
    public static readonly TruthFact BridgingDisagrees = Declarations.Truth(
        "bridging_disagrees", "What the entry says of bridging can't all be true.",
        Reads.Entry.Itself);
    public static readonly WordFact BridgingSaid = Declarations.Word("bridging_said", "What `bridgeable` says.", Reads.Entry.Itself);
    public static readonly WordFact BridgingTold = Declarations.Word("bridging_told", "What tells something else.", Reads.Entry.Itself);
    public static readonly TruthFact FiltersDisagree = Declarations.Truth(
        "filters_disagree", "What the entry says of its filters can't all be true.",
        Reads.Entry.Itself);
    public static readonly WordFact FiltersSaid = Declarations.Word("filters_said", "What `filters` says.", Reads.Entry.Itself);
    public static readonly NumberFact Price = Declarations.Number("price", Dimension.Currency, "Price of a pack.", Reads.Entry.Itself);
    public static readonly NumberFact Tilt = Declarations.Number("tilt", Dimension.Radian, "Tilt of a spacer.", Reads.Entry.Itself);
    public static readonly NumberFact Outer = Declarations.Number(
        "outer", Dimension.Metre, "Outer diameter of a spacer or a cup.",
        Reads.Entry.Itself);
    public static readonly NumberFact Opening = Declarations.Number(
        "opening", Dimension.Metre, "Opening of a spacer, or hole of a cup.",
        Reads.Entry.Itself);
    public static readonly NumberFact OuterOverOpening = Declarations.Number(
        "outer_over_opening", Dimension.Metre, "Outer diameter less the opening.",
        Reads.Entry.Itself);
    public static readonly NumberFact FreeHeight = Declarations.Number(
        "free_height", Dimension.Metre, "Height of a gasket before it is pressed.",
        Reads.Entry.Itself);
    public static readonly NumberFact CompressedHeight = Declarations.Number(
        "compressed_height", Dimension.Metre, "Height of a gasket when it is pressed.",
        Reads.Entry.Itself);
    public static readonly NumberFact ClaimedCurrent = Declarations.Number(
        "claimed_current", Dimension.Ampere, "Current that the maker of a cable or kit claims for it.",
        Reads.Entry.Itself);
    public static readonly NumberFact GaugeCurrent = Declarations.Number(
        "gauge_current", Dimension.Ampere,
        "Current that its gauge and metal carry outside an engine space, at 105 °C where its insulation is not recorded.",
        Reads.Entry.Itself);
    public static readonly WordFact GaugeText = Declarations.Word("gauge_text", "Gauge of a cable or kit.", Reads.Entry.Itself);
    public static readonly NumberFact GasketGive = Declarations.Number(
        "gasket_give", Dimension.Metre, "Free height less compressed height.",
        Reads.Entry.Itself);

    public static FactTable Of(Entry entry, Practice practice)
    {
        var sheet = new FactSheet();
        sheet.Set(EntryName, entry.Name);
        sheet.Set(EntryKind, entry.Kind);
        sheet.Set(IdIsUnique, truth: true);
        sheet.Set(IsFactoryPart, entry is SourceUnit { Factory: true });
        if (entry is Part { HasPrice: true } part)
            sheet.Set(Price,
                FactValue.Of(Dimension.Currency, (double)part.Price.Value.Amount) with
                {
                    Shown = part.Price.Value.ToString(),
                    Data = [new Datum("price", part.Price.At)]
                });
        if (entry is Adapter { Tilt: { } tilt })
            sheet.Set(Tilt, FactValue.Of(Dimension.Radian, tilt.Si) with { Data = [new Datum("tilt", tilt)] });
        if (entry is Amplifier amplifier)
            Bridging(amplifier, sheet);
        if (entry is Part device && DeviceFilters.Of(device) is { Any: { } any } filters)
            Filters(any, filters, sheet);
        var (outer, opening) = entry switch { Adapter a => (a.Outer, a.Opening), Cup c => (c.Outer, c.Hole), _ => (null, null) };
        Against(sheet, OuterOverOpening, (Opening, "opening", opening), (Outer, "outer diameter", outer), (hole, rim) => rim - hole);
        if (entry is Sundry sundry)
            Against(sheet, GasketGive, (CompressedHeight, "compressed height", sundry.CompressedHeight),
                (FreeHeight, "free height", sundry.FreeHeight), (pressed, free) => free - pressed);
        if (entry is WiringPart { Type: "power-cable" or "power-kit" or "speaker-cable", Gauge: { } gauge, Current: { } claim } cable)
            Claim(sheet, cable, gauge, claim, practice);
        MagnitudeFacts.Compute(entry, sheet);
        RoomFacts.Compute(entry, sheet);
        return Table(entry.Id, entry.Name, entry.At, sheet) with { Currency = (entry as Part)?.Price.Value.Currency };
    }

    public static FactTable Of(TakenId taken)
    {
        var sheet = new FactSheet();
        sheet.Set(EntryName, taken.Id);
        sheet.Set(IdIsUnique,
            FactValue.Of(false)
                with
            {
                Data = [new Datum($"the id {taken.Id}", taken.At),
                    new Datum("the first file with this id", new Foundation.Problems.Location(taken.First, 1, 1))]
            });
        sheet.Set(FirstFile, taken.First);
        return Table(taken.Id, taken.Id, taken.At, sheet);
    }

    private static void Claim(FactSheet sheet, WiringPart cable, Figure gauge, Figure claim, Practice practice)
    {
        sheet.Set(ClaimedCurrent,
            FactValue.Of(Dimension.Ampere, claim.Si) with { Data = [new Datum("current", claim), new Datum("gauge", gauge)] });
        sheet.Set(GaugeCurrent, new CableLimit(cable, InEngineSpace: false, practice).OfConductor!.Value.High);
        sheet.Set(GaugeText, WireGauge.NameOf(gauge.Si) ?? gauge.ToString());
    }

    private static void Bridging(Amplifier amplifier, FactSheet sheet)
    {
        if (amplifier.Bridgeable is not { } can)
            return;
        Datum? other = can
            ? amplifier.Bridges is { Pairs.Count: 0 } none ? new Datum("no pair of outputs", none.At)
            : amplifier.Channels < 2 ? new Datum("a single output", amplifier.At) : null
            : amplifier.Bridges is { Pairs.Count: > 0 } pairs ? new Datum("pairs of outputs that may be bridged", pairs.At)
            : amplifier.LowestBridgedLoad is { } load ? new Datum($"a lowest bridged load of {load}", load.At)
            : amplifier.Ratings.FirstOrDefault(r => r.Bridged) is { } rating
            ? new Datum($"a bridged rating of {rating.Power}", rating.Power.At) : null;
        sheet.Set(BridgingDisagrees, FactValue.Of(other is not null) with { Data = other is null ? [] : [other] });
        sheet.Set(BridgingSaid, can ? "it may be bridged" : "it must not be bridged");
        sheet.Set(BridgingTold, other?.What);
    }

    private static void Filters(bool any, DeviceFilters filters, FactSheet sheet)
    {
        FilterRange[] ranges = [.. new[] { filters.HighPass, filters.LowPass }.OfType<FilterRange>()];
        var other = any ? ranges.Length == 2 && ranges.All(r => r.IsNone) ? ranges[0] : null : ranges.FirstOrDefault(r => !r.IsNone);
        var slope = any ? null : filters.Slopes is [var first, ..] ? first : null;
        sheet.Set(FiltersDisagree,
            FactValue.Of(other is not null || slope is not null)
                with
            {
                Data = other is not null ? [new Datum(any ? "no filter" : $"a filter from {other.Lowest} to {other.Highest}", other.At)]
                    : slope is not null ? [new Datum($"a slope of {slope}", slope.At)] : []
            });
        sheet.Set(FiltersSaid, any ? "it has filters" : "it has no filters");
    }

    private static void Against(FactSheet sheet, NumberFact outcome, (NumberFact Fact, string What, Figure? Figure) doubted,
        (NumberFact Fact, string What, Figure? Figure) other, Func<double, double, double> f) =>
        DriverFacts.Against(sheet, outcome, doubted, other, f);

    private static FactTable Table(string id, string name, Foundation.Problems.Location at, FactSheet sheet) =>
        new(Subject.Entry, id, name, sheet.Values) { At = at };
}
