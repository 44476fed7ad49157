using FitCheck.Catalog;
using FitCheck.Evaluation;
using FitCheck.Findings;
using FitCheck.Foundation.Problems;

namespace FitCheck;

/// <summary>
/// What a choice would bring, or the reasons why it can't be made, such as a source unit that lacks an output that the build uses.
/// </summary>
public sealed record PreviewOutcome(ChoicePreview? Result, IReadOnlyList<Problem> Problems);

/// <summary>What a check would say after a choice, and what differs from before.</summary>
public sealed record ChoicePreview
{
    /// <summary>The choice.</summary>
    public required BuildChoice Choice { get; init; }

    /// <summary>The build as it is.</summary>
    public required BuildResult Before { get; init; }

    /// <summary>The build with the choice, checked in full.</summary>
    public required BuildResult After { get; init; }

    /// <summary>The verdict that the choice would bring.</summary>
    public Status Verdict => After.Verdict;

    /// <summary>Findings that are no pass and not waived, and that the build does not have now, or has with another status.</summary>
    public required IReadOnlyList<Finding> Appear { get; init; }

    /// <summary>
    /// Findings that are no pass and not waived, and that the build would not have any more, or would have with another status.
    /// </summary>
    public required IReadOnlyList<Finding> Vanish { get; init; }

    /// <summary>What the build would cost, by currency in ordinal order; exact decimal amounts.</summary>
    public IReadOnlyList<Money> Totals => After.Totals;

    internal static ChoicePreview Of(BuildChoice choice, BuildResult before, BuildResult after) =>
        new() { Choice = choice, Before = before, After = after, Appear = Without(after, before), Vanish = Without(before, after) };

    /// <summary>Findings that are no pass and not waived, and that the other has not, or not with this status.</summary>
    internal static IReadOnlyList<Finding> Without(BuildResult one, BuildResult other)
    {
        var known = Open(other).Select(f => (f.Rule, f.Position, f.Status)).ToHashSet();
        return [.. Open(one).Where(f => !known.Contains((f.Rule, f.Position, f.Status)))];
    }

    private static IEnumerable<Finding> Open(BuildResult result) => result.Findings.Where(f => f.Waived is null && f.Status != Status.Pass);
}
