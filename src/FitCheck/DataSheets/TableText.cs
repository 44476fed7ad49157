using System.Text;
using FitCheck.Yaml;

namespace FitCheck.DataSheets;

/// <summary>
/// Writes entries of a kind as a table: a row for each, a column for each key that one of them has, lists as YAML in one cell.
/// </summary>
internal static class TableText
{
    /// <summary>CSV (RFC 4180) with lines ended by `\n`; the columns in the order of the schema.</summary>
    public static string Of(string kind, IReadOnlyList<YamlMap> entries)
    {
        var paths = KeyPath.Of(kind).Where(p => p.Path != "kind").ToList();
        var rows = entries.Select(e => paths.ToDictionary(p => p.Path, p => Cell(e, p), StringComparer.Ordinal)).ToList();
        var columns = paths.Where(p => rows.Exists(r => r[p.Path] is not null)).Select(p => p.Path).ToList();
        var text = new StringBuilder(string.Join(',', columns.Select(Guarded))).Append('\n');
        foreach (var row in rows)
            text.AppendJoin(',', columns.Select(c => Guarded(row[c] ?? ""))).Append('\n');
        return text.ToString();
    }

    // A mapping stands in the columns of its keys; an empty one has none.
    private static string? Cell(YamlMap entry, KeyPath path)
    {
        YamlNode? node = entry;
        foreach (var key in path.Keys)
            node = (node as YamlMap)?[key];
        return node switch
        {
            null or YamlMap { Entries.Count: > 0 } => null,
            YamlScalar scalar => Scalar(scalar, path),
            _ => FlowText.Of(node),
        };
    }

    // As it is read back: what would be trimmed, or taken for a list or for quotes, is put in quotes.
    private static string Scalar(YamlScalar scalar, KeyPath path) =>
        FlowText.IsText(scalar) && (scalar.Text.Trim() != scalar.Text || scalar.Text.Length == 0 || scalar.Text[0] is '"' or '\''
            || scalar.Text.AsSpan().ContainsAny('\n', '\r') || (path.Item is not null && scalar.Text[0] is '[' or '{'))
            ? YamlText.Quoted(scalar.Text) : scalar.Text;

    // A spreadsheet would run some texts as formulas.
    private static string Guarded(string cell)
    {
        var text = cell.Length > 0 && cell[0] is '=' or '+' or '-' or '@' ? "'" + cell : cell;
        return text.AsSpan().ContainsAny(',', '"', '\n') || text.Contains(';', StringComparison.Ordinal)
            ? $"\"{text.Replace("\"", "\"\"", StringComparison.Ordinal)}\"" : text;
    }
}
