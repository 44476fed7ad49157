using System.Text;
using FitCheck.Catalog;
using FitCheck.Foundation.Problems;

namespace FitCheck.QuoteImport;

/// <summary>
/// A shop's own file of article numbers and the parts that they are: two columns, `article` and `part`. What is in it stays, letter by
/// letter; what is learned comes behind it.
/// </summary>
internal sealed class ArticleFile
{
    private readonly Dictionary<string, (Part Part, Location At)> _parts = new(StringComparer.Ordinal);
    private readonly HashSet<string> _known = new(StringComparer.Ordinal);
    private readonly List<(string Number, string Id)> _learned = [];
    private readonly string _text;

    private ArticleFile(string text) => _text = text;

    /// <summary>A file that is to be begun.</summary>
    public static ArticleFile Empty => new("");

    /// <summary>Reads the file; a number for what is no part is told, and stays.</summary>
    public static ArticleFile? Read(string file, byte[] bytes, PartsCatalog catalog, ProblemList problems)
    {
        if (bytes.AsSpan().StartsWith("PK"u8) || QuoteFile.Decoded(bytes) is not { } text)
        {
            problems.Error(new Location(file, 0, 0), "expected a text with two columns, `article` and `part`, such as a CSV",
                ProblemKind.Unreadable);
            return null;
        }
        var articles = new ArticleFile(text);
        foreach (var row in CsvText.Rows(new Foundation.Files.SourceText(file, text), problems))
            articles.Take(row, catalog, problems);
        return articles;
    }

    /// <summary>The part of a number; null for one that is not in the file.</summary>
    public Part? Find(string number) => _parts.GetValueOrDefault(ArticleNumbers.Plain(number)).Part;

    /// <summary>
    /// Keeps what a number is, where a line says it for certain or somebody has answered. The file's own word stands against that, and is
    /// told.
    /// </summary>
    public void Learn(Located<string> number, Part part, ProblemList problems)
    {
        var plain = ArticleNumbers.Plain(number.Value);
        if (_parts.TryGetValue(plain, out var known))
        {
            if (known.Part.Id != part.Id)
                problems.Warn(known.At, $"the article number `{number.Value}` is `{known.Part.Id}` here, but `{part.Id}` in line "
                    + $"{number.At.Line} of the list; the file is left as it is");
            return;
        }
        if (plain.Length == 0 || !_known.Add(plain))
            return;
        _parts[plain] = (part, number.At);
        _learned.Add((number.Value, part.Id));
    }

    /// <summary>The file with what was learned; null when nothing was.</summary>
    public string? Extended()
    {
        if (_learned.Count == 0)
            return null;
        var newLine = _text.Contains("\r\n", StringComparison.Ordinal) ? "\r\n" : "\n";
        var first = _text.Split('\n')[0];
        var separator = first.Contains(';', StringComparison.Ordinal) ? ';' : first.Contains('\t', StringComparison.Ordinal) ? '\t' : ',';
        var text = new StringBuilder(_text.Length == 0 ? "article,part\n" : _text);
        if (text[^1] != '\n')
            text.Append(newLine);
        foreach (var (number, id) in _learned)
            text.Append(Cell(number, separator)).Append(separator).Append(id).Append(newLine);
        return text.ToString();
    }

    private void Take(IReadOnlyList<Located<string>> row, PartsCatalog catalog, ProblemList problems)
    {
        if (row is not [{ Value.Length: > 0 } number, { Value.Length: > 0 } id, ..])
            problems.Error(row[0].At, $"expected an article number and the id of a part, found `{row[0].Value}` alone");
        else if (catalog.Find(id.Value) is Part part)
        {
            var plain = ArticleNumbers.Plain(Harmless(number.Value));
            if (!_parts.TryAdd(plain, (part, number.At)) && _parts[plain].Part.Id != part.Id)
                problems.Error(number.At, $"the article number `{number.Value}` is `{_parts[plain].Part.Id}` in line "
                    + $"{_parts[plain].At.Line} already; one number stands for one part");
            _known.Add(plain);
        }
        else if (_known.Count > 0 || !QuoteWords.IsHeadingOfArticles(number.Value))
        {
            _known.Add(ArticleNumbers.Plain(Harmless(number.Value)));
            problems.Warn(id.At,
                $"no part `{id.Value}` in the catalog{Nearest.Hint(id.Value, catalog.Ids)}; the line stays, and finds nothing",
                ProblemKind.UnknownName);
        }
    }

    // An apostrophe guards against formulas in spreadsheets.
    private static string Harmless(string text) => text is ['\'', '=' or '+' or '-' or '@', ..] ? text[1..] : text;

    private static string Cell(string text, char separator)
    {
        var harmless = text[0] is '=' or '+' or '-' or '@' ? "'" + text : text;
        return harmless.AsSpan().ContainsAny(separator, '"', '\n') ? $"\"{harmless.Replace("\"", "\"\"", StringComparison.Ordinal)}\""
            : harmless;
    }
}
