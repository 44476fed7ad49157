using System.Text.Json.Nodes;
using FitCheck.Schemas;

namespace FitCheck.EntryTables;

/// <summary>A key of a kind's entries that has a column of its own, nested ones with dots: `dimensions.depth`.</summary>
/// <param name="Path">The keys from the entry on.</param>
/// <param name="Schema">What may stand there, with the shared definition in the place of a reference.</param>
/// <param name="Sort">The name of the shared definition: `length`; empty for none.</param>
internal sealed record KeyPath(string Path, JsonNode Schema, string Sort)
{
    public IReadOnlyList<string> Keys => Path.Split('.');

    /// <summary>The words that are allowed there; empty where it is not a matter of words.</summary>
    public IReadOnlyList<string> Words =>
        [.. Scalar?["enum"] is JsonArray words ? words.Select(w => w!.ToJsonString().Trim('"')) : []];

    /// <summary>True for a figure with its unit, and for money.</summary>
    public bool HasUnit => Sort.Length > 0 && Scalar?["pattern"] is not null && Sort is not "id";

    /// <summary>`string`, `number`, `integer`, `boolean`; empty where no scalar may stand.</summary>
    public string Type => Scalar?["type"]?.GetValue<string>() ?? "";

    /// <summary>What the items of a list are; null where no list may stand.</summary>
    public KeyPath? Item => Alternatives.FirstOrDefault(a => a["type"]?.GetValue<string>() == "array")?["items"] is { } items
        ? Of(Path, items, Root(Schema)) : null;

    /// <summary>The paths of a kind, in the order of its schema.</summary>
    public static IReadOnlyList<KeyPath> Of(string kind)
    {
        var schema = JsonNode.Parse(SchemaText.Of(kind)!)!;
        return [.. Under(schema, "", schema)];
    }

    private JsonNode? Scalar => Alternatives.FirstOrDefault(a => a["type"]?.GetValue<string>() is not ("object" or "array" or null));

    private IEnumerable<JsonNode> Alternatives => Schema["properties"] is null && Schema["anyOf"] is JsonArray either
        ? either.Select(e => Followed(e!, Root(Schema)).Schema) : [Schema];

    // What is a mapping gives a path for each of its keys, and one for what else may stand there.
    private static IEnumerable<KeyPath> Under(JsonNode schema, string path, JsonNode root)
    {
        var properties = schema["properties"] as JsonObject
            ?? (schema["anyOf"] as JsonArray)?.Select(a => Followed(a!, root).Schema["properties"]).OfType<JsonObject>().FirstOrDefault();
        if (path.Length > 0)
            yield return Of(path, schema, root);
        foreach (var (key, inner) in properties ?? [])
        {
            foreach (var found in Under(inner!, path.Length == 0 ? key : $"{path}.{key}", root))
                yield return found;
        }
    }

    private static KeyPath Of(string path, JsonNode schema, JsonNode root)
    {
        var (followed, sort) = Followed(schema, root);
        return new KeyPath(path, followed, sort);
    }

    private static (JsonNode Schema, string Sort) Followed(JsonNode schema, JsonNode root) =>
        schema["$ref"]?.GetValue<string>().Split('/')[^1] is { } name && root["definitions"]?[name] is { } shared ? (shared, name)
            : (schema, "");

    private static JsonNode Root(JsonNode node)
    {
        while (node.Parent is { } above)
            node = above;
        return node;
    }
}
