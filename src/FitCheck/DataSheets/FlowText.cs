using FitCheck.Schemas;
using FitCheck.Yaml;
using Newtonsoft.Json;

namespace FitCheck.DataSheets;

/// <summary>Writes nodes as YAML in one line: `{circle: 156 mm, angles: [45, 135]}`.</summary>
internal static class FlowText
{
    // What a plain scalar may not begin with, and what ends one within brackets.
    private const string Beginnings = "-?:,[]{}#&*!|>'\"%@`";
    private const string Ends = ",[]{}";

    public static string Of(YamlNode node) => node switch
    {
        YamlScalar scalar => Scalar(scalar),
        YamlList list => $"[{string.Join(", ", list.Items.Select(Of))}]",
        YamlMap map => $"{{{string.Join(", ", map.Entries.Select(e => $"{e.Key}: {Of(e.Value)}"))}}}",
        _ => "",
    };

    /// <summary>A scalar that reads as the same: text in quotes where it would be taken for something else.</summary>
    public static string Scalar(YamlScalar scalar) =>
        !IsText(scalar) || (IsPlain(scalar.Text) && IsText(scalar with { Quoted = false })) ? scalar.Text : YamlText.Quoted(scalar.Text);

    /// <summary>The same for a value that stands alone behind its key, where commas and brackets end nothing.</summary>
    public static string Alone(YamlNode node) => node is YamlScalar scalar && IsText(scalar) && IsText(scalar with { Quoted = false })
        && IsPlain(scalar.Text, "") ? scalar.Text : Of(node);

    /// <summary>True for text, false for a number, a truth or nothing.</summary>
    public static bool IsText(YamlScalar scalar) => YamlTokenReader.Resolve(scalar).Token == JsonToken.String;

    private static bool IsPlain(string text, string ends = Ends) => text.Length > 0 && text.Trim() == text && !text.Any(char.IsControl)
        && (!Beginnings.Contains(text[0], StringComparison.Ordinal) || (text[0] == '-' && text.Length > 1 && char.IsAsciiDigit(text[1])))
        && !text.AsSpan().ContainsAny(ends) && !text.Contains(": ", StringComparison.Ordinal) && !text.EndsWith(':')
        && !text.Contains(" #", StringComparison.Ordinal) && !text.Contains('\u2028', StringComparison.Ordinal);
}
