using System.Globalization;
using FitCheck.Facts.Values;
using FitCheck.Physics.Quantities;

namespace FitCheck.Rules.Messages;

/// <summary>Numbers as messages show them, in the rule's unit; an amount in the currency of the build.</summary>
internal static class Shown
{
    /// <summary>`3 mm`, `80 %`, `12.50 EUR`.</summary>
    public static string Number(double si, Unit unit, string? currency) => unit.Symbol == "money"
        ? string.Create(CultureInfo.InvariantCulture, $"{unit.FromSi(si):0.00} {currency ?? unit.Symbol}")
        : QuantityText.Format(si, unit);

    /// <summary>`+3 mm`, `-2.5 mm`, `0 mm`.</summary>
    public static string Signed(double si, Unit unit, string? currency)
    {
        var text = Number(si, unit, currency);
        return si > 0 && unit.FromSi(si) >= 0.5 * Math.Pow(10, -unit.Decimals) ? "+" + text : text;
    }

    /// <summary>A value of any type.</summary>
    public static string Value(FactValue value, Unit? unit, string? currency) =>
        value.Number is { } number && unit is not null ? Number(number.Value, unit, currency) : value.Text;

    /// <summary>The unit's name in a finding: the currency for an amount, nothing for a pure number.</summary>
    public static string UnitName(Unit? unit, string? currency) => unit?.Symbol switch
    {
        null or "1" => "",
        "money" => currency ?? "money",
        var symbol => symbol,
    };
}
