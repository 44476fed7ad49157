namespace FitCheck.Foundation.Problems;

/// <summary>How bad a problem with an input is.</summary>
public enum Severity
{
    /// <summary>Worth a look; the answer stands.</summary>
    Warning,
    /// <summary>The input can't be used.</summary>
    Error,
}

/// <summary>Something wrong with an input.</summary>
/// <param name="At">Where it is.</param>
/// <param name="Severity">Whether the input can be used all the same.</param>
/// <param name="Message">A sentence that says what was expected.</param>
public sealed record Problem(Location At, Severity Severity, string Message)
{
    /// <summary>The id of the rule that says so, `family/slug`; null when the input's form is wrong.</summary>
    public string? Rule { get; init; }

    /// <summary>What sort of thing is wrong with the form; means nothing where a rule speaks.</summary>
    public ProblemKind Kind { get; init; } = ProblemKind.Contradiction;

    /// <summary>Further places that it touches, such as the second of two numbers that disagree.</summary>
    public IReadOnlyList<Related> Related { get; init; } = [];

    /// <summary>
    /// What it is about, such as the id of a part, in words that stay when lines move; null where the message alone tells.
    /// </summary>
    public string? Subject { get; init; }

    /// <summary>What it is filed under: the rule, or the kind.</summary>
    public string Code => Rule ?? Kind.Id;

    /// <summary>`FILE:LINE:COLUMN: error: MESSAGE [RULE]`, as editors and continuous integration understand it.</summary>
    public override string ToString() =>
        $"{At}: {(Severity == Severity.Error ? "error" : "warning")}: {Message}{(Rule is null ? "" : $" [{Rule}]")}";
}

/// <summary>Collects problems so that all of them are told at once.</summary>
/// <param name="usual">The kind of those that are added without one; a contradiction when it is null.</param>
internal sealed class ProblemList(ProblemKind? usual = null)
{
    private readonly List<Problem> _items = [];

    public bool HasErrors => _items.Exists(p => p.Severity == Severity.Error);

    public int Count => _items.Count;

    public void Error(Location at, string message, ProblemKind? kind = null) => Add(at, Severity.Error, message, kind);

    public void Warn(Location at, string message, ProblemKind? kind = null) => Add(at, Severity.Warning, message, kind);

    public void AddRange(IEnumerable<Problem> problems) => _items.AddRange(problems);

    /// <summary>In the order in which they were found.</summary>
    public IReadOnlyList<Problem> All => _items;

    /// <summary>
    /// In file order; of several at one place only the first that was found: the others follow from it. What rules say is kept, each once.
    /// </summary>
    public IReadOnlyList<Problem> Sorted() => _items.Count == 0 ? [] : [.. _items
        .GroupBy(p => (p.At, p.Severity, p.Rule)).Select(g => g.First())
        .OrderBy(p => p.At).ThenBy(p => p.Message, StringComparer.Ordinal)];

    private void Add(Location at, Severity severity, string message, ProblemKind? kind) =>
        _items.Add(new Problem(at, severity, message) { Kind = kind ?? usual ?? ProblemKind.Contradiction });
}
