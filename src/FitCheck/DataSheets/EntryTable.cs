using FitCheck.Catalog;
using FitCheck.Foundation.Problems;
using FitCheck.QuoteImport;
using FitCheck.Schemas;
using FitCheck.Yaml;

namespace FitCheck.DataSheets;

/// <summary>
/// Reads a table of data sheets: a row for each entry, a column for each key. A cell that its key does not take is told and left out; a row
/// that lacks what an entry needs is told, and the others become entries.
/// </summary>
internal sealed class EntryTable
{
    private const int MostAbove = 40;

    private readonly string _kind;
    private readonly QuoteFile _file;
    private readonly ProblemList _problems;
    private readonly IReadOnlyList<KeyPath> _paths;
    private readonly SchemaCheck _schemas = new();
    private readonly Dictionary<string, int> _ids = new(StringComparer.Ordinal);
    private readonly Dictionary<int, TableHeading> _columns = [];

    private EntryTable(string kind, QuoteFile file, ProblemList problems) =>
        (_kind, _file, _problems, _paths) = (kind, file, problems, KeyPath.Of(kind));

    /// <summary>The entries of a table in its order.</summary>
    /// <param name="kind">Their kind.</param>
    /// <param name="file">The rows.</param>
    /// <param name="problems">What was refused, each with row and column.</param>
    public static IReadOnlyList<YamlMap> Read(string kind, QuoteFile file, ProblemList problems) =>
        new EntryTable(kind, file, problems).Read();

    private IReadOnlyList<YamlMap> Read()
    {
        var heads = Enumerable.Range(0, Math.Min(_file.Rows.Count, MostAbove))
            .Select(i => (Row: i, Known: _file.Rows[i].Count(c => c.Value.Length > 0
                && TableHeading.Of(c, _kind, _paths, null) is not null)))
            .ToList();
        if (heads.Count == 0 || heads.MaxBy(h => h.Known) is not { Known: > 0, Row: var head })
        {
            var such = _paths.Where(p => p.Figure is not null).Take(3).Select(p => $"`{p.Path}`").Prepend("`id`");
            _problems.Error(new Location(_file.File, 0, 0), $"no row of headings: expected keys of {PartsCatalog.Article(_kind)}, such as "
                + $"{string.Join(", ", such)}, with the unit in the heading, `depth [mm]`, or in the cells");
            return [];
        }
        Head(_file.Rows[head]);
        List<YamlMap> entries = [];
        foreach (var row in _file.Rows.Skip(head + 1))
        {
            if (Entry(row) is { } entry)
                entries.Add(entry);
        }
        return entries;
    }

    private void Head(IReadOnlyList<Located<string>> row)
    {
        for (var i = 0; i < row.Count; i++)
        {
            if (row[i].Value.Length == 0 || TableHeading.Of(row[i], _kind, _paths, _problems) is not { } heading)
                continue;
            if (_columns.Values.Any(c => c.Path.Path == heading.Path.Path))
                _problems.Warn(row[i].At, $"`{heading.Path.Path}` has a column already; this one is not read");
            else
                _columns[i] = heading;
        }
    }

    private YamlMap? Entry(IReadOnlyList<Located<string>> row)
    {
        var end = row[^1].At with { Column = row[^1].At.Column + row[^1].Value.Length + 1 };
        var cells = new List<(KeyPath Path, YamlNode Value)>();
        foreach (var (i, heading) in _columns.Where(c => c.Key < row.Count && row[c.Key].Value.Length > 0))
        {
            if (TableCell.Read(row[i], heading, _problems) is { } value)
                cells.Add((heading.Path, value));
        }
        if (cells.Count == 0)
            return null;
        Complete(cells, end);
        var own = new ProblemList();
        _schemas.Check(_kind, EntryTree.Of(_kind, cells, end), own);
        var refused = own.All.Where(p => cells.Exists(c => c.Value.At == p.At)).ToList();
        if (refused.Count > 0)
        {
            _problems.AddRange(refused.Select(p => p with { Message = $"{p.Message}; the cell is left out" }));
            cells.RemoveAll(c => refused.Exists(p => p.At == c.Value.At));
        }
        var entry = EntryTree.Of(_kind, cells, end);
        own = new ProblemList();
        _schemas.Check(_kind, entry, own);
        if (!own.HasErrors)
            EntryReader.Read(_kind, entry, own);
        _problems.AddRange(own.All.Select(p => p with { Message = $"{p.Message}; the row is left out" }));
        return own.HasErrors || IsTwice(entry, row[0].At) ? null : entry;
    }

    private bool IsTwice(YamlMap entry, Location at)
    {
        var id = ((YamlScalar)entry["id"]!).Text;
        if (_ids.TryAdd(id, at.Line))
            return false;
        _problems.Error(entry["id"]!.At, $"the id `{id}` is that of row {_ids[id]} too; the row is left out");
        return true;
    }

    // What a table of one maker's sheets need not repeat in each row.
    private void Complete(List<(KeyPath Path, YamlNode Value)> cells, Location at)
    {
        Add("kind", () => _kind);
        Add("provenance", () => "datasheet");
        Add("source", () => Path.GetFileName(_file.File));
        Add("id", () => cells.Find(c => c.Path.Path == "name").Value is YamlScalar name ? Slug(name.Text) : null);

        void Add(string key, Func<string?> value)
        {
            if (!_columns.Values.Any(c => c.Path.Path == key) && value() is { Length: > 0 } text)
                cells.Add((_paths.First(p => p.Path == key), new YamlScalar(at with { Column = at.Column + 1 }, text, Quoted: false)));
        }
    }

    private static string Slug(string name) => string.Join('-', QuoteWords.Plain(name).Split(' ', StringSplitOptions.RemoveEmptyEntries));
}
