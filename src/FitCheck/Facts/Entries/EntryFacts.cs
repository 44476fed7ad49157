using FitCheck.Catalog;
using FitCheck.Facts.Devices;
using FitCheck.Facts.Values;
using FitCheck.Physics.Quantities;

namespace FitCheck.Facts.Entries;

/// <summary>What an entry of any kind says of itself that can't be.</summary>
internal static class EntryFacts
{
    public static readonly IReadOnlyList<FactDeclaration> Declarations =
    [
        Declare.Word(Subject.Entry, "entry_name", "Name of the entry."),
        Declare.Word(Subject.Entry, "entry_kind", "Kind of the entry."),
        Declare.Truth(Subject.Entry, "id_is_unique", "No other file of the same folder has the same id."),
        Declare.Word(Subject.Entry, "first_file", "The file that took the id first."),
        Declare.Truth(Subject.Entry, "is_factory_part", "It came with the vehicle and is not for sale."),
        Declare.Truth(Subject.Entry, "bridging_disagrees", "What the entry says of bridging can't all be true."),
        Declare.Word(Subject.Entry, "bridging_said", "What `bridgeable` says."),
        Declare.Word(Subject.Entry, "bridging_told", "What tells something else."),
        Declare.Truth(Subject.Entry, "filters_disagree", "What the entry says of its filters can't all be true."),
        Declare.Word(Subject.Entry, "filters_said", "What `filters` says."),
        Number("price", Dimension.Currency, "Price of a pack."),
        Number("tilt", Dimension.Radian, "Tilt of a spacer."),
        Number("outer", Dimension.Metre, "Outer diameter of a spacer or a cup."),
        Number("opening", Dimension.Metre, "Opening of a spacer, or hole of a cup."),
        Number("outer_over_opening", Dimension.Metre, "Outer diameter less the opening."),
        Number("free_height", Dimension.Metre, "Height of a gasket before it is pressed."),
        Number("compressed_height", Dimension.Metre, "Height of a gasket when it is pressed."),
        Number("claimed_current", Dimension.Ampere, "Current that the maker of a cable or kit claims for it."),
        Number("gauge_current", Dimension.Ampere, "Current that its gauge and metal carry outside an engine space, at 105 °C where its insulation is not recorded."),
        Word("gauge_text", "Gauge of a cable or kit."),
        Number("gasket_give", Dimension.Metre, "Free height less compressed height."),
    ];

    public static FactTable Of(Entry entry)
    {
        var sheet = new FactSheet();
        sheet.Set("entry_name", entry.Name);
        sheet.Set("entry_kind", entry.Kind);
        sheet.Set("id_is_unique", truth: true);
        sheet.Set("is_factory_part", entry is SourceUnit { Factory: true });
        if (entry is Part { HasPrice: true } part)
            sheet.Set("price", FactValue.Of(Dimension.Currency, (double)part.Price.Value.Amount) with { Shown = part.Price.Value.ToString(), Data = [new Datum("price", part.Price.At)] });
        if (entry is Adapter { Tilt: { } tilt })
            sheet.Set("tilt", FactValue.Of(Dimension.Radian, tilt.Si) with { Data = [new Datum("tilt", tilt)] });
        if (entry is Amplifier amplifier)
            Bridging(amplifier, sheet);
        if (entry is Part device && DeviceFilters.Of(device) is { Any: { } any } filters)
            Filters(any, filters, sheet);
        var (outer, opening) = entry switch { Adapter a => (a.Outer, a.Opening), Cup c => (c.Outer, c.Hole), _ => (null, null) };
        Against(sheet, "outer_over_opening", ("opening", "opening", opening), ("outer", "outer diameter", outer), (hole, rim) => rim - hole);
        if (entry is Sundry sundry)
            Against(sheet, "gasket_give", ("compressed_height", "compressed height", sundry.CompressedHeight), ("free_height", "free height", sundry.FreeHeight), (pressed, free) => free - pressed);
        if (entry is WiringPart { Type: "power-cable" or "power-kit" or "speaker-cable", Gauge: { } gauge, Current: { } claim } cable)
            Claim(sheet, cable, gauge, claim);
        return Table(entry.Id, entry.Name, entry.At, sheet) with { Currency = (entry as Part)?.Price.Value.Currency };
    }

    public static FactTable Of(TakenId taken)
    {
        var sheet = new FactSheet();
        sheet.Set("entry_name", taken.Id);
        sheet.Set("id_is_unique", FactValue.Of(false) with { Data = [new Datum($"the id {taken.Id}", taken.At), new Datum("the first file with this id", new Foundation.Problems.Location(taken.First, 1, 1))] });
        sheet.Set("first_file", taken.First);
        return Table(taken.Id, taken.Id, taken.At, sheet);
    }

    private static void Claim(FactSheet sheet, WiringPart cable, Figure gauge, Figure claim)
    {
        sheet.Set("claimed_current", FactValue.Of(Dimension.Ampere, claim.Si) with { Data = [new Datum("current", claim), new Datum("gauge", gauge)] });
        sheet.Set("gauge_current", Dimension.Ampere, new CableLimit(cable, InEngineSpace: false).OfConductor!.Value.High);
        sheet.Set("gauge_text", WireGauge.NameOf(gauge.Si) ?? gauge.ToString());
    }

    private static void Bridging(Amplifier amplifier, FactSheet sheet)
    {
        if (amplifier.Bridgeable is not { } can)
            return;
        Datum? other = can
            ? amplifier.Bridges is { Pairs.Count: 0 } none ? new Datum("no pair of outputs", none.At) : amplifier.Channels < 2 ? new Datum("a single output", amplifier.At) : null
            : amplifier.Bridges is { Pairs.Count: > 0 } pairs ? new Datum("pairs of outputs that may be bridged", pairs.At)
            : amplifier.LowestBridgedLoad is { } load ? new Datum($"a lowest bridged load of {load}", load.At)
            : amplifier.Ratings.FirstOrDefault(r => r.Bridged) is { } rating ? new Datum($"a bridged rating of {rating.Power}", rating.Power.At) : null;
        sheet.Set("bridging_disagrees", FactValue.Of(other is not null) with { Data = other is null ? [] : [other] });
        sheet.Set("bridging_said", can ? "it may be bridged" : "it must not be bridged");
        sheet.Set("bridging_told", other?.What);
    }

    private static void Filters(bool any, DeviceFilters filters, FactSheet sheet)
    {
        FilterRange[] ranges = [.. new[] { filters.HighPass, filters.LowPass }.OfType<FilterRange>()];
        var other = any ? ranges.Length == 2 && ranges.All(r => r.IsNone) ? ranges[0] : null : ranges.FirstOrDefault(r => !r.IsNone);
        sheet.Set("filters_disagree", FactValue.Of(other is not null) with { Data = other is null ? [] : [new Datum(any ? "no filter" : $"a filter from {other.Lowest} to {other.Highest}", other.At)] });
        sheet.Set("filters_said", any ? "it has filters" : "it has no filters");
    }

    private static void Against(FactSheet sheet, string name, (string Fact, string What, Figure? Figure) doubted, (string Fact, string What, Figure? Figure) other, Func<double, double, double> f) =>
        DriverFacts.Against(sheet, name, Dimension.Metre, doubted, other, f);

    private static FactTable Table(string id, string name, Foundation.Problems.Location at, FactSheet sheet) => new(Subject.Entry, id, name, sheet.Values) { At = at };

    private static FactDeclaration Word(string name, string meaning) => Declare.Word(Subject.Entry, name, meaning);

    private static FactDeclaration Number(string name, Dimension dimension, string meaning) => Declare.Number(Subject.Entry, name, dimension, meaning);
}
