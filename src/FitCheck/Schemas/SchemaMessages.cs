using System.Text.RegularExpressions;
using FitCheck.Foundation.Problems;
using FitCheck.Yaml;
using NJsonSchema;
using NJsonSchema.Validation;

namespace FitCheck.Schemas;

/// <summary>Says in a sentence what a schema violation means: what was expected, what was found, what is near.</summary>
internal static class SchemaMessages
{
    public static string For(ValidationError error, YamlNode? found)
    {
        var schema = error.Schema.ActualSchema;
        return error.Kind switch
        {
            ValidationErrorKind.NoAdditionalPropertiesAllowed => UnknownKey(error, schema),
            ValidationErrorKind.NotInEnumeration => NotInEnumeration(error, schema, found),
            ValidationErrorKind.TooFewItems =>
                $"expected at least {schema.MinItems} {(schema.MinItems == 1 ? "item" : "items")}{In(error)}",
            ValidationErrorKind.TooManyItems => $"expected at most {schema.MaxItems} items{In(error)}",
            ValidationErrorKind.ArrayExpected => $"expected a list for `{error.Property}`{Found(found)}",
            ValidationErrorKind.ObjectExpected => $"expected a mapping of keys{Property(error)}{Found(found)}",
            _ => $"expected {Expected(schema)}{Property(error)}{Found(found)}{UnitHint(schema, found)}",
        };
    }

    /// <summary>What keys a place needs, with a line for each that can be pasted there.</summary>
    public static string Missing(IReadOnlyList<ValidationError> errors) => errors is [var only]
        ? $"the key `{only.Property}` is missing here{Within(only)}{Meaning(only)}; add `"
            + $"{Line(only.Schema, only.Property).Split("  # ")[0]}`{Instead(only)}"
        : $"{errors.Count} keys are missing here{Within(errors[0])}; add {string.Join("; ", errors.OrderBy(Rank)
            .Select(e => $"`{Line(e.Schema, e.Property)}`"))}{errors.Select(Instead).FirstOrDefault(i => i.Length > 0)}";

    // As the schema has them.
    private static int Rank(ValidationError error) =>
        Owner(error.Schema, error.Property)?.ActualProperties.Keys.ToList().IndexOf(error.Property!) ?? int.MaxValue;

    // Of several sets of keys one has to be there.
    private static string Instead(ValidationError error) =>
        error.Schema.ParentSchema?.AnyOf is { Count: > 1 } sets && sets.Contains(error.Schema) && sets.First() is var other
            && other != error.Schema && other.RequiredProperties.Count == 1
            ? $"; or instead of {string.Join(", ", error.Schema.RequiredProperties.Select(k => $"`{k}`"))}: "
                + $"`{other.RequiredProperties.First()}: true`" : "";

    // `#/positions[0].mounting.holes.circle` stands in `holes`.
    private static string Within(ValidationError error) =>
        error.Path?.Split('/', '.') is [.., var above, _] && above is not ("#" or "") ? $", in `{above.Split('[')[0]}`" : "";

    private static string Line(JsonSchema schema, string? name)
    {
        var key = PropertyOf(schema, name);
        var remark = key is null ? "" : SchemaExamples.Remark(key);
        return $"{name}: {(key is null ? "…" : SchemaExamples.Of(key))}{(remark.Length > 0 ? $"  # {remark}" : "")}";
    }

    private static string UnknownKey(ValidationError error, JsonSchema schema)
    {
        var known = schema.ActualProperties.Keys.Order(StringComparer.Ordinal).ToList();
        var near = Nearest.To(error.Property ?? "", known);
        return near is null
            ? $"unknown key `{error.Property}`; the keys here are {string.Join(", ", known)}"
            : $"unknown key `{error.Property}`; did you mean `{near}`?";
    }

    private static string NotInEnumeration(ValidationError error, JsonSchema schema, YamlNode? found)
    {
        var words = schema.Enumeration.Select(e => e is true ? "true" : e?.ToString() ?? "").ToList();
        var text = found is YamlScalar scalar ? scalar.Text : "";
        return $"expected {(words.Count == 1 ? "" : "one of ")}{string.Join(", ", words)}{Property(error)}{Found(found)}"
            + $"{Nearest.Hint(text, words)}";
    }

    // The most common slip of all: a bare number where a unit is needed.
    private static string UnitHint(JsonSchema schema, YamlNode? found) =>
        found is YamlScalar { Quoted: false } scalar && schema.Pattern is not null
            && schema.Description?.Contains("with its unit", StringComparison.Ordinal) == true
        && Physics.Quantities.QuantityText.ParseNumber(scalar.Text) is not null
            ? "; a bare number has no unit"
            : found is YamlScalar { Text: ['-', .. var size] } && schema.Pattern is { } pattern
            && Regex.IsMatch(size, pattern, RegexOptions.CultureInvariant, TimeSpan.FromSeconds(1))
            ? "; it can't be negative"
            : found is YamlScalar { Text: ['0', .. var rest] } && schema.Pattern is { } positive
            && Regex.IsMatch("1" + rest, positive, RegexOptions.CultureInvariant, TimeSpan.FromSeconds(1))
            ? "; it can't be 0"
            : "";

    private static string Expected(JsonSchema schema) =>
        !string.IsNullOrEmpty(schema.Description) ? schema.Description : schema.Type.ToString().ToLowerInvariant();

    private static string Meaning(ValidationError error) =>
        PropertyOf(error.Schema, error.Property) is { } key && SchemaExamples.Meaning(key) is { Length: > 0 } meaning ? $" ({meaning})"
            : "";

    private static JsonSchema? PropertyOf(JsonSchema schema, string? name) => Owner(schema, name)?.ActualProperties[name!];

    // Where one of several sets of keys has to be there, what they are stands beside the sets.
    private static JsonSchema? Owner(JsonSchema? schema, string? name)
    {
        while (schema is not null && (name is null || !schema.ActualSchema.ActualProperties.ContainsKey(name)))
            schema = schema.ParentSchema;
        return schema?.ActualSchema;
    }

    private static string Property(ValidationError error) =>
        string.IsNullOrEmpty(error.Property) || error.Property.StartsWith('[') ? "" : $" for `{error.Property}`";

    // A list within a list has no key of its own.
    private static string In(ValidationError error) =>
        string.IsNullOrEmpty(error.Property) || error.Property.StartsWith('[') ? "" : $" in `{error.Property}`";

    private static string Found(YamlNode? found) => found switch
    {
        YamlScalar { Text: "" } => ", found nothing",
        YamlScalar scalar => $", found `{Shorten(scalar.Text)}`",
        null => "",
        _ => $", found {found.Kind}",
    };

    private static string Shorten(string text)
    {
        var line = text.ReplaceLineEndings(" ");
        return line.Length <= 60 ? line : line[..57] + "...";
    }
}
