using System.Text.RegularExpressions;
using NJsonSchema;

namespace FitCheck.Schemas;

/// <summary>What a schema says of a key to somebody who has to write it: what it means, and an example.</summary>
internal static partial class SchemaExamples
{
    /// <summary>A value that may stand there, as it is written behind the key.</summary>
    public static string Of(JsonSchema key)
    {
        var actual = key.ActualSchema;
        if (Such(key.Description) is { } own)
            return own;
        if (actual.Enumeration.Count > 0)
            return actual.Enumeration.First() is true ? "true" : actual.Enumeration.First()!.ToString()!;
        if (Such(actual.Description) is { } such)
            return such;
        if (actual.AnyOf.Count > 0)
            return Of(actual.AnyOf.LastOrDefault(a => a.ActualSchema.Type is JsonObjectType.Object or JsonObjectType.Array)
                ?? actual.AnyOf.First());
        return actual.Type switch
        {
            JsonObjectType.Boolean => "true",
            JsonObjectType.Integer or JsonObjectType.Number => "1",
            JsonObjectType.Array => $"[{string.Join(", ", Enumerable.Repeat(actual.Item is { } item ? Of(item) : "…",
                Math.Max(1, actual.MinItems)))}]",
            JsonObjectType.Object => $"{{{string.Join(", ", Needed(actual).Select(n => $"{n}: {Of(actual.ActualProperties[n])}"))}}}",
            _ => "…",
        };
    }

    /// <summary>What it is, in a few words with its example: its own, else those of its sort; empty where there are none.</summary>
    public static string Meaning(JsonSchema key) => Text(key.Description) ?? Text(key.ActualSchema.Description) ?? "";

    /// <summary>The same of a key by its path from the entry on.</summary>
    public static string Meaning(JsonSchema entry, IEnumerable<string> keys)
    {
        var key = keys.Aggregate(entry, (schema, k) => schema.ActualSchema.ActualProperties[k]);
        return key.ActualSchema.Enumeration.Count > 0 || Such(Meaning(key)) is not null ? Meaning(key)
            : $"{Meaning(key)}{(Meaning(key).Length > 0 ? ", " : "")}such as `{Of(key)}`";
    }

    /// <summary>The same without the example, which stands before it.</summary>
    public static string Remark(JsonSchema key) => Example().Replace(Meaning(key), "").Trim();

    // An object that asks for nothing is shown with its first key.
    private static IEnumerable<string> Needed(JsonSchema schema) =>
        schema.RequiredProperties.Count > 0 ? schema.RequiredProperties : schema.ActualProperties.Keys.Take(1);

    private static string? Text(string? text) => string.IsNullOrWhiteSpace(text) ? null : text;

    private static string? Such(string? text) => text is not null && Example().Match(text) is { Success: true } found
        ? found.Groups["value"].Value : null;

    [GeneratedRegex(",? such as `(?<value>[^`]+)`( or `[^`]+`)?",
        RegexOptions.CultureInvariant | RegexOptions.ExplicitCapture | RegexOptions.NonBacktracking)]
    private static partial Regex Example();
}
