using System.Globalization;
using FitCheck.Catalog;
using FitCheck.Foundation.Files;
using FitCheck.Foundation.Problems;

namespace FitCheck.QuoteImport;

/// <summary>
/// Reads a seller's list: a column with ids or names, and mostly one with the number of packs, with or without a row of headings.
/// </summary>
internal sealed class QuoteReader(NearParts parts, ProblemList problems)
{
    private const int Most = 999;

    private static readonly string[] PartWords = ["part", "id", "article", "item", "name", "description", "product", "artikel",
        "artikelnummer", "bezeichnung", "position", "teil"];
    private static readonly string[] PacksWords = ["packs", "quantity", "qty", "count", "pcs", "number", "menge", "anzahl", "stück", "stk"];

    /// <summary>The parts in the order of the list, each once. Names that nothing in the catalog has are told with what is near.</summary>
    public IReadOnlyList<QuoteItem> Read(SourceText source)
    {
        var rows = CsvText.Rows(source, problems);
        if (rows.Count == 0)
            problems.Error(new Location(source.File, 0, 0),
                "the file is empty; expected lines such as `orrin-c165;1`, an id or a name and how many packs");
        var (part, packs, headings) = Columns(rows);
        var items = new List<QuoteItem>();
        foreach (var row in rows.Skip(headings ? 1 : 0))
        {
            if (Item(row, part, packs) is not { } item)
                continue;
            var at = items.FindIndex(i => i.Part.Id == item.Part.Id);
            if (at < 0)
                items.Add(item);
            else if (items[at].Packs + item.Packs <= Most)
                items[at] = items[at] with { Packs = items[at].Packs + item.Packs };
            else
                problems.Error(item.At, $"more than {Most} packs of `{item.Part.Id}` in all");
        }
        return items;
    }

    // By their headings; without any, by what stands in the first row.
    private (int Part, int Packs, bool Headings) Columns(IReadOnlyList<IReadOnlyList<Located<string>>> rows)
    {
        if (rows.Count == 0)
            return (0, 1, false);
        var first = rows[0];
        var known = first.ToList().FindIndex(c => parts.Find(Text(c)) is not null);
        var named = Named(first, PartWords);
        if (known >= 0 || named < 0)
        {
            var name = Math.Max(known, 0);
            var number = first.ToList().FindIndex(c => Count(c.Value) is not null);
            return (name, number >= 0 && number != name ? number : name + 1, false);
        }
        var count = Named(first, PacksWords);
        return (named, count >= 0 ? count : first.Count == 1 ? 1 : -1, true);
    }

    private static int Named(IReadOnlyList<Located<string>> row, string[] words)
    {
        foreach (var word in words)
        {
            for (var i = 0; i < row.Count; i++)
            {
                if (row[i].Value.Equals(word, StringComparison.OrdinalIgnoreCase))
                    return i;
            }
        }
        return -1;
    }

    private QuoteItem? Item(IReadOnlyList<Located<string>> row, int part, int packs)
    {
        if (part >= row.Count || Text(row[part]).Length == 0)
        {
            problems.Error(row[0].At, "no id or name of a part in this line");
            return null;
        }
        var (cell, count) = (row[part], 1);
        var found = parts.Find(Text(cell));
        if (found is null)
            problems.Error(cell.At, $"no part `{Text(cell)}` in the catalog{parts.Hint(Text(cell))}", ProblemKind.UnknownName);
        if (packs >= 0 && packs < row.Count && row[packs].Value.Length > 0)
        {
            if (Count(row[packs].Value) is not (> 0 and <= Most and var given))
            {
                problems.Error(row[packs].At, $"expected how many packs, a whole number from 1 to {Most}, found `{row[packs].Value}`");
                return null;
            }
            count = given;
        }
        return found is null ? null : new QuoteItem(found, count, cell.At);
    }

    // `2`, `2x`, `2 pcs`; a spreadsheet may write `2,0` or `2.00`.
    private static int? Count(string text)
    {
        var number = text.TrimEnd();
        foreach (var unit in new[] { "pcs", "pc", "stk", "x", "×" })
            number = number.EndsWith(unit, StringComparison.OrdinalIgnoreCase) ? number[..^unit.Length].TrimEnd() : number;
        var point = number.IndexOfAny([',', '.']);
        if (point > 0 && point + 1 < number.Length && number.AsSpan(point + 1).Trim('0').IsEmpty && number.Length - point <= 3)
            number = number[..point];
        return int.TryParse(number, NumberStyles.None, CultureInfo.InvariantCulture, out var count) ? count : null;
    }

    // A list that guards against formulas has an apostrophe before some texts.
    private static string Text(Located<string> cell) => cell.Value is ['\'', '=' or '+' or '-' or '@', ..] ? cell.Value[1..] : cell.Value;
}
