using FitCheck.Foundation.Problems;

namespace FitCheck.QuoteImport;

/// <summary>Which cells of a row tell what is meant, and how many.</summary>
/// <param name="Parts">With an article number, an id or a name, the best first.</param>
/// <param name="Quantity">-1 for none.</param>
/// <param name="First">The first row that may be a part.</param>
internal sealed record QuoteColumns(IReadOnlyList<int> Parts, int Quantity, int First)
{
    /// <summary>With article numbers; -1 for none.</summary>
    public int Article { get; init; } = -1;

    /// <summary>With the price of one; -1 for none.</summary>
    public int Unit { get; init; } = -1;

    /// <summary>With the price of the line; -1 for none.</summary>
    public int Total { get; init; } = -1;

    // A letterhead above has no more lines than this.
    private const int MostAbove = 40;

    /// <summary>By their headings; without any, by what stands in them.</summary>
    public static QuoteColumns Of(IReadOnlyList<IReadOnlyList<Located<string>>> rows, Func<string, bool> isPart, Func<string, bool> isCount)
    {
        var best = (Row: -1, Known: 0);
        for (var i = 0; i < Math.Min(rows.Count, MostAbove); i++)
        {
            var columns = rows[i].Select(c => QuoteWords.Heading(c.Value)).ToList();
            var known = columns.OfType<Column>().Distinct().Count();
            // One word alone may be a heading where it stands alone, or where all beside it are.
            if (known > best.Known && columns.Exists(c => c is Column.Article or Column.Name)
                && (known > 1 || rows[i].Count(c => c.Value.Length > 0) == 1) && !rows[i].Any(c => isPart(c.Value)))
                best = (i, known);
        }
        return best.Row >= 0 ? Headed(rows[best.Row], best.Row) : Unheaded(rows, isPart, isCount);
    }

    private static QuoteColumns Headed(IReadOnlyList<Located<string>> row, int at)
    {
        var columns = row.Select(c => QuoteWords.Heading(c.Value)).ToList();
        var parts = Enumerable.Range(0, columns.Count).Where(i => columns[i] is Column.Article or Column.Name)
            .OrderBy(i => columns[i]).ToList();
        var quantity = columns.IndexOf(Column.Quantity);
        return new QuoteColumns(parts, quantity >= 0 ? quantity : columns.Count == 1 ? 1 : -1, at + 1)
        {
            Article = columns.IndexOf(Column.Article),
            Unit = columns.IndexOf(Column.UnitPrice),
            Total = columns.IndexOf(Column.Total),
        };
    }

    private static bool HasHundredths(string cell) =>
        cell.IndexOfAny([',', '.']) is > 0 and var point && cell[(point + 1)..].TakeWhile(char.IsAsciiDigit).Count() == 2;

    private static QuoteColumns Unheaded(IReadOnlyList<IReadOnlyList<Located<string>>> rows, Func<string, bool> isPart,
        Func<string, bool> isCount)
    {
        var width = rows.Select(r => r.Count).DefaultIfEmpty(0).Max();
        var parts = Enumerable.Range(0, width).OrderByDescending(i => Cells(i).Count(isPart)).Take(1).ToList();
        // A price may be a whole number too, but stands behind the number of packs, and mostly has its hundredths.
        var quantity = Enumerable.Range(0, width).Where(i => !parts.Contains(i) && !Cells(i).Any(HasHundredths))
            .OrderByDescending(i => Cells(i).Count(isCount)).ThenBy(i => i).DefaultIfEmpty(-1).First();
        // The first column of prices is what one costs, a second one what the line does.
        List<int> prices = [.. Enumerable.Range(0, width).Where(i => i != quantity && !parts.Contains(i) && Cells(i).Any(HasHundredths)
            && Cells(i).Where(c => c.Length > 0).All(c => PriceText.Of(c) is not null))];
        return new QuoteColumns(parts.Count > 0 ? parts : [0], quantity, 0)
        {
            Unit = prices.Count > 0 ? prices[0] : -1,
            Total = prices.Count > 1 ? prices[1] : -1,
        };

        IEnumerable<string> Cells(int i) => rows.Where(r => i < r.Count).Select(r => r[i].Value);
    }
}
