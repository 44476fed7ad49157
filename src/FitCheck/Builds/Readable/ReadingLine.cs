using System.Buffers;
using System.Globalization;
using FitCheck.Physics.Quantities;
using FitCheck.Yaml;

namespace FitCheck.Builds.Readable;

/// <summary>A reading as a line under `readings` of a build: to fill in, or filled in.</summary>
internal static class ReadingLine
{
    /// <summary>Where a pen, or an editor, puts what was read.</summary>
    public const string Blank = "____";

    // What a word in a mapping in one line can't have bare.
    private static readonly SearchValues<char> Marks = SearchValues.Create(",[]{}:#\"'&*!|>%@`");

    /// <summary>
    /// `{at: front-door-left, of: obstructions.window glass.depth, value: ____ mm}`, behind it the words that may be written; null where
    /// no reading answers it.
    /// </summary>
    public static string? ToFillIn(DatumKey key)
    {
        if (AnswerShape.Of(key) is not { } shape)
            return null;
        var blank = shape is { IsNumber: false, Words: [var only] } ? only : shape.Unit is { } unit ? $"{Blank} {Told(unit)}" : Blank;
        var words = shape.Words.Count == 0 || blank == shape.Words[0] ? ""
            : $"  # {(shape.IsNumber ? "or " : "")}{string.Join(", ", shape.Words.SkipLast(1))}"
                + $"{(shape.Words.Count > 1 ? " or " : "")}{shape.Words[^1]}";
        return Line(key, blank) + words;
    }

    /// <summary>The line with what was read, how far it may be off and when it was taken.</summary>
    public static string Filled(DatumKey key, string value, string? tolerance, DateOnly on) =>
        Line(key, $"{Word(value)}{(tolerance is null ? "" : $", tolerance: {tolerance}")}, on: {Day(on)}");

    /// <summary>A day as builds write it.</summary>
    public static string Day(DateOnly day) => day.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);

    // What is filled in is filled in in the units in which lengths are told.
    private static string Told(string unit) => unit is "mm" or "m" && Lengths.Told == LengthUnits.Inch ? "in" : unit;

    private static string Line(DatumKey key, string rest) => $"{{at: {key.At}, of: {Word(Short(key))}, value: {rest}}}";

    // As a person names it: what stands behind a panel needs no `mounting` before it.
    private static string Short(DatumKey key) =>
        key.Kind == DatumKey.Position && key.Of.StartsWith("mounting.obstructions", StringComparison.Ordinal)
            ? key.Of["mounting.".Length..] : key.Of;

    private static string Word(string text) => !text.AsSpan().ContainsAny(Marks) && text == text.Trim() ? text
        : YamlText.Quoted(text);
}
