using System.Globalization;
using FitCheck.Findings;
using FitCheck.Physics.Quantities;
using FitCheck.Yaml;

namespace FitCheck.Reports.Telling;

/// <summary>Numbers as people read them, the same in every culture.</summary>
public static class Figures
{
    public static string Whole(int number) => number.ToString(CultureInfo.InvariantCulture);

    /// <summary>A number in its unit: `4.2 mm`, `12 %`, `1.5`.</summary>
    public static string Show(double value, string unit)
    {
        var number = Bare(value, unit);
        return unit is "" or "1" ? number : $"{number} {unit}";
    }

    /// <summary>The number alone, rounded as its unit deserves.</summary>
    public static string Bare(double value, string unit) =>
        !double.IsFinite(value) ? "unknown"
        : IsMoney(unit) ? value.ToString("0.00", CultureInfo.InvariantCulture)
        : QuantityText.Number(value, Unit.Find(unit)?.Decimals ?? 2);

    private static bool IsMoney(string unit) => unit == "money" || (unit.Length == 3 && unit.All(char.IsAsciiLetterUpper));

    /// <summary>`2.2 to 6.2 mm`.</summary>
    public static string Range(double low, double high, string unit) => $"{Bare(low, unit)} to {Show(high, unit)}";

    public static string Hertz(double hz) => QuantityText.Format(hz, Dimension.Hertz);

    /// <summary>`4.2 mm (worst case 2.2 to 6.2 mm); limit 3 mm; margin 1.2 mm`. Empty when the value says nothing.</summary>
    public static string Row(Finding finding)
    {
        var row = finding.Value is null && finding.Limit is null ? $"found: {finding.ValueText}" : finding.ValueText;
        if (finding.Value is { IsExact: false } value)
            row += $" (worst case {Range(value.Low, value.High, finding.Unit)})";
        if (finding.Limit is { } limit)
            row += $"; limit {Show(limit, finding.Unit)}";
        if (finding.Margin is { } margin)
            row += $"; margin {Show(margin, finding.Unit)}";
        return row;
    }

    /// <summary>Where in a file, for a person to look.</summary>
    public static string Place(Location at) =>
        at.Line == 0 ? at.File : string.Create(CultureInfo.InvariantCulture, $"{at.File}:{at.Line}");

    /// <summary>+1 when larger is better than the limit, -1 when smaller is, 0 when the numbers do not tell.</summary>
    public static int GoodSide(Finding finding)
    {
        if (finding.Value is not { } value || finding.Limit is not { } limit || finding.Margin is not { } margin)
            return 0;
        var side = Math.Sign(value.Value - limit);
        return margin >= 0 ? side : -side;
    }
}
