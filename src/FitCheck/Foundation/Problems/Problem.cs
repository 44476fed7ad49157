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

    /// <summary>How many problems of its file it stands for, which are not told one by one; 0 where it speaks for itself.</summary>
    internal int Untold { get; init; }

    /// <summary>One that stands for so many more.</summary>
    internal static Problem More(Location at, int count) =>
        new(at, Severity.Error, $"{count} more here and below {(count == 1 ? "is" : "are")} not told one by one; mend these first")
        {
            Untold = count,
            Kind = ProblemKind.WrongShape,
        };

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
    /// <summary>The most mistakes of one file that are told: nobody reads more, and a file can have a hundred thousand.</summary>
    public const int MostOfOneFile = 100;

    private readonly List<Problem> _items = [];

    public bool HasErrors => _items.Exists(p => p.Severity == Severity.Error);

    public int Count => _items.Count;

    public void Error(Location at, string message, ProblemKind? kind = null) => Add(at, Severity.Error, message, kind);

    public void Warn(Location at, string message, ProblemKind? kind = null) => Add(at, Severity.Warning, message, kind);

    public void Add(Problem problem) => _items.Add(problem);

    public void AddRange(IEnumerable<Problem> problems) => _items.AddRange(problems);

    /// <summary>In the order in which they were found.</summary>
    public IReadOnlyList<Problem> All => _items;

    /// <summary>
    /// In file order; of several at one place only the first that was found: the others follow from it. What rules say is kept, each once.
    /// Of the mistakes of one file the first hundred are told, and how many more there are.
    /// </summary>
    public IReadOnlyList<Problem> Sorted() => _items.Count == 0 ? [] : Bounded([.. _items
        .GroupBy(p => (p.At, p.Severity, p.Rule)).Select(g => g.First())
        .OrderBy(p => p.At).ThenBy(p => p.Message, StringComparer.Ordinal)]);

    private static List<Problem> Bounded(List<Problem> sorted)
    {
        if (sorted.Count <= MostOfOneFile)
            return sorted;
        var told = new List<Problem>();
        foreach (var file in sorted.GroupBy(p => p.At.File, StringComparer.Ordinal))
        {
            var mistakes = 0;
            var untold = new List<Problem>();
            foreach (var problem in file)
            {
                if (problem.Untold > 0 || (IsMistake(problem) && mistakes++ >= MostOfOneFile))
                    untold.Add(problem);
                else
                    told.Add(problem);
            }
            if (untold.Count > 0)
                told.Add(Problem.More(untold[0].At, untold.Sum(p => Math.Max(1, p.Untold))));
        }
        return [.. told.OrderBy(p => p.At)];
    }

    private static bool IsMistake(Problem problem) => problem is { Severity: Severity.Error, Rule: null, Untold: 0 };

    private void Add(Location at, Severity severity, string message, ProblemKind? kind) =>
        _items.Add(new Problem(at, severity, message) { Kind = kind ?? usual ?? ProblemKind.Contradiction });
}
