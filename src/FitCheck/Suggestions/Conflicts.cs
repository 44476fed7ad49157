using FitCheck.Evaluation;
using FitCheck.Rules;
using FitCheck.Suggestions.Choices;
using FitCheck.Suggestions.Searching;
using FitCheck.Suggestions.Trials;

namespace FitCheck.Suggestions;

/// <summary>
/// Why nothing passes: the smallest set of rules that no choice keeps together, found by leaving one after the other out as long as nothing
/// passes without it; and which of the wishes (what is kept, what may be done, what may be spent) would each be enough to give up.
/// </summary>
internal sealed class Conflicts(ProposalEvaluator evaluator, RuleSet rules, BuildResult before, IReadOnlyList<Slot> slots, Goal goal,
    TimeSpan time)
{
    private readonly int _voices = Slots.MostVoices(slots);

    /// <summary>The conflict of a build that nothing makes pass.</summary>
    /// <param name="wishes">Each wish in words, and the search without it; true when something passes then.</param>
    public Conflict Find(IEnumerable<(string Words, Func<bool> PassesWithout)> wishes)
    {
        var clashing = evaluator.SeenRules(goal.IsBad).ToList();
        foreach (var rule in clashing.ToList())
        {
            var rest = clashing.Where(r => r != rule).ToHashSet(StringComparer.Ordinal);
            if (rest.Count > 0 && !Passes(rest))
                clashing.Remove(rule);
        }
        return new Conflict
        {
            Obstacles = [.. Obstacles(clashing)],
            Wishes = [.. wishes.Where(w => w.PassesWithout()).Select(w => w.Words)],
        };
    }

    private bool Passes(IReadOnlySet<string> only)
    {
        var (answers, effort) = new Search(evaluator, slots, goal with { Rules = only, Voices = _voices }, 1, time) { First = true }.Run();
        // What could not be decided in time is not claimed.
        return answers.Count > 0 || !effort.Finished;
    }

    private IEnumerable<Obstacle> Obstacles(IReadOnlyList<string> clashing)
    {
        foreach (var rule in clashing)
        {
            var findings = before.Findings.Where(f => f.Rule == rule && f.Waived is null).ToList();
            var bad = findings.Where(f => f.Status >= goal.FailOn).ToList();
            yield return new Obstacle(rule, rules.Find(rule)!.Title, bad.Count > 0 ? bad : findings, Nearest(rule));
        }
    }

    // The best margin that any choice reached.
    private Approach? Nearest(string rule)
    {
        var best = evaluator.SeenOf(rule).Where(i => i.Margin is not null && goal.IsBad(i)).MaxBy(i => i.Margin);
        return best is null || rules.Find(rule)!.Unit is not { } unit ? null : new Approach(unit.FromSi(best.Margin!.Value), unit.Symbol);
    }
}
