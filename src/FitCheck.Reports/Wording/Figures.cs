using System.Globalization;
using FitCheck.Facts;
using FitCheck.Facts.Sound;
using FitCheck.Findings;
using FitCheck.Foundation.Problems;
using FitCheck.Physics.Quantities;

namespace FitCheck.Reports.Wording;

/// <summary>Numbers as people read them, the same in every culture.</summary>
internal static class Figures
{
    private static readonly Unit Millimetre = Unit.Find("mm")!;

    public static string Whole(int number) => number.ToString(CultureInfo.InvariantCulture);

    /// <summary>A number in its unit: `4.2 mm`, `12 %`, `1.5`.</summary>
    public static string Show(double value, string unit)
    {
        if (LengthOf(unit) is { } length && double.IsFinite(value))
            return QuantityText.Format(length.ToSi(value), length);
        var number = Bare(value, unit);
        return unit is "" or "1" ? number : unit == "Hz" ? Hertz(value) : $"{number} {unit}";
    }

    /// <summary>
    /// What is cut, drilled or bought by its size, given in mm: where inches are told, with the fraction that a rule or a drill has,
    /// rounded to the side that keeps it: `143 mm (5 41/64 in)`.
    /// </summary>
    public static string Sized(double mm, bool orMore) => Lengths.Told == LengthUnits.Millimetre ? Show(mm, "mm")
        : $"{QuantityText.Number(mm, Millimetre.Decimals)} mm ({Lengths.Fraction(Millimetre.ToSi(mm), orMore)})";

    /// <summary>
    /// The number alone, rounded as its unit deserves; a small ratio keeps two digits, so that it never reads as nothing.
    /// </summary>
    public static string Bare(double value, string unit)
    {
        if (!double.IsFinite(value))
            return "unknown";
        // With both units told, a bare number is the one before the brackets.
        if (Lengths.Told == LengthUnits.Inch && LengthOf(unit) is { } length)
            return QuantityText.Number(length.ToSi(value) / Lengths.Inch, Lengths.Decimals(length.ToSi(value) / Lengths.Inch));
        if (IsMoney(unit))
            return value.ToString("0.00", CultureInfo.InvariantCulture);
        var decimals = Unit.Find(unit)?.Decimals ?? 2;
        if (unit is "" or "1" && value != 0 && Math.Abs(value) < 0.095)
            decimals = Math.Clamp(1 - (int)Math.Floor(Math.Log10(Math.Abs(value))), 2, 4);
        return QuantityText.Number(value, decimals);
    }

    private static bool IsMoney(string unit) => unit == "money" || (unit.Length == 3 && unit.All(char.IsAsciiLetterUpper));

    /// <summary>`2.2 to 6.2 mm`.</summary>
    public static string Range(double low, double high, string unit) => unit == "Hz" ? $"{Hertz(low)} to {Hertz(high)}"
        : Lengths.Told == LengthUnits.Both && LengthOf(unit) is { } length
        ? $"{Bare(low, unit)} to {Bare(high, unit)} {unit} ({Lengths.InInches(length.ToSi(low))} to {Lengths.InInches(length.ToSi(high))})"
        : $"{Bare(low, unit)} to {Show(high, unit)}";

    // A unit of length that is told otherwise now.
    private static Unit? LengthOf(string unit) =>
        Lengths.Told != LengthUnits.Millimetre && Unit.Find(unit) is { } found && Lengths.Concerns(found) ? found : null;

    public static string Hertz(double hz) => QuantityText.Format(hz, Dimension.Hertz);

    /// <summary>False where value and limit say no more than the message: truths, words and counts.</summary>
    public static bool Tell(Finding finding) =>
        (finding.Value is not null || finding.Limit is not null) && !(finding.Unit.Length == 0 && IsCount(finding.Fact));

    /// <summary>`4.2 mm (2.2 to 6.2 mm); limit 3 mm; margin 1.2 mm, at worst -0.8 mm`. Empty when the numbers tell nothing.</summary>
    public static string Row(Finding finding)
    {
        if (!Tell(finding))
            return "";
        var row = finding.Value is null ? "value unknown" : Value(finding);
        if (finding.Value is { IsExact: false } value)
            row += $" ({Range(value.Low, value.High, finding.Unit)})";
        if (finding.Limit is { } limit)
            row += $"; limit {Show(limit, finding.Unit)}";
        if (Margin(finding) is { } margin)
            row += $"; margin {margin}";
        return row;
    }

    /// <summary>The value alone; `unknown` without one.</summary>
    public static string Value(Finding finding) => finding.Value is { } value ? Show(value.Value, finding.Unit) : "unknown";

    /// <summary>
    /// `3.1 mm, at worst -2 mm`: says so where the worst cases lie on both sides of the limit, since the status comes from them.
    /// </summary>
    public static string? Margin(Finding finding)
    {
        if (finding.Margin is not { } margin)
            return null;
        var text = Show(margin, finding.Unit);
        if (finding.Value is not { IsExact: false } value || finding.Limit is not { } limit
            || GoodSide(finding) is not (var side and not 0))
            return text;
        var (worst, best) = side > 0 ? (value.Low - limit, value.High - limit) : (limit - value.High, limit - value.Low);
        return margin >= 0 && worst < 0 ? $"{text}, at worst {Show(worst, finding.Unit)}"
            : margin < 0 && best >= 0 ? $"{text}, at best {Show(best, finding.Unit)}"
            : text;
    }

    // A fact's type does not tell a count from a ratio; its name does.
    private static bool IsCount(string fact) =>
        fact.EndsWith("_count", StringComparison.Ordinal) || fact == TweeterFacts.HighPasses.Name
            || fact == BuildFacts.OtherCurrencies.Name;

    /// <summary>Where in a file, for a person to look.</summary>
    public static string Place(Location at) =>
        at.Line == 0 ? at.File : string.Create(CultureInfo.InvariantCulture, $"{at.File}:{at.Line}");

    /// <summary>Where in a file, without the folders of the machine, for a page that is handed on.</summary>
    public static string ShortPlace(Location at) => Place(at with { File = ShortFile(at.File) });

    /// <summary>A rooted path from its catalog or rules on, or its name alone; others as they are.</summary>
    public static string ShortFile(string file)
    {
        if (!Path.IsPathRooted(file))
            return file;
        var parts = file.Split('/', '\\');
        var from = Array.FindLastIndex(parts, p => p is "catalog" or "rules");
        return string.Join('/', parts[(from > 0 ? from : parts.Length - 1)..]);
    }

    /// <summary>+1 when larger is better than the limit, -1 when smaller is, 0 when the numbers do not tell.</summary>
    public static int GoodSide(Finding finding)
    {
        if (finding.Value is not { } value || finding.Limit is not { } limit || finding.Margin is not { } margin)
            return 0;
        var side = Math.Sign(value.Value - limit);
        return margin >= 0 ? side : -side;
    }
}
