using System.Globalization;
using FitCheck.Catalog;

namespace FitCheck.Lists;

/// <summary>What the prices of the catalog say of tax. Amounts are rounded once, on a sum, to hundredths, halves away from zero.</summary>
/// <param name="Percent">Its rate in per cent; null when nobody asks.</param>
/// <param name="IsAdded">True when the prices are without tax and it comes on top; false when they contain it.</param>
public sealed record Tax(decimal? Percent, bool IsAdded)
{
    /// <summary>Nobody asks: prices are told as the catalog has them.</summary>
    public static Tax NotAsked { get; } = new(null, IsAdded: false);

    /// <summary>A rate in per cent from 0 to 100, such as `19`, `8.1` or `7 %`; null for anything else.</summary>
    public static decimal? Parse(string text)
    {
        var number = text.TrimEnd().TrimEnd('%').TrimEnd();
        return decimal.TryParse(number, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var percent)
            && percent is >= 0 and <= 100 ? percent : null;
    }

    /// <summary>A sum of prices, split: what is paid in the end, and how much of it is tax.</summary>
    public TaxedSum Of(Money prices)
    {
        if (Percent is not { } percent)
            return new TaxedSum(prices, null);
        var part = IsAdded ? prices.Amount * percent / 100 : prices.Amount * percent / (100 + percent);
        var tax = prices with { Amount = Math.Round(part, 2, MidpointRounding.AwayFromZero) };
        return new TaxedSum(IsAdded ? prices with { Amount = prices.Amount + tax.Amount } : prices, tax);
    }
}

/// <summary>What is paid, and the tax in it; null when no rate is given.</summary>
public sealed record TaxedSum(Money Paid, Money? Tax)
{
    /// <summary>What is paid less the tax.</summary>
    public Money Net => Tax is null ? Paid : Paid with { Amount = Paid.Amount - Tax.Amount };
}
