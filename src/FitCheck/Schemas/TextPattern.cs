namespace FitCheck.Schemas;

/// <summary>
/// A regular expression as a table: one look-up a character, whatever it holds, and nothing to compile at run time. It takes what schemas of quantities use:
/// characters, `\d` and escaped signs, classes, groups, alternatives and repeats, between `^` and `$`.
/// </summary>
internal sealed class TextPattern
{
    private const int Dead = 0;
    private const int Start = 1;

    // Beginnings of the ranges of characters that no part of the pattern tells apart.
    private readonly char[] _ranges;
    private readonly byte[] _ascii = new byte[128];
    private readonly List<int[]> _next = [];
    private readonly List<bool> _accepts = [];

    private TextPattern(PatternGraph graph)
    {
        _ranges = graph.Ranges();
        for (var c = 0; c < _ascii.Length; c++)
            _ascii[c] = (byte)RangeOf((char)c);
        Determine(graph);
    }

    /// <summary>The table of a pattern; null when it uses something else.</summary>
    public static TextPattern? Of(string pattern) => PatternGraph.Read(pattern) is { } graph && graph.Ranges().Length < byte.MaxValue ? new TextPattern(graph) : null;

    public bool Matches(string text)
    {
        var state = Start;
        foreach (var c in text)
        {
            state = _next[state][c < _ascii.Length ? _ascii[c] : RangeOf(c)];
            if (state == Dead)
                return false;
        }
        return _accepts[state];
    }

    private int RangeOf(char c)
    {
        var at = Array.BinarySearch(_ranges, c);
        return at >= 0 ? at : ~at - 1;
    }

    // The subset construction: a state of the table is a set of places in the graph.
    private void Determine(PatternGraph graph)
    {
        var known = new Dictionary<string, int>(StringComparer.Ordinal);
        var places = new List<SortedSet<int>>();
        State([]);
        State(graph.Reached([PatternGraph.Start]));
        for (var state = 0; state < places.Count; state++)
        {
            for (var range = 0; range < _ranges.Length; range++)
                _next[state][range] = State(graph.Reached(graph.After(places[state], _ranges[range])));
        }

        int State(SortedSet<int> set)
        {
            var name = string.Join(' ', set);
            if (known.TryGetValue(name, out var number))
                return number;
            places.Add(set);
            _next.Add(new int[_ranges.Length]);
            _accepts.Add(set.Contains(graph.End));
            return known[name] = places.Count - 1;
        }
    }
}
