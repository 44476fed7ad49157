using System.Collections.Concurrent;
using System.Text.Json.Nodes;
using FitCheck.Schemas;

namespace FitCheck.Builds.Readable;

/// <summary>What belongs behind `value` of a reading, by the schema of what it is read of.</summary>
/// <param name="Unit">The unit that is usual there, `mm`; null for a bare number, and for words alone.</param>
/// <param name="IsNumber">Whether a number, with a unit or without, is an answer.</param>
/// <param name="Words">Words that are answers too.</param>
internal sealed record AnswerShape(string? Unit, bool IsNumber, IReadOnlyList<string> Words)
{
    // What each definition that the schemas share is told in.
    private static readonly Dictionary<string, string?> Units = new(StringComparer.Ordinal)
    {
        ["length"] = "mm",
        ["size"] = "mm",
        ["coordinate"] = "mm",
        ["area"] = "cm2",
        ["gauge"] = "mm2",
        ["resistance"] = "ohm",
        ["power"] = "W",
        ["voltage"] = "V",
        ["current"] = "A",
        ["frequency"] = "Hz",
        ["crossover-limit"] = "Hz @ ____ dB/octave",
        ["level"] = "dB",
        ["sensitivity"] = "dB @ 2.83 V/1 m",
        ["capacitance"] = "uF",
        ["inductance"] = "mH",
        ["mass"] = "g",
        ["volume"] = "L",
        ["compliance"] = "mm/N",
        ["force-factor"] = "T m",
        ["angle"] = "deg",
        ["percentage"] = "%",
        ["temperature"] = "degC",
        ["count"] = null,
        ["number"] = null,
        ["factor"] = null,
        ["clock"] = null,
    };

    private static readonly ConcurrentDictionary<(string, string), AnswerShape?> Known = new();

    /// <summary>True where a length is the answer.</summary>
    public bool IsLength => Unit is "mm" or "m";

    /// <summary>True where a reading can only say that there is none; what there is belongs into the entry.</summary>
    public bool IsNothingOnly => !IsNumber && Words is ["none"];

    /// <summary>What answers this datum; null where no reading does.</summary>
    public static AnswerShape? Of(DatumKey key) => Known.GetOrAdd((key.Kind, key.Of), _ => Found(key));

    private static AnswerShape? Found(DatumKey key)
    {
        var (kind, list) = key.Kind switch
        {
            DatumKey.Position => ("vehicle", "positions"),
            DatumKey.Line => ("build", "fit"),
            DatumKey.Device => ("build", "devices"),
            var own => (own, (string?)null),
        };
        if (SchemaText.Files(kind) is not { } files || Reading.PathOf(key.Of, ReadingReader.Keys(kind, list)) is not { } path)
            return null;
        var schema = JsonNode.Parse(files.Own)!;
        var (unit, isNumber, words) = ((string?)null, false, new List<string>());
        foreach (var end in At(list is null ? schema : schema["properties"]![list]!["items"]!, [.. path]))
        {
            var meant = end["$ref"]?.GetValue<string>().Split('/')[^1];
            if (meant is not null && Units.TryGetValue(meant, out var usual))
                (unit, isNumber) = (usual, true);
            else if (end["enum"] is JsonArray enumerated)
                words.AddRange(enumerated.Select(w => w!.GetValue<string>()));
            else if (meant == "truth")
                words.AddRange(["true", "false"]);
            else if (meant is "id" or "text")
                words.Add("");
            else if (path is ["mounting", "obstructions"])
                words.Add("none");
        }
        return isNumber || words.Count > 0 ? new AnswerShape(unit == "mm" && IsWay(key) ? "m" : unit, isNumber,
            [.. words.Where(w => w.Length > 0)]) : null;
    }

    // What a tape is laid along, and no calliper reaches.
    private static bool IsWay(DatumKey key) => key.Of.StartsWith("supply.", StringComparison.Ordinal)
        || key.Of is "wire.length" or "new_wire.length" || key is { Kind: "wiring", Of: "length" } || key.Kind == DatumKey.Device;

    // All that may stand at the end of a path.
    private static IEnumerable<JsonNode> At(JsonNode schema, ReadOnlySpan<string> path)
    {
        // What an entry may have stands above the ways in which some of it may be missing.
        if (!path.IsEmpty && schema["properties"]?[path[0]] is { } own)
            return At(own, path[1..]);
        if (schema["anyOf"] is JsonArray either)
        {
            var found = new List<JsonNode>();
            foreach (var one in either)
                found.AddRange(At(one!, path));
            return found;
        }
        if (path.IsEmpty)
            return [schema];
        // An item of a list is named, and has its keys below.
        return schema["items"] is { } items ? At(items, path[1..]) : [];
    }
}
