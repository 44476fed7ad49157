using FitCheck.Builds;
using FitCheck.Facts.Values;
using FitCheck.Findings;
using FitCheck.Foundation.Problems;
using FitCheck.Rules;

namespace FitCheck.Evaluation;

/// <summary>Marks the findings that the build accepts. A waived finding keeps its status; a waiver that matches nothing is told.</summary>
internal static class Waivers
{
    /// <summary>Tells waivers of rules that are never waived, each where it stands.</summary>
    /// <param name="build">The build.</param>
    /// <param name="rules">Asked for only when the build waives anything.</param>
    /// <param name="problems">Where they are told.</param>
    public static void Refuse(Build build, Func<RuleSet> rules, ProblemList problems)
    {
        foreach (var waiver in build.Waivers)
        {
            if (rules().Find(waiver.Rule) is { CanBeWaived: false } rule)
                problems.Error(waiver.At,
                    $"`{rule.Id}` is never waived, so this build can't be judged with such a waiver: {rule.Why} Delete the waiver and "
                        + $"change the build: {rule.Advice}", ProblemKind.ForbiddenWaiver);
        }
    }

    public static (List<Finding> Findings, IReadOnlyList<Problem> Remarks) Apply(Build build, List<Finding> findings, RuleSet rules)
    {
        var remarks = new ProblemList();
        var result = findings.ToList();
        foreach (var waiver in build.Waivers)
        {
            var matched = false;
            for (var i = 0; i < result.Count; i++)
            {
                var f = result[i];
                if (f.Rule != waiver.Rule || rules.Find(f.Rule) is { CanBeWaived: false } || f.Status == Status.Pass
                    || (waiver.Position is { } at && at != f.Position))
                    continue;
                result[i] = f with { Waived = waiver.Reason };
                matched = true;
            }
            if (!matched)
                remarks.Warn(waiver.At, Unmatched(waiver, findings, rules), ProblemKind.IdleWaiver);
        }
        return (result, remarks.Sorted());
    }

    private static string Unmatched(Waiver waiver, List<Finding> findings, RuleSet rules)
    {
        if (rules.Changes.FirstOrDefault(c => c.IsOff && c.Rule == waiver.Rule) is { } off)
            return $"nothing to waive: `{waiver.Rule}` is switched off ({off.Reason})";
        if (rules.Find(waiver.Rule) is { CanBeWaived: false })
            return $"`{waiver.Rule}` is never waived, so its findings stand";
        // A rule of the catalog is mostly not even read when the inputs are known; the answer must be the same then.
        if (rules.Find(waiver.Rule) is not { } rule || rule.Subject.IsOfCatalog())
            return $"no rule `{waiver.Rule}` of builds, so this waiver matches nothing"
                + $"{Nearest.Hint(waiver.Rule, rules.Rules.Where(r => !r.Subject.IsOfCatalog()).Select(r => r.Id))}";
        var where = waiver.Position is { } position ? $" at `{position}`" : "";
        return findings.Exists(f => f.Rule == waiver.Rule)
            ? $"nothing to waive: `{waiver.Rule}` finds nothing wrong{where}"
            : $"nothing to waive: `{waiver.Rule}` does not apply{where}";
    }
}
