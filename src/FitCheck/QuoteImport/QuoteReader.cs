using FitCheck.Catalog;
using FitCheck.Foundation.Problems;
using FitCheck.Physics.Quantities;

namespace FitCheck.QuoteImport;

/// <summary>
/// Reads a seller's list: which lines are parts, and which, and how many packs; what is no part; what nobody can be sure of.
/// </summary>
internal sealed class QuoteReader(NearParts parts, LineChoices choices, ProblemList problems, ArticleFile? shop = null)
{
    private readonly List<OpenLine> _open = [];
    private QuotePrices _prices = null!;
    private int _articles = -1;
    private readonly List<QuoteItem> _items = [];
    private readonly List<(int Line, string What)> _noParts = [];
    private readonly List<string> _leftOut = [];

    /// <summary>Lines that are not in the list that was read, with what stands there.</summary>
    public IReadOnlyList<string> LeftOut => _leftOut;

    /// <summary>Lines of which somebody has to be asked.</summary>
    public IReadOnlyList<OpenLine> Open => _open;

    /// <summary>The parts in the order of the list, each once.</summary>
    public IReadOnlyList<QuoteItem> Read(QuoteFile file)
    {
        var rows = file.Rows;
        if (rows.Count == 0)
            problems.Error(new Location(file.File, 0, 0),
                "the file is empty; expected lines such as `orrin-c165;1`, an id or a name and how many packs");
        var columns = QuoteColumns.Of(rows, t => parts.Find(Named(t).Name) is not null, t => PackCount.Of(t) is not null);
        (_prices, _articles) = (new QuotePrices(rows, columns), columns.Article);
        foreach (var row in rows.Take(columns.First))
            _noParts.Add((row[0].At.Line, "what stands above"));
        foreach (var row in rows.Skip(columns.First))
            Take(row, columns);
        _prices.Tell(file.File, problems);
        choices.TellUnused(rows.Select(r => r[0].At.Line).ToHashSet(), problems);
        if (columns.First > 1 || _noParts.Count > columns.First)
            TellNoParts(file.File);
        if (rows.Count > 0 && _items.Count == 0 && !problems.HasErrors)
            problems.Error(new Location(file.File, 0, 0), "no line of the list is a part of the catalog; expected lines such as "
                + "`orrin-c165;1`, an id or a name and how many packs");
        return _items;
    }

    private void Take(IReadOnlyList<Located<string>> row, QuoteColumns columns)
    {
        var line = row[0].At.Line;
        var cells = columns.Parts.Where(i => i < row.Count && Text(row[i]).Length > 0).Select(i => row[i]).ToList();
        var quantity = columns.Quantity >= 0 && columns.Quantity < row.Count ? row[columns.Quantity] : null;
        var chosen = choices.Of(line);
        var found = cells.Select(c => (Cell: c, Part: parts.Find(Named(Text(c)).Name))).Where(f => f.Part is not null).ToList();
        if (choices.IsSkipped(line))
            _leftOut.Add($"line {line}: {string.Join(' ', cells.Select(Text))} (skipped)");
        else if (chosen is not null)
            Add(chosen, row, cells.FirstOrDefault() ?? row[0], quantity);
        else if (found.Select(f => f.Part).Distinct().Count() > 1)
            Ask(line, cells, quantity, [.. found.Select(f => f.Part!).Distinct()]);
        else if (found.Count > 0)
            Add(found[0].Part!, row, found[0].Cell, quantity);
        else if (WhyNone(row, cells, quantity) is { } why)
            _noParts.Add((line, why));
        else if (cells.Count == 0)
            problems.Error(row[0].At, "no id or name of a part in this line");
        else
            Ask(line, cells, quantity, []);
    }

    // A line of words is no part; one that is counted may be.
    private string? WhyNone(IReadOnlyList<Located<string>> row, List<Located<string>> cells, Located<string>? quantity)
    {
        var told = row.Select(c => QuoteWords.NoPart(c.Value)).FirstOrDefault(w => w is not null);
        if (told is not null)
            return told;
        if (quantity is not null && QuoteWords.IsHours(quantity.Value))
            return "labour";
        if (cells.Count == 0 && quantity is not { Value.Length: > 0 })
            return "words";
        var isCounted = quantity is { Value.Length: > 0 } || cells.Exists(c => Named(Text(c)).Packs is not null);
        return !isCounted && cells.Count > 0 && !cells.Exists(c => c.Value.Any(char.IsDigit)) && row.Count(c => c.Value.Length > 0) == 1
            ? "words" : null;
    }

    private void Ask(int line, List<Located<string>> cells, Located<string>? quantity, IReadOnlyList<Part> said)
    {
        var cell = cells[^1];
        var text = Named(Text(cell)).Name;
        IReadOnlyList<Part> offered = said.Count > 0 ? said : parts.Near(text);
        _open.Add(new OpenLine(line, string.Join(' ', cells.Select(Text)), offered));
        var near = offered.Select(p => $"`--as {line}={p.Id}` ({p.Name}, {Price(p)})").ToList();
        problems.Warn(cell.At, (said.Count > 0 ? $"the cells of this line name different parts; it is left out of the build. "
                : $"no part of the catalog is `{text}` for certain; it is left out of the build. ")
            + (near.Count > 0 ? $"Say which it is: {string.Join(" or ", near)}; or that it is none: " : "Say that it is none: ")
            + $"`--skip {line}`", ProblemKind.UnknownName);
        _leftOut.Add($"line {line}: {text}{(quantity is { Value.Length: > 0 } ? $", {quantity.Value}" : "")}");
    }

    private void Add(Part part, IReadOnlyList<Located<string>> row, Located<string> cell, Located<string>? quantity)
    {
        var count = Named(Text(cell)).Packs ?? 1;
        if (quantity is { Value.Length: > 0 } && quantity != cell)
        {
            if (PackCount.Of(quantity.Value) is not { } given)
            {
                problems.Error(quantity.At,
                    $"expected how many packs, a whole number from 1 to {PackCount.Most}, found `{quantity.Value}`");
                return;
            }
            count = given;
        }
        Learn(part, row);
        var (packs, price) = _prices.Of(row, part, count, quantity is not null && QuoteWords.ArePieces(quantity.Value), problems);
        var at = _items.FindIndex(i => i.Part.Id == part.Id);
        if (at < 0)
            _items.Add(new QuoteItem(part, packs, cell.At) { Price = price });
        else if (_items[at].Packs + packs <= PackCount.Most)
            _items[at] = _items[at].And(packs, price);
        else
            problems.Error(cell.At with { Line = row[0].At.Line }, $"more than {PackCount.Most} packs of `{part.Id}` in all");
    }

    private void Learn(Part part, IReadOnlyList<Located<string>> row)
    {
        if (_articles >= 0 && _articles < row.Count && row[_articles] is var cell && Text(cell) is { Length: > 0 } number
            && number != part.Id
            && !part.Articles.Any(a => ArticleNumbers.Plain(a.Value) == ArticleNumbers.Plain(number)))
            shop?.Learn(cell with { Value = number }, part, problems);
    }

    private static string Price(Part part) => part.HasPrice ? part.Price.Value.ToString() : "no price";

    private void TellNoParts(string file)
    {
        var told = _noParts.GroupBy(n => n.What, StringComparer.Ordinal)
            .Select(g => $"{string.Join(", ", g.Select(n => n.Line))} ({g.Key})");
        problems.Warn(new Location(file, 0, 0),
            $"{(_noParts.Count == 1 ? "1 line is no part" : $"{_noParts.Count} lines are no parts")}: {string.Join("; ", told)}");
    }

    // `2x Orrin C165`, `1 pc foam tape`: how many may stand before the name; in `10 mm spacer` it is a size.
    private (string Name, int? Packs) Named(string text)
    {
        var words = text.Split(' ', 3, StringSplitOptions.RemoveEmptyEntries);
        if (words.Length < 2 || PackCount.Of(words[0]) is not { } count || IsOfSize(words[1]) || parts.Find(text) is not null)
            return (text, null);
        return words is [_, var unit, var rest] && QuoteWords.IsUnit(unit) ? (rest, count) : (text[(text.IndexOf(words[0],
            StringComparison.Ordinal) + words[0].Length)..].Trim(), count);
    }

    private static bool IsOfSize(string word) => word.Equals("AWG", StringComparison.OrdinalIgnoreCase) || Unit.Find(word) is not null
        || Unit.Find(word.ToLowerInvariant()) is not null;

    // A list that guards against formulas has an apostrophe before some texts.
    private static string Text(Located<string> cell) => cell.Value is ['\'', '=' or '+' or '-' or '@', ..] ? cell.Value[1..] : cell.Value;
}
