using System.Text.Json;
using System.Text.Json.Nodes;

namespace FitCheck.Schemas;

/// <summary>
/// The JSON Schemas as one self-contained text a kind. They live in catalog/schema and rules/schema, where editors use them, and travel
/// inside the library, so that a catalog elsewhere is held to the same ones.
/// </summary>
internal static class SchemaText
{
    private const string Prefix = "schema/";
    private const string Shared = "common.schema.json";

    private static readonly JsonSerializerOptions Indented = new()
    {
        WriteIndented = true,
        NewLine = "\n",
        Encoder = System.Text.Encodings.Web.JavaScriptEncoder.UnsafeRelaxedJsonEscaping
    };

    /// <summary>The kinds that have a schema, in ordinal order.</summary>
    public static IReadOnlyList<string> Kinds { get; } = [.. typeof(SchemaText).Assembly.GetManifestResourceNames()
        .Where(n => n.StartsWith(Prefix, StringComparison.Ordinal) && !n.EndsWith(Shared, StringComparison.Ordinal))
        .Select(n => n[Prefix.Length..^".schema.json".Length]).Order(StringComparer.Ordinal)];

    /// <summary>The schema of a kind with the shared definitions inside; null for an unknown kind.</summary>
    public static string? Of(string kind)
    {
        if (Raw($"{kind}.schema.json") is not { } own)
            return null;
        if (!own.Contains(Shared, StringComparison.Ordinal))
            return own;
        var schema = JsonNode.Parse(own.Replace(Shared + "#/", "#/", StringComparison.Ordinal))!.AsObject();
        schema["definitions"] = JsonNode.Parse(Raw(Shared)!)!["definitions"]!.DeepClone();
        return schema.ToJsonString(Indented) + "\n";
    }

    /// <summary>The words that a key of a kind may have; null for a kind or key without such words.</summary>
    public static IReadOnlyList<string>? WordsOf(string kind, string key) => Raw($"{kind}.schema.json") is { } own
        && JsonNode.Parse(own)!["properties"]?[key]?["enum"] is JsonArray words ? [.. words.Select(w => w!.GetValue<string>())] : null;

    /// <summary>The schema of a kind as it stands in its file, and the file that it refers to; null for an unknown kind.</summary>
    internal static (string Own, string Shared)? Files(string kind) => Raw($"{kind}.schema.json") is { } own ? (own, Raw(Shared)!) : null;

    private static string? Raw(string file) => Bytes(Prefix + file) is { } bytes ? System.Text.Encoding.UTF8.GetString(bytes) : null;

    private static byte[]? Bytes(string resource)
    {
        using var stream = typeof(SchemaText).Assembly.GetManifestResourceStream(resource);
        if (stream is null)
            return null;
        using var memory = new MemoryStream();
        stream.CopyTo(memory);
        return memory.ToArray();
    }
}
