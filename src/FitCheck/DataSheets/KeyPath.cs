using System.Text.Json.Nodes;
using FitCheck.Schemas;

namespace FitCheck.DataSheets;

/// <summary>What may stand behind a key: one of several things, as the schema has them.</summary>
/// <param name="Schema">With the shared definition in the place of a reference.</param>
/// <param name="Sort">The name of the shared definition: `length`; empty for none.</param>
internal sealed record KeyAlternative(JsonNode Schema, string Sort)
{
    /// <summary>`string`, `number`, `integer`, `boolean`, `object`, `array`; empty for none of its own.</summary>
    public string Type => Schema["type"]?.GetValue<string>() ?? "";

    /// <summary>True for a figure with its unit, and for money.</summary>
    public bool HasUnit => Sort.Length > 0 && Sort != "id" && Schema["pattern"] is not null;
}

/// <summary>A key of a kind's entries that has a column of its own, nested ones with dots: `dimensions.depth`.</summary>
/// <param name="Path">The keys from the entry on.</param>
/// <param name="Alternatives">What may stand there.</param>
internal sealed record KeyPath(string Path, IReadOnlyList<KeyAlternative> Alternatives)
{
    public IReadOnlyList<string> Keys { get; } = Path.Split('.');

    /// <summary>The words that are allowed there.</summary>
    public IReadOnlyList<string> Words { get; } = [.. Alternatives.SelectMany(a => a.Schema["enum"] as JsonArray ?? [])
        .Select(w => w!.ToJsonString().Trim('"'))];

    /// <summary>A figure that may stand there; null for none.</summary>
    public KeyAlternative? Figure => Alternatives.FirstOrDefault(a => a.HasUnit);

    /// <summary>True where a scalar of this type may stand.</summary>
    public bool Takes(string type) => Alternatives.Any(a => a.Type == type);

    /// <summary>What the items of a list are; null where no list may stand.</summary>
    public KeyPath? Item => Alternatives.FirstOrDefault(a => a.Type == "array")?.Schema["items"] is { } items ? Of(Path, items, Root(items))
        : null;

    /// <summary>The paths of a kind, in the order of its schema.</summary>
    public static IReadOnlyList<KeyPath> Of(string kind)
    {
        var schema = JsonNode.Parse(SchemaText.Of(kind)!)!;
        return [.. Under(schema, "", schema)];
    }

    // What is a mapping gives a path for each of its keys, and one for what else may stand there.
    private static IEnumerable<KeyPath> Under(JsonNode schema, string path, JsonNode root)
    {
        var here = Of(path, schema, root);
        if (path.Length > 0)
            yield return here;
        foreach (var (key, inner) in here.Alternatives.Select(a => a.Schema["properties"]).OfType<JsonObject>().FirstOrDefault() ?? [])
        {
            foreach (var found in Under(inner!, path.Length == 0 ? key : $"{path}.{key}", root))
                yield return found;
        }
    }

    private static KeyPath Of(string path, JsonNode schema, JsonNode root)
    {
        var own = Followed(schema, root);
        return new KeyPath(path, own.Schema["properties"] is null && own.Schema["anyOf"] is JsonArray either
            ? [.. either.Select(e => Followed(e!, root))] : [own]);
    }

    private static KeyAlternative Followed(JsonNode schema, JsonNode root) =>
        schema["$ref"]?.GetValue<string>().Split('/')[^1] is { } name && root["definitions"]?[name] is { } shared
            ? new KeyAlternative(shared, name) : new KeyAlternative(schema, "");

    private static JsonNode Root(JsonNode node)
    {
        while (node.Parent is { } above)
            node = above;
        return node;
    }
}
