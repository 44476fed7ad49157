using System.Globalization;

namespace FitCheck.QuoteImport;

/// <summary>A price as a till wrote it, in each way in which it can be read.</summary>
/// <param name="WithPoint">Where a point divides whole from hundredths; null where it can't be read so.</param>
/// <param name="WithComma">Where a comma does.</param>
/// <param name="Currency">The sign or letters beside it, in small letters; empty for none.</param>
internal sealed record PriceText(decimal? WithPoint, decimal? WithComma, string Currency)
{
    // Signs and short words with the currencies that they may mean.
    private static readonly Dictionary<string, string[]> Signs = new(StringComparer.Ordinal)
    {
        ["€"] = ["EUR"],
        ["euro"] = ["EUR"],
        ["£"] = ["GBP"],
        ["$"] = ["USD", "CAD", "AUD", "NZD"],
        ["kr"] = ["SEK", "NOK", "DKK", "ISK"],
        ["zł"] = ["PLN"],
        ["zl"] = ["PLN"],
        ["kč"] = ["CZK"],
        ["kc"] = ["CZK"],
        ["ft"] = ["HUF"],
        ["fr"] = ["CHF"],
        ["sfr"] = ["CHF"],
    };

    // ISO 4217.
    private static readonly string[] Codes = ["eur", "usd", "gbp", "chf", "sek", "nok", "dkk", "isk", "pln", "czk", "huf", "ron", "bgn",
        "try",
        "cad", "aud", "nzd", "jpy"];

    /// <summary>True where nothing in it says which of two numbers is meant: `1,000`.</summary>
    public bool IsOpen => WithPoint is not null && WithComma is not null && WithPoint != WithComma;

    /// <summary>Null for what is no price.</summary>
    public static PriceText? Of(string cell)
    {
        var text = cell.Trim();
        var (first, last) = (text.AsSpan().IndexOfAnyInRange('0', '9'), text.AsSpan().LastIndexOfAnyInRange('0', '9'));
        if (first < 0)
            return null;
        var beside = (text[..first] + " " + text[(last + 1)..]).ToLowerInvariant().Replace(",-", "", StringComparison.Ordinal)
            .Replace(".-", "", StringComparison.Ordinal).Replace(",--", "", StringComparison.Ordinal)
                .Trim(' ', '\u00A0', '.', '\'', '(', ')');
        var isMinus = beside.StartsWith('-') || beside.EndsWith('-');
        var currency = beside.Trim('-', ' ', '\u00A0', '.', '–');
        if (currency.Length > 0 && Meant(currency).Count == 0)
            return null;
        var number = string.Concat(text[first..(last + 1)].Where(c => !char.IsWhiteSpace(c)
            && c is not ('\'' or '’' or '\u00A0' or '\u202F')));
        var (point, comma) = (Read(number, '.', ','), Read(number, ',', '.'));
        return point is null && comma is null ? null : new PriceText(isMinus ? -point : point, isMinus ? -comma : comma, currency);
    }

    /// <summary>The currencies that a sign or code may mean; none where it is neither.</summary>
    public static IReadOnlyList<string> Meant(string sign) =>
        Codes.Contains(sign, StringComparer.Ordinal) ? [sign.ToUpperInvariant()] : Signs.GetValueOrDefault(sign) ?? [];

    /// <summary>The sign or code of a currency in a heading: `Preis (EUR)`; empty for none.</summary>
    public static string CurrencyIn(string heading) =>
        heading.ToLowerInvariant().Split([' ', '(', ')', '[', ']', '/', '.', ',', ':'], StringSplitOptions.RemoveEmptyEntries)
            .FirstOrDefault(w => Meant(w).Count > 0) ?? "";

    // Groups are of three digits; hundredths may be left out.
    private static decimal? Read(string number, char point, char group)
    {
        var (whole, rest) = number.Split(point) is [var w, var r] ? (w, r) : (number, "");
        var groups = whole.Split(group);
        return number.Count(c => c == point) <= 1 && rest.All(char.IsAsciiDigit) && (groups.Length == 1 || groups[0].Length is 1 or 2 or 3)
            && groups.Skip(1).All(g => g.Length == 3)
            && decimal.TryParse($"{string.Concat(groups)}.{rest}0", NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture,
                out var value)
            ? value : null;
    }
}
