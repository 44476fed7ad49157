using FitCheck.Catalog;
using FitCheck.Evaluation;
using FitCheck.Facts;
using FitCheck.Findings;
using FitCheck.Rules;
using FitCheck.Suggestions.Choices;
using FitCheck.Suggestions.Searching;
using FitCheck.Suggestions.Trials;

namespace FitCheck.Suggestions;

/// <summary>Turns an answer into what a person is told, after a check in full of the build that would be written.</summary>
internal sealed class ProposalTeller(ProposalEvaluator evaluator, RuleSet rules, BuildResult before, Goal goal)
{
    /// <summary>The proposal. That its build passes is checked here; if it did not, the search would have a defect.</summary>
    public Proposal Tell(Answer answer)
    {
        var yaml = QuoteText.Renewed(evaluator, answer.Changes);
        var after = Judged(yaml);
        // The search leaves the seller's list aside; where something superfluous on it stands in the way or is new, that is taken out too.
        if (after.Findings.Any(
            f => f.Waived is null && (f.Status >= goal.FailOn || IsNew(f))
                && rules.Find(f.Rule)!.Names.Any(n => n == BuildFacts.QuoteUnusedCount.Name || n == BuildFacts.QuoteSurplusCount.Name)))
            after = Judged(yaml = QuoteText.Renewed(evaluator, answer.Changes, onlyNeeded: true));
        if (after.Verdict >= goal.FailOn)
            throw new InvalidOperationException("a proposed build does not pass");
        return new Proposal
        {
            Changes = [.. answer.Changes.Select(c => Told(c, answer.Changes, after))],
            After = after,
            Yaml = yaml,
            Difference = Difference(before.Totals, after.Totals),
            Work = answer.Assessment.Work,
            LeastClearance = double.IsFinite(answer.Assessment.LeastClearance) ? answer.Assessment.LeastClearance : null,
            New = [.. after.Findings.Where(IsNew)],
            InDoubt = after.Findings.Any(
                f => f.Status == Status.Measure && f.Waived is null
                    && !before.Findings.Any(b => b.Rule == f.Rule && b.Position == f.Position && b.Status == Status.Measure)),
        };
    }

    private bool IsNew(Finding f) => f.Waived is null && goal.IsNew((f.Rule, f.Position), f.Status);

    private BuildResult Judged(string yaml) =>
        BuildEvaluation.Judged(evaluator.Valid(yaml) ?? throw new InvalidOperationException("a proposed build can't be read"), rules);

    private ProposedChange Told(Change change, IReadOnlyList<Change> all, BuildResult after)
    {
        var without = all.Where(c => c.Slot != change.Slot).ToList();
        var reasons = new List<Reason>();
        if (evaluator.Read(without) is { } less)
        {
            var judged = BuildEvaluation.Judged(less, rules);
            var bad = evaluator.Assess(without).Issues.Where(goal.IsBad).Select(i => i.Id).ToHashSet();
            reasons.AddRange(judged.Findings.Where(f => bad.Contains((f.Rule, f.Position)))
                .Select(f => new Reason(f, after.Findings.FirstOrDefault(a => a.Rule == f.Rule && a.Position == f.Position))));
        }
        return new ProposedChange(change.Slot.What, [.. change.Slot.Where.Select(evaluator.NameOf)], change.Slot.Now, change.Option.Value)
        {
            FromName = change.Slot.Parts.Select(p => (evaluator.Find(p) as Part)?.Name).OfType<string>().ToList() is { Count: > 0 } names
                ? string.Join(" and ", names) : null,
            ToName = change.Option.Parts.Count > 0 ? string.Join(" and ", change.Option.Parts.Select(p => p.Name)) : null,
            Because = reasons,
            Difference =
                after.Totals is [var total] && evaluator.Read(without) is not null
                    ? total with { Amount = evaluator.PriceOf(all) - evaluator.PriceOf(without) } : null,
        };
    }

    private static List<Money> Difference(IReadOnlyList<Money> before, IReadOnlyList<Money> after) =>
        [.. before.Concat(after).Select(m => m.Currency).Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal)
            .Select(c =>
            new Money(after.Where(m => m.Currency == c).Sum(m => m.Amount) - before.Where(m => m.Currency == c).Sum(m => m.Amount), c))];
}
