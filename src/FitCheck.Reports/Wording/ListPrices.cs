using FitCheck.Builds;
using FitCheck.Catalog;

namespace FitCheck.Reports.Wording;

/// <summary>What is said of the prices of a list: whose are counted, and where quote and catalog differ.</summary>
internal static class ListPrices
{
    private const string Nothing = "–";

    /// <summary>Of one pack; a dash for what is owned.</summary>
    public static string Price(ListLine line) => line.IsOwned ? Nothing : line.Price.ToString();

    /// <summary>Of the line; a dash for what is owned.</summary>
    public static string Sum(ListLine line) => line.IsOwned ? Nothing : line.Sum.ToString();

    /// <summary>How the quote's price differs from the catalog's, and which is counted; null where nothing is to be said.</summary>
    public static string? Difference(ListLine line)
    {
        if (line.IsOwned || line.QuotePrice is not { } quoted || quoted == line.CatalogPrice)
            return null;
        if (!line.IsQuoted)
            return $"quoted at {quoted} a pack, which is not compared; counted is the catalog's price in {line.Price.Currency}";
        return line.CatalogPrice is not { } listed ? "the quote's price; the catalog has none"
            : $"quoted at {quoted} a pack, {Rest(quoted.Amount - listed.Amount, quoted.Currency)} than in the catalog ({listed})";
    }

    /// <summary>Whose prices the sum is made of, and what that makes; null where no quote has prices.</summary>
    public static string? Counted(IReadOnlyList<ListLine> lines)
    {
        var bought = lines.Where(l => l.Packs > 0).ToList();
        var quoted = bought.Where(l => l.IsQuoted).ToList();
        if (quoted.Count == 0)
            return null;
        var whose = quoted.Count == bought.Count ? "The sum is made of the quote's own prices."
            : $"The sum is made of the quote's own prices for {Sentences.Count(quoted.Count, "part", "parts")} and of the catalog's for "
                + $"{Figures.Whole(bought.Count - quoted.Count)}.";
        var more = quoted.Where(l => l.CatalogPrice is not null).GroupBy(l => l.Price.Currency, StringComparer.Ordinal)
            .OrderBy(g => g.Key, StringComparer.Ordinal)
            .Select(g => (Currency: g.Key, More: g.Sum(l => (l.Price.Amount - l.CatalogPrice!.Amount) * l.Packs))).ToList();
        return more.Count == 0 ? whose : more.TrueForAll(m => m.More == 0) ? $"{whose} By the catalog's it would be the same."
            : $"{whose} That is {string.Join(" and ", more.Where(m => m.More != 0).Select(m => Rest(m.More, m.Currency)))} than by the "
                + $"catalog's.";
    }

    private static string Rest(decimal more, string currency) =>
        $"{new Money(Math.Abs(more), currency)} {(more > 0 ? "more" : "less")}";
}
