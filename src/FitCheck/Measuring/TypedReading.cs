using FitCheck.Builds;
using FitCheck.Builds.Readable;
using FitCheck.Facts.Values;
using FitCheck.Fixes;
using FitCheck.Physics.Quantities;

namespace FitCheck.Measuring;

/// <summary>What a person typed as a reading, as a build writes it.</summary>
/// <param name="Value">The value with its unit, or a word.</param>
/// <param name="Tolerance">How far it may be off; null where nobody says.</param>
internal sealed record TypedReading(string Value, string? Tolerance)
{
    // From here on a tape or a string is laid along, and nobody reads half a millimetre.
    private const double LongestOfCalliper = 0.5;

    /// <summary>The reading, or a sentence that says what was expected.</summary>
    /// <param name="shape">What may be answered.</param>
    /// <param name="typed">`60.5`, `60,5 mm`, `2 9/16 in`, `2 9/16"`, `60 ± 0.3 mm`, `none`.</param>
    /// <param name="inInches">Whether a bare number of a length counts inches; a fraction always does.</param>
    public static (TypedReading? Reading, string? Wrong) Of(AnswerShape shape, string typed, bool inInches)
    {
        var text = typed.Trim();
        var word = (text.ToLowerInvariant(), shape.Words.Contains("true")) switch
        {
            ("yes" or "y", true) => "true",
            ("no" or "n", true) => "false",
            var (lower, _) => lower,
        };
        if (shape.Words.Contains(word))
            return (new(word, null), null);
        if (!shape.IsNumber)
            return shape.Words.Count == 0 && text.Length > 0 ? (new(text, null), null)
                : (null, $"expected {(shape.Words.Count > 1 ? "one of " : "")}{string.Join(", ", shape.Words)}, found `{text}`");
        if (shape.Unit is null)
            return (new(text, null), null);
        var sign = text.IndexOf('±', StringComparison.Ordinal) is >= 0 and var at ? at
            : text.IndexOf("+/-", StringComparison.Ordinal);
        var (main, off) = sign < 0 ? (text, null) : (text[..sign].Trim(), text[(sign + (text[sign] == '±' ? 1 : 3))..].Trim());
        // The unit of what comes last counts for both: 60 ± 0.3 mm.
        var unit = UnitOf(off ?? main) is { Length: > 0 } own
            ? own : shape.IsLength && (inInches || main.Contains('/', StringComparison.Ordinal))
            ? "in" : shape.Unit;
        if (WithUnit(main, unit, shape) is not { } value)
            return (null, Expected(shape, typed, inInches));
        var tolerance = off is null ? Usual(shape, value) : WithUnit(off, unit, shape);
        return off is not null && tolerance is null ? (null, Expected(shape, typed, inInches)) : (new(value, tolerance), null);
    }

    private static string? Usual(AnswerShape shape, string value) =>
        shape.IsLength && QuantityText.Parse(value) is { Si: < LongestOfCalliper }
            ? QuantityText.Format(Stack.ReadingTolerance, Unit.Find("mm")!) : null;

    private static string UnitOf(string text) => text.TrimStart([.. "0123456789.,/- "]);

    private static string? WithUnit(string text, string unit, AnswerShape shape)
    {
        var number = text[..^UnitOf(text).Length].Trim();
        var own = UnitOf(text);
        // A comma with one or two digits behind it is a decimal one; with three it may be meant for thousands.
        if (number.Split(',') is [var whole, { Length: 1 or 2 } part] && whole.All(char.IsAsciiDigit) && part.All(char.IsAsciiDigit))
            number = $"{whole}.{part}";
        var spelled = $"{number} {(own.Length > 0 ? own : unit)}";
        if (shape.IsLength)
            spelled = UnitSpelling.Of("length", spelled) ?? spelled;
        // What no quantity is, such as a sensitivity with its reference, is left to the schema.
        if (Unit.Find(shape.Unit!) is not { } wanted)
            return spelled;
        return QuantityText.Parse(spelled) is { Si: >= 0 } quantity && quantity.Dimension == wanted.Dimension ? spelled : null;
    }

    private static string Expected(AnswerShape shape, string typed, bool inInches) => shape.IsLength
        ? $"expected a length such as {(inInches ? "`2 9/16` or `2.56`, in inches, or `65 mm`" : "`65`, in millimetres, or `2 9/16 in`")}"
            + $"{(shape.Words.Count > 0 ? $", or {string.Join(", ", shape.Words)}" : "")}, found `{typed.Trim()}`"
        : $"expected a number in {shape.Unit}, found `{typed.Trim()}`";
}
