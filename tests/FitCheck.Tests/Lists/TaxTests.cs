using System.Globalization;
using FitCheck.Catalog;
using FitCheck.Lists;
using Xunit;

namespace FitCheck.Tests.Lists;

public sealed class TaxTests
{
    [Theory]
    [InlineData("119.00", "19", "19.00")] // by hand: 119 × 19/119
    [InlineData("107.50", "8.1", "8.06")] // by hand: 107.50 × 8.1/108.1 = 8.0550…
    [InlineData("115.30", "19", "18.41")] // by hand: 115.30 × 19/119 = 18.4092…
    [InlineData("12.34", "0", "0.00")] // by hand
    public void What_prices_contain_is_told_and_changes_no_price(string prices, string rate, string tax)
    {
        var sum = new Tax(Tax.Parse(rate), IsAdded: false).Of(Euro(prices));

        Assert.Equal(Euro(prices), sum.Paid);
        Assert.Equal(Euro(tax), sum.Tax);
        Assert.Equal(sum.Paid.Amount - sum.Tax!.Amount, sum.Net.Amount);
    }

    [Theory]
    [InlineData("100.00", "19", "19.00", "119.00")] // by hand
    [InlineData("0.50", "19", "0.10", "0.60")] // by hand: 0.095 is half a cent, and rounds away from zero
    [InlineData("719.90", "7.5", "53.99", "773.89")] // by hand: 53.9925
    public void What_comes_on_top_is_rounded_once_on_the_sum(string prices, string rate, string tax, string paid)
    {
        var sum = new Tax(Tax.Parse(rate), IsAdded: true).Of(Euro(prices));

        Assert.Equal(Euro(tax), sum.Tax);
        Assert.Equal(Euro(paid), sum.Paid);
        Assert.Equal(Euro(prices), sum.Net);
    }

    [Theory]
    [InlineData("19", 19.0)]
    [InlineData("19 %", 19.0)]
    [InlineData("8.1%", 8.1)]
    [InlineData("100", 100.0)]
    [InlineData("8,1", null)]
    [InlineData("101", null)]
    [InlineData("-1", null)]
    [InlineData("", null)]
    [InlineData("1e1", null)]
    public void A_rate_has_a_decimal_point_in_every_culture(string text, double? rate)
    {
        var before = CultureInfo.CurrentCulture;
        try
        {
            CultureInfo.CurrentCulture = CommaCulture.WithComma;
            Assert.Equal((decimal?)rate, Tax.Parse(text));
        }
        finally
        {
            CultureInfo.CurrentCulture = before;
        }
    }

    private static Money Euro(string amount) => new(decimal.Parse(amount, CultureInfo.InvariantCulture), "EUR");
}
