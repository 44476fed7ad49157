using FitCheck.Suggestions.Choices;
using FitCheck.Suggestions.Trials;

namespace FitCheck.Suggestions.Searching;

/// <summary>
/// What options of a slot brought with them that was not there before: the next option is asked for these findings first, alone, which is
/// far less work than to judge it in full.
/// </summary>
/// <param name="evaluator">Judges what is tried.</param>
/// <param name="goal">What has to go.</param>
/// <param name="cause">The finding that is to be removed.</param>
/// <param name="changes">What was chosen before.</param>
internal sealed class Obstacles(ProposalEvaluator evaluator, Goal goal, RuleVerdict cause, IReadOnlyList<Change> changes)
{
    // Those that come up often are among the first few.
    private const int Most = 6;

    private readonly HashSet<(string, string)> _before = [.. evaluator.Assess(changes).Issues.Where(goal.IsBad).Select(i => i.Id)];
    private readonly List<RuleVerdict> _met = [];

    /// <summary>
    /// Works out for further choices whether the cause and what was met so far stay; of a cause of price each has to be judged in full.
    /// </summary>
    public void Prepare(IEnumerable<Change> further)
    {
        if (!cause.IsOfPrice)
            evaluator.Prepare([cause, .. _met], changes, further);
    }

    /// <summary>Whether the cause stays.</summary>
    public bool IsNoHelp(IReadOnlyList<Change> next) => !cause.IsOfPrice && evaluator.Again(cause, next) is { } again && goal.IsBad(again);

    /// <summary>Whether something stands in the way that stood in the way of others.</summary>
    public bool IsMet(IReadOnlyList<Change> next) =>
        !cause.IsOfPrice && _met.Exists(m => evaluator.Again(m, next) is { } again && goal.IsBad(again));

    /// <summary>Takes note of what stands in the way now and did not before.</summary>
    public void Learn(IReadOnlyList<Change> next)
    {
        foreach (var issue in evaluator.Assess(next).Issues)
        {
            if (_met.Count < Most && goal.IsBad(issue) && !issue.IsOfPrice && !_before.Contains(issue.Id)
                && !_met.Exists(m => m.Rule == issue.Rule))
                _met.Add(issue);
        }
    }
}
