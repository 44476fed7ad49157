using System.Text.Json;

namespace FitCheck.Tests.Facts;

/// <summary>
/// The keys of the schemas that no fact of a reference build moves by, each with the reason; what is read and used by nothing is a defect.
/// </summary>
internal static class UnusedKeys
{
    private static readonly string[] Kinds = ["adapter", "amplifier", "component-set", "crossover", "cup", "driver", "harness",
        "line-converter", "source-unit", "sundry", "vehicle", "wiring"];

    // A key as `kind.path`, or only its end as `*.key`.
    private static readonly Dictionary<string, string> Reasons = new(StringComparer.Ordinal)
    {
        ["*.id"] = "a name",
        ["*.kind"] = "a name",
        ["*.name"] = "a name",
        ["*.notes"] = "a remark",
        ["*.source"] = "a remark",
        ["*.provenance"] = "asked of every figure",
        ["*.availability"] = "required; a word of the list",
        ["*.pack"] = "required; a count of the list",
        ["*.price"] = "required; a sum of the list",
        ["*.articles"] = "by which a seller's list finds it",
        ["*.owned"] = "a word of the list: nothing of it is bought",
        ["*.type"] = "which sort it is",
        ["*.shape"] = "which sort it is",
        ["adapter.cuttable"] = "of a spacer: told to the fitter",
        ["amplifier.channels"] = "required; which outputs there are",
        ["amplifier.high_level_input.load"] = "no reference build needs it to decide",
        ["amplifier.box"] = "told to the fitter: no place of a vehicle says how large an amplifier may be",
        ["component-set.woofer"] = "which it is",
        ["component-set.tweeter"] = "which it is",
        ["component-set.crossover"] = "which it is",
        ["component-set.contains"] = "what is in a box is not bought twice",
        ["crossover.default_setting"] = "a choice of the maker",
        ["crossover.crossover_frequency"] = "told; what is reckoned with are the parts",
        ["cup.cutout"] = "every cup of a reference build is made for one place",
        ["cup.material"] = "told; whether it can be cut is asked of `cuttable`",
        ["driver.dimensions.profile"] = "no driver of a reference build is drawn",
        ["driver.holes.count"] = "counted by the angles",
        ["driver.holes.slot"] = "no driver of a reference build has slots",
        ["harness.from"] = "a name",
        ["harness.to"] = "a name and what is required",
        ["harness.gauge"] = "a hand's breadth of wire: it has next to no resistance",
        ["line-converter.filters"] = "no converter of a reference build makes a filter that is set",
        ["line-converter.filter_slopes"] = "the same",
        ["line-converter.high_pass_range"] = "the same",
        ["line-converter.low_pass_range"] = "the same",
        ["source-unit.filters"] = "no source of a reference build makes a filter that is set",
        ["source-unit.filter_slopes"] = "the same",
        ["source-unit.high_pass_range"] = "the same",
        ["source-unit.low_pass_range"] = "the same",
        ["line-converter.supply_current"] = "its fuse is in its own lead: new cables are laid for amplifiers",
        ["source-unit.supply_current"] = "it runs on the fuse of the factory radio: new cables are laid for amplifiers",
        ["source-unit.factory"] = "which it is",
        ["source-unit.channels"] = "required; which outputs there are",
        ["source-unit.connector"] = "a name",
        ["source-unit.senses_load"] = "by a truth that a drop alone moves",
        ["sundry.thickness"] = "told to the fitter",
        ["sundry.area"] = "told to the fitter",
        ["sundry.recovered"] = "told to the fitter",
        ["vehicle.factory_source"] = "a name",
        ["vehicle.supply.battery_to_cargo"] = "stands in where a build says no length",
        ["vehicle.supply.main_fuse_place"] = "words for the fitter",
        ["source-unit.output_ground"] = "a word that no reference build makes matter",
        ["vehicle.supply.battery_to_seat"] = "stands in where a build says no length",
        ["position.mirror_of"] = "a name",
        ["position.side"] = "what it is",
        ["position.role"] = "what it is",
        ["position.place"] = "what it is",
        ["position.mounting.panel_thickness"] = "moves a hole by less than is told",
        ["position.mounting.holes.count"] = "counted by the angles",
        ["position.mounting.recess_minor"] = "of the only oval recess of a reference build the long axis decides",
        ["position.mounting.holes.screw"] = "read where screws go into the panel, as in one reference build only",
        ["position.mounting.holes.slot"] = "no hole of a reference build hangs on it",
        ["position.mounting.module_room"] = "a list that is read whole",
        ["position.feed.type"] = "required",
        ["position.connector.family"] = "a name",
        ["wiring.conductor"] = "required of cables",
        ["build.vehicle"] = "without it there is nothing to check",
        ["build.instead_of"] = "takes the place of every datum of the vehicle, as `readings` do of one",
        ["build.owned"] = "a word of the list: nothing of it is bought",
        ["build.quote.price"] = "a sum of the list; no reference build has a quote's own prices",
        ["build.keep"] = "a wish for `suggest`",
        ["build.fit.at"] = "which place it is",
        ["build.fit.polarity"] = "no reference build has reversed leads",
        ["build.fit.measured"] = "takes the place of a datum, as `readings` do",
        ["build.readings"] = "each takes the place of a datum of the vehicle, a part or the build",
        ["build.supply.place"] = "no reference build has its block far from an amplifier",
        ["build.waive"] = "weighed when the findings are there",
        ["build.units"] = "how lengths are told",
        ["build.expect"] = "held against the answer afterwards",
    };

    public static string? Reason(string key) =>
        Reasons.FirstOrDefault(r => IsUnder(key, r.Key) || EndsIn(key, r.Key)).Value;

    public static bool IsUnder(string key, string above) => key == above || key.StartsWith(above + ".", StringComparison.Ordinal);

    public static bool EndsIn(string key, string listed) =>
        listed.StartsWith("*.", StringComparison.Ordinal) && key.EndsWith(listed[1..], StringComparison.Ordinal);

    /// <summary>Every key that a build may have, after the word `build`.</summary>
    public static IEnumerable<string> OfBuilds()
    {
        using var schema = JsonDocument.Parse(File.ReadAllText(RepositoryRoot.Of("catalog", "schema", "build.schema.json")));
        return [.. In(schema.RootElement, "build").Distinct(StringComparer.Ordinal)];
    }

    /// <summary>Every key that has a reason.</summary>
    public static IReadOnlyCollection<string> Listed => Reasons.Keys;

    /// <summary>Every key that an entry may have and under which there is no other, after its kind; of a position from there.</summary>
    public static IEnumerable<string> All()
    {
        foreach (var kind in Kinds)
        {
            using var schema = JsonDocument.Parse(File.ReadAllText(RepositoryRoot.Of("catalog", "schema", kind + ".schema.json")));
            foreach (var key in In(schema.RootElement, kind).Distinct(StringComparer.Ordinal).ToList())
                yield return key.StartsWith("vehicle.positions.", StringComparison.Ordinal)
                    ? "position." + key["vehicle.positions.".Length..] : key;
        }
    }

    private static IEnumerable<string> In(JsonElement element, string above)
    {
        var inner = Inner(element, above).ToList();
        return inner.Count == 0 ? [above] : inner;
    }

    private static IEnumerable<string> Inner(JsonElement element, string above)
    {
        if (element.TryGetProperty("properties", out var properties))
            return properties.EnumerateObject().SelectMany(p => In(p.Value, $"{above}.{p.Name}"));
        if (element.TryGetProperty("items", out var items) && items.ValueKind == JsonValueKind.Object)
            return Inner(items, above);
        return element.TryGetProperty("anyOf", out var any) ? any.EnumerateArray().SelectMany(a => Inner(a, above)) : [];
    }
}
