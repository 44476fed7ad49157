using FitCheck.Foundation.Problems;

namespace FitCheck.Cli.Asking;

/// <summary>
/// A list on a screen of any size: what keys do to it, and the lines that show it. It knows no terminal.
/// </summary>
/// <param name="question">Stands above the list.</param>
/// <param name="among">What may be chosen, at least one.</param>
/// <param name="marked">What is marked at first; null where one is chosen and nothing is marked.</param>
/// <param name="atLeastOne">Whether nothing marked is no answer.</param>
internal sealed class ListScreen(string question, IReadOnlyList<Choice> among, IReadOnlyList<Choice>? marked = null,
    bool atLeastOne = false)
{
    private readonly IReadOnlyList<Choice> _all = among;
    private readonly HashSet<Choice> _marked = [.. marked ?? []];
    private IReadOnlyList<Choice> _shown = among;
    private string _typed = "";
    private int _at;
    private string? _said;

    /// <summary>The answer, once Enter has given one.</summary>
    public IReadOnlyList<Choice>? Answer { get; private set; }

    /// <summary>Takes a key.</summary>
    /// <exception cref="StepBack">It was Escape.</exception>
    public void Press(ConsoleKeyInfo key)
    {
        _said = null;
        switch (key.Key)
        {
            case ConsoleKey.Escape:
                throw new StepBack();
            case ConsoleKey.Enter:
                Enter();
                break;
            case ConsoleKey.UpArrow or ConsoleKey.DownArrow when _shown.Count > 0:
                _at = (_at + (key.Key == ConsoleKey.UpArrow ? _shown.Count - 1 : 1)) % _shown.Count;
                break;
            case ConsoleKey.PageUp or ConsoleKey.Home:
                _at = key.Key == ConsoleKey.Home ? 0 : Math.Max(0, _at - 5);
                break;
            case ConsoleKey.PageDown or ConsoleKey.End:
                _at = Math.Max(0, key.Key == ConsoleKey.End ? _shown.Count - 1 : Math.Min(_shown.Count - 1, _at + 5));
                break;
            case ConsoleKey.Backspace when _typed.Length > 0:
                Narrow(_typed[..^1]);
                break;
            case ConsoleKey.Spacebar when marked is not null && _shown.Count > 0:
                if (!_marked.Remove(_shown[_at]))
                    _marked.Add(_shown[_at]);
                break;
            default:
                if (!char.IsControl(key.KeyChar))
                    Narrow(_typed + key.KeyChar);
                break;
        }
    }

    /// <summary>What stands on the screen: the question, as much of the list as there is room for, and what keys do.</summary>
    /// <param name="rows">Lines at most, at least five.</param>
    /// <param name="text">How a choice is shown.</param>
    /// <returns>Lines, and which of them is the one that Enter takes.</returns>
    public IReadOnlyList<(string Text, bool IsChosen)> Lines(int rows, Func<Choice, string> text)
    {
        var room = Math.Max(1, rows - 3);
        var first = Math.Clamp(_at - (room / 2), 0, Math.Max(0, _shown.Count - room));
        List<(string, bool)> lines = [(question, false)];
        for (var i = first; i < Math.Min(_shown.Count, first + room); i++)
            lines.Add(($"{(i == _at ? "> " : "  ")}{Mark(_shown[i])}{text(_shown[i])}", i == _at));
        if (_shown.Count == 0)
            lines.Add(($"  Nothing here has `{_typed}`{(Nearest.To(_typed, Words()) is { } near ? $"; did you mean `{near}`?" : ".")}",
                false));
        lines.Add((_typed.Length > 0 ? $"Looking for: {_typed} ({Count()})" : Count(), false));
        lines.Add((_said ?? (marked is null ? "Type to look for; arrows move, Enter takes, Esc goes back."
            : "Space marks, arrows move, Enter goes on, Esc goes back."), false));
        return lines;
    }

    private void Enter()
    {
        if (marked is not null && atLeastOne && _marked.Count == 0)
            _said = "Mark at least one with the space bar.";
        else if (marked is not null)
            Answer = [.. _all.Where(_marked.Contains)];
        else if (_shown.Count == 0)
            _said = $"Nothing has `{_typed}`; take some letters back.";
        else
            Answer = [_shown[_at]];
    }

    private void Narrow(string typed)
    {
        var before = _shown.Count > 0 ? _shown[_at] : null;
        _typed = typed;
        var words = typed.Split(' ', StringSplitOptions.RemoveEmptyEntries);
        _shown = [.. _all.Where(c => Array.TrueForAll(words, w => $"{c.Label} {c.Id}".Contains(w, StringComparison.OrdinalIgnoreCase)))];
        _at = Math.Max(0, before is null || typed.Length > 0 ? 0 : _shown.ToList().IndexOf(before));
    }

    private string Mark(Choice choice) => marked is null ? "" : _marked.Contains(choice) ? "[x] " : "[ ] ";

    private string Count() => _shown.Count == _all.Count ? $"{Reports.Wording.Figures.Whole(_all.Count)} in all"
        : $"{Reports.Wording.Figures.Whole(_shown.Count)} of {Reports.Wording.Figures.Whole(_all.Count)}";

    private IEnumerable<string> Words() =>
        _all.SelectMany(c => $"{c.Label} {c.Id}".Split([' ', ',', '-', '(', ')', ':'], StringSplitOptions.RemoveEmptyEntries)).Distinct();
}
