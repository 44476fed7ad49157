using System.Collections.Concurrent;
using System.Text.Json.Nodes;

namespace FitCheck.Schemas;

/// <summary>The keys of a kind that hold one thing each, as paths: `dimensions.depth`, `mounting.obstructions.*.depth`.</summary>
internal static class SchemaKeys
{
    /// <summary>What stands for the name of an item in a list.</summary>
    public const string Name = "*";

    private static readonly ConcurrentDictionary<string, IReadOnlyList<string>> Known = new(StringComparer.Ordinal);

    /// <summary>
    /// The paths in the order of the schema. Of a list whose items have names, those of its items; any list counts as one thing too, which
    /// may be empty.
    /// </summary>
    /// <param name="kind">One of <see cref="SchemaText.Kinds"/>.</param>
    /// <param name="list">Those of the items of this list instead of those of the entry itself.</param>
    public static IReadOnlyList<string> Of(string kind, string? list = null) => Known.GetOrAdd($"{kind}/{list}", _ =>
    {
        var schema = JsonNode.Parse(SchemaText.Files(kind)!.Value.Own)!;
        return [.. Under(list is null ? schema : schema["properties"]![list]!["items"]!, "")];
    });

    private static IEnumerable<string> Under(JsonNode schema, string path)
    {
        if (schema["properties"] is null && schema["anyOf"] is JsonArray either)
            return either.Where(e => e?["properties"] is not null).SelectMany(e => Under(e!, path)).Prepend(path);
        if (schema["properties"] is not JsonObject properties)
            return [path];
        return properties.SelectMany(p => OfKey(p.Value!, path.Length == 0 ? p.Key : $"{path}.{p.Key}"));
    }

    private static IEnumerable<string> OfKey(JsonNode schema, string path)
    {
        if (schema["type"]?.GetValue<string>() != "array")
            return Under(schema, path);
        return schema["items"]?["properties"]?["name"] is null ? [path] : Under(schema["items"]!, $"{path}.{Name}").Prepend(path);
    }
}
