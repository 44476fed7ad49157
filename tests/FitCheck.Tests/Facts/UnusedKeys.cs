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
    };

    public static IEnumerable<string> Listed => Reasons.Keys;

    public static string? Reason(string key) =>
        Reasons.FirstOrDefault(r => IsUnder(key, r.Key) || EndsIn(key, r.Key)).Value;

    public static bool IsUnder(string key, string above) => key == above || key.StartsWith(above + ".", StringComparison.Ordinal);

    public static bool EndsIn(string key, string listed) =>
        listed.StartsWith("*.", StringComparison.Ordinal) && key.EndsWith(listed[1..], StringComparison.Ordinal);

    /// <summary>Every key that an entry may have and under which there is no other, after its kind; of a position from there.</summary>
    public static IEnumerable<string> All()
    {
        foreach (var kind in Kinds)
        {
            using var schema = JsonDocument.Parse(File.ReadAllText(RepositoryRoot.Of("catalog", "schema", kind + ".schema.json")));
            foreach (var key in In(schema.RootElement, kind).Distinct(StringComparer.Ordinal).ToList())
                yield return key.StartsWith("vehicle.positions.", StringComparison.Ordinal) ? "position." + key["vehicle.positions.".Length..] : key;
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
