using System.Globalization;

namespace FitCheck.Schemas;

/// <summary>A regular expression as places, and steps from one to the next: each takes a character, or none (Thompson 1968).</summary>
internal sealed class PatternGraph
{
    /// <summary>Where every text begins.</summary>
    public const int Start = 0;

    private const int MostCopies = 64;

    private readonly List<(int From, char Low, char High, int To)> _steps = [];
    private readonly List<(int From, int To)> _free = [];
    private readonly string _pattern;
    private int _at = 1;
    private int _places = 1;
    private bool _unknown;

    private PatternGraph(string pattern) => _pattern = pattern;

    /// <summary>The place in which a text that matches ends.</summary>
    public int End { get; private set; }

    private char Current => _at < _pattern.Length - 1 ? _pattern[_at] : '\0';

    /// <summary>The graph of `^…$`; null when the pattern holds something that is not known here.</summary>
    public static PatternGraph? Read(string pattern)
    {
        if (pattern.Length < 2 || pattern[0] != '^' || pattern[^1] != '$' || pattern[^2] == '\\')
            return null;
        var graph = new PatternGraph(pattern);
        // Alternatives outside of brackets would each have one of the two anchors only.
        graph.End = graph.Sequence(Start);
        return graph._unknown || graph._at != pattern.Length - 1 ? null : graph;
    }

    /// <summary>The first characters of the ranges within which all characters are alike.</summary>
    public char[] Ranges() => [.. new SortedSet<char>([.. _steps.Select(s => s.Low), .. _steps.Select(s => (char)(s.High + 1)), '\0'])];

    /// <summary>The places after a character.</summary>
    public IEnumerable<int> After(IReadOnlySet<int> places, char c) =>
        _steps.Where(s => c >= s.Low && c <= s.High && places.Contains(s.From)).Select(s => s.To);

    /// <summary>These places and those that are reached from them without a character.</summary>
    public SortedSet<int> Reached(IEnumerable<int> places)
    {
        var reached = new SortedSet<int>(places);
        var open = new Stack<int>(reached);
        while (open.TryPop(out var place))
        {
            foreach (var (from, to) in _free)
            {
                if (from == place && reached.Add(to))
                    open.Push(to);
            }
        }
        return reached;
    }

    private int Alternatives(int from)
    {
        var end = _places++;
        do
            _free.Add((Sequence(from), end));
        while (Taken('|'));
        return end;
    }

    private int Sequence(int from)
    {
        while (!_unknown && Current is not ('\0' or '|' or ')'))
            from = Repeated(from);
        return from;
    }

    // The part is read once for each time that it must or may stand there.
    private int Repeated(int from)
    {
        var part = _at;
        var inside = _places++;
        _free.Add((from, inside));
        var to = One(inside);
        switch (Current)
        {
            case '?':
                _at++;
                _free.Add((inside, to));
                return to;
            case '*':
            case '+':
                if (_pattern[_at++] == '*')
                    _free.Add((inside, to));
                _free.Add((to, inside));
                return to;
            case '{':
                return Counted(part, to);
            default:
                return to;
        }
    }

    private int Counted(int part, int to)
    {
        var close = _pattern.IndexOf('}', _at);
        var bounds = close < 0 ? [] : _pattern[(_at + 1)..close].Split(',');
        if (bounds.Length is not (1 or 2) || !int.TryParse(bounds[0], NumberStyles.None, CultureInfo.InvariantCulture, out var least)
            || !int.TryParse(bounds[^1], NumberStyles.None, CultureInfo.InvariantCulture, out var most) || least < 1 || most < least
            || most > MostCopies)
        {
            _unknown = true;
            return to;
        }
        var ends = new List<int> { to };
        while (ends.Count < most)
        {
            _at = part;
            ends.Add(One(ends[^1]));
        }
        foreach (var end in ends.Skip(least - 1).SkipLast(1))
            _free.Add((end, ends[^1]));
        _at = close + 1;
        return ends[^1];
    }

    private int One(int from)
    {
        var c = Current;
        _at++;
        switch (c)
        {
            case '(':
                var end = Alternatives(from);
                _unknown |= !Taken(')');
                return end;
            case '[':
                return Class(from);
            case '\\':
                return Escaped(from);
            case '.' or '^' or '$' or '*' or '+' or '?' or '{' or '\0':
                _unknown = true;
                return from;
            default:
                return Step(from, c, c);
        }
    }

    private int Escaped(int from)
    {
        var c = Current;
        _at++;
        _unknown |= char.IsAsciiLetterOrDigit(c) && c != 'd' || c == '\0';
        return c == 'd' ? Step(from, '0', '9') : Step(from, c, c);
    }

    private int Class(int from)
    {
        var to = _places++;
        while (!_unknown && Current != ']')
        {
            var low = Current;
            _unknown |= low is '\0' or '\\' or '^' or '[';
            _at++;
            var high = low;
            if (Current == '-' && _pattern[_at + 1] != ']')
            {
                high = _pattern[_at + 1];
                _at += 2;
            }
            _steps.Add((from, low, high, to));
        }
        _at++;
        return to;
    }

    private int Step(int from, char low, char high)
    {
        _steps.Add((from, low, high, _places));
        return _places++;
    }

    private bool Taken(char c)
    {
        if (Current != c)
            return false;
        _at++;
        return true;
    }
}
