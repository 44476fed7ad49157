using System.Globalization;

namespace FitCheck.Tests.Lists;

/// <summary>A culture that writes numbers as German does; the machine of a test need not know German.</summary>
internal static class CommaCulture
{
    public static CultureInfo WithComma { get; } = Made();

    private static CultureInfo Made()
    {
        var culture = (CultureInfo)CultureInfo.InvariantCulture.Clone();
        culture.NumberFormat.NumberDecimalSeparator = ",";
        culture.NumberFormat.NumberGroupSeparator = ".";
        return culture;
    }
}
