using System.Globalization;

namespace FitCheck.QuoteImport;

/// <summary>How many packs a cell says.</summary>
internal static class PackCount
{
    public const int Most = 999;

    /// <summary>
    /// `2`, `2x`, `2 pcs`; a till may write `2,0`, `2.00` or `2,000`, for nobody buys two thousand packs. Null for anything else.
    /// </summary>
    public static int? Of(string text)
    {
        var number = text.Trim();
        var end = number.Length;
        while (end > 0 && !char.IsAsciiDigit(number[end - 1]))
            end--;
        if (end < number.Length && !QuoteWords.IsUnit(number[end..]) || end == 0)
            return null;
        number = number[..end];
        var point = number.IndexOfAny([',', '.']);
        if (point > 0 && point + 1 < number.Length && number.AsSpan(point + 1).Trim('0').IsEmpty && number.Length - point <= 4)
            number = number[..point];
        return int.TryParse(number, NumberStyles.None, CultureInfo.InvariantCulture, out var count) && count is > 0 and <= Most ? count
            : null;
    }
}
