namespace FitCheck.Yaml;

/// <summary>How bad a problem with an input is.</summary>
public enum Severity
{
    /// <summary>Worth a look; the answer stands.</summary>
    Warning,
    /// <summary>The input can't be used.</summary>
    Error,
}

/// <summary>Something wrong with an input, in a sentence that says what was expected.</summary>
public sealed record Problem(Location At, Severity Severity, string Message)
{
    /// <summary>The id of the rule that says so, `family/slug`; null when the input's form is wrong.</summary>
    public string? Rule { get; init; }

    /// <summary>Further places that it touches, such as the second of two numbers that disagree.</summary>
    public IReadOnlyList<Related> Related { get; init; } = [];

    public override string ToString() => $"{At}: {(Severity == Severity.Error ? "error" : "warning")}: {Message}";
}

/// <summary>Collects problems so that all of them are told at once.</summary>
public sealed class ProblemList
{
    private readonly List<Problem> _items = [];

    public bool HasErrors => _items.Exists(p => p.Severity == Severity.Error);

    public int Count => _items.Count;

    public void Error(Location at, string message) => _items.Add(new Problem(at, Severity.Error, message));

    public void Warn(Location at, string message) => _items.Add(new Problem(at, Severity.Warning, message));

    public void AddRange(IEnumerable<Problem> problems) => _items.AddRange(problems);

    /// <summary>In file order; of several at one place only the first that was found: the others follow from it. What rules say is kept, each once.</summary>
    public IReadOnlyList<Problem> Sorted() => _items.Count == 0 ? [] : [.. _items
        .GroupBy(p => (p.At, p.Severity, p.Rule)).Select(g => g.First())
        .OrderBy(p => p.At).ThenBy(p => p.Message, StringComparer.Ordinal)];
}
