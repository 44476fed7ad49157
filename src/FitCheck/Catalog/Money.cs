namespace FitCheck.Catalog;

/// <summary>An amount of money, exact.</summary>
public sealed record Money(decimal Amount, string Currency)
{
    public override string ToString() => string.Create(System.Globalization.CultureInfo.InvariantCulture, $"{Amount:0.00} {Currency}");
}
