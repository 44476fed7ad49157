using System.Text.Json.Nodes;
using FitCheck.DataSheets;
using FitCheck.Schemas;

namespace FitCheck.Cli.NewParts;

/// <summary>The keys that an entry of a kind can't be without, in the order of its schema; those within a mapping one by one.</summary>
internal static class NeededKeys
{
    /// <summary>Those that everything has.</summary>
    public static IReadOnlyList<KeyPath> Of(string kind, bool isOwned)
    {
        var schema = JsonNode.Parse(SchemaText.Of(kind)!)!;
        var needed = In(schema, "", schema, Words(schema["required"])
            .Concat(isOwned || schema["anyOf"] is not JsonArray sets ? [] : Words(sets[^1]!["required"]))).ToList();
        var paths = KeyPath.Of(kind).ToDictionary(p => p.Path, StringComparer.Ordinal);
        return [.. needed.Select(n => paths[n])];
    }

    /// <summary>True for a kind of which one may own something: a vehicle is nobody's part.</summary>
    public static bool MayBeOwned(string kind) => KeyPath.Of(kind).Any(p => p.Path == "owned");

    private static IEnumerable<string> In(JsonNode schema, string above, JsonNode root, IEnumerable<string> required)
    {
        var needed = required.ToHashSet(StringComparer.Ordinal);
        foreach (var (key, value) in schema["properties"]!.AsObject().Where(p => needed.Contains(p.Key)))
        {
            var inner = value!["$ref"]?.GetValue<string>().Split('/')[^1] is { } name ? root["definitions"]![name]! : value;
            var path = above + key;
            if (inner["properties"] is not null && Words(inner["required"]).Any())
            {
                foreach (var found in In(inner, path + ".", root, Words(inner["required"])))
                    yield return found;
            }
            else
                yield return path;
        }
    }

    private static IEnumerable<string> Words(JsonNode? list) => (list as JsonArray)?.Select(w => w!.GetValue<string>()) ?? [];
}
