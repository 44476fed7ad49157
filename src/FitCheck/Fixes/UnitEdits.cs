using System.Text.Json.Nodes;
using System.Text.RegularExpressions;
using FitCheck.Foundation.Problems;
using FitCheck.Schemas;
using FitCheck.Yaml;

namespace FitCheck.Fixes;

/// <summary>Finds the values of which the schema says that they are quantities, and spells their units as the catalog does.</summary>
internal sealed class UnitEdits
{
    private static readonly Dictionary<string, JsonNode?> Schemas = new(StringComparer.Ordinal);

    private readonly TextLines _lines;
    private readonly JsonNode _schema;
    private readonly List<Mended> _done;
    private readonly List<(YamlScalar Scalar, string Spelled)> _edits = [];

    private UnitEdits(TextLines lines, JsonNode schema, List<Mended> done) => (_lines, _schema, _done) = (lines, schema, done);

    /// <summary>Edits the lines; gives the new texts by their places.</summary>
    public static IReadOnlyDictionary<Location, string> Mended(TextLines lines, YamlNode tree, string kind, List<Mended> done)
    {
        var edits = Schema(kind) is { } schema ? new UnitEdits(lines, schema, done) : null;
        edits?.Visit(tree, edits._schema);
        return edits?.Apply() ?? [];
    }

    private static JsonNode? Schema(string kind)
    {
        lock (Schemas)
            return Schemas.TryGetValue(kind, out var known) ? known
                : Schemas[kind] = SchemaText.Of(kind) is { } text ? JsonNode.Parse(text) : null;
    }

    private void Visit(YamlNode node, JsonNode? schema)
    {
        var name = Text(schema, "$ref")?.Split('/')[^1];
        var actual = Meant(name is null ? schema : _schema["definitions"]?[name], node);
        switch (node)
        {
            case YamlMap map:
                foreach (var entry in map.Entries)
                    Visit(entry.Value, actual?["properties"]?[entry.Key]);
                break;
            case YamlList list:
                foreach (var item in list.Items)
                    Visit(item, actual?["items"]);
                break;
            case YamlScalar scalar when name is not null && Text(actual, "pattern") is { } pattern:
                if (UnitSpelling.Of(name, scalar.Text) is { } spelled && spelled != scalar.Text
                    && Regex.IsMatch(spelled, pattern, RegexOptions.None, TimeSpan.FromSeconds(10)))
                    _edits.Add((scalar, spelled));
                break;
        }
    }

    // Of several alternatives the one for a mapping or a list.
    private static JsonNode? Meant(JsonNode? schema, YamlNode node) => schema?["properties"] is null
        && schema?["anyOf"] is JsonArray alternatives
        ? alternatives.FirstOrDefault(a => Text(a, "type") == (node is YamlMap ? "object" : node is YamlList ? "array" : "string"))
        : schema;

    private static string? Text(JsonNode? schema, string key) => (string?)schema?[key];

    // From the last to the first, so that the places of those before stay right.
    private Dictionary<Location, string> Apply()
    {
        var meant = new Dictionary<Location, string>();
        foreach (var (scalar, spelled) in _edits.OrderByDescending(e => e.Scalar.At))
        {
            var (line, column) = (_lines[scalar.At.Line], scalar.At.Column - 1 + (scalar.Quoted ? 1 : 0));
            // A value with escapes, or over two lines, is not on its line as it reads.
            if (column + scalar.Text.Length > line.Length || string.CompareOrdinal(line, column, scalar.Text, 0, scalar.Text.Length) != 0)
                continue;
            _lines[scalar.At.Line] = string.Concat(line.AsSpan(0, column), spelled, line.AsSpan(column + scalar.Text.Length));
            meant[scalar.At] = spelled;
            _done.Insert(0, new Mended(scalar.At, $"`{scalar.Text}` spelled `{spelled}`"));
        }
        return meant;
    }
}
