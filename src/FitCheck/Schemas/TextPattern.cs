namespace FitCheck.Schemas;

/// <summary>
/// A regular expression as a table that grows as it is used: one look-up a character, whatever it holds, and only those rows are worked out
/// that some text comes through. It takes what schemas of quantities use: characters, `\d` and escaped signs, classes, groups, alternatives
/// and repeats, between `^` and `$`. Several threads may ask at once.
/// </summary>
internal sealed class TextPattern
{
    // Beginnings of the ranges of characters that no part of the pattern tells apart.
    private readonly char[] _ranges;
    private readonly byte[] _ascii = new byte[128];
    private readonly PatternGraph _graph;
    private readonly Dictionary<string, Row> _rows = new(StringComparer.Ordinal);
    private readonly Row _start;

    private TextPattern(PatternGraph graph)
    {
        _graph = graph;
        _ranges = graph.Ranges();
        for (var c = 0; c < _ascii.Length; c++)
            _ascii[c] = (byte)RangeOf((char)c);
        _start = RowOf(graph.Reached([PatternGraph.Start]));
    }

    // The subset construction: a row stands for a set of places in the graph. A text that has none left can't match.
    private sealed record Row(SortedSet<int> Places, bool Accepts, Row?[] Next);

    /// <summary>The table of a pattern; null when it uses something else.</summary>
    public static TextPattern? Of(string pattern) =>
        PatternGraph.Read(pattern) is { } graph && graph.Ranges().Length < byte.MaxValue ? new TextPattern(graph) : null;

    public bool Matches(string text)
    {
        var row = _start;
        foreach (var c in text)
        {
            var range = c < _ascii.Length ? _ascii[c] : RangeOf(c);
            row = row.Next[range] ?? After(row, range);
            if (row.Places.Count == 0)
                return false;
        }
        return row.Accepts;
    }

    private Row After(Row row, int range)
    {
        lock (_rows)
            return row.Next[range] ??= RowOf(_graph.Reached(_graph.After(row.Places, _ranges[range])));
    }

    private Row RowOf(SortedSet<int> places)
    {
        var name = string.Join(' ', places);
        return _rows.TryGetValue(name, out var row) ? row
            : _rows[name] = new Row(places, places.Contains(_graph.End), new Row?[_ranges.Length]);
    }

    private int RangeOf(char c)
    {
        var at = Array.BinarySearch(_ranges, c);
        return at >= 0 ? at : ~at - 1;
    }
}
