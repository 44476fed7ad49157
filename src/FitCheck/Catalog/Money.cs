namespace FitCheck.Catalog;

/// <summary>An amount of money, exact.</summary>
/// <param name="Amount">In whole units of the currency.</param>
/// <param name="Currency">Three letters, `EUR`.</param>
public sealed record Money(decimal Amount, string Currency)
{
    /// <summary>With two decimals: `14.90 EUR`.</summary>
    public override string ToString() => string.Create(System.Globalization.CultureInfo.InvariantCulture, $"{Amount:0.00} {Currency}");
}
