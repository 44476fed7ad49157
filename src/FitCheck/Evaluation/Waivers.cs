using FitCheck.Builds;
using FitCheck.Facts.Values;
using FitCheck.Findings;
using FitCheck.Foundation.Problems;
using FitCheck.Rules;
using FitCheck.Rules.Model;

namespace FitCheck.Evaluation;

/// <summary>
/// Marks the findings that the build accepts. A waived finding keeps its status; a waiver that matches nothing, or whose last day is over,
/// is told.
/// </summary>
internal static class Waivers
{
    /// <summary>
    /// Tells waivers of rules that are never waived, and those that name no place though their rule has one, each where it stands.
    /// </summary>
    /// <param name="build">The build.</param>
    /// <param name="rules">Asked for only when the build waives anything.</param>
    /// <param name="problems">Where they are told.</param>
    /// <param name="canJudge">False where the build must not be judged to tell at which places a waiver would match.</param>
    public static void Refuse(Build build, Func<RuleSet> rules, ProblemList problems, bool canJudge = true)
    {
        foreach (var waiver in build.Waivers.Concat(build.EndedWaivers))
        {
            if (rules().Find(waiver.Rule) is not { } rule || rule.Subject.IsOfCatalog())
                continue;
            if (!rule.CanBeWaived)
                problems.Error(waiver.At,
                    $"`{rule.Id}` is never waived, so this build can't be judged with such a waiver: {rule.Why} Delete the waiver and "
                        + $"change the build: {rule.Advice}", ProblemKind.ForbiddenWaiver);
            else if (waiver.Position is null && rule.Subject != Subject.Build)
                problems.Error(waiver.At, Placeless(build, rule, canJudge ? rules() : null), ProblemKind.PlacelessWaiver);
        }
    }

    public static (List<Finding> Findings, IReadOnlyList<Problem> Remarks) Apply(Build build, List<Finding> findings, RuleSet rules)
    {
        var remarks = new ProblemList();
        foreach (var (rule, _, _, _, until) in build.EndedWaivers)
            remarks.Warn(until!.At,
                $"this waiver of `{rule}` held until {Day(until.Value)}, so the finding counts again: mend it, or agree on another day",
                ProblemKind.EndedWaiver);
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
                result[i] = f with { Waived = waiver.Reason, WaivedUntil = waiver.Until?.Value };
                matched = true;
            }
            if (!matched)
                remarks.Warn(waiver.At, Unmatched(waiver, findings, rules), ProblemKind.IdleWaiver);
        }
        return (result, remarks.Sorted());
    }

    private static string Day(DateOnly day) => day.ToString(WaiverReader.DayFormat, System.Globalization.CultureInfo.InvariantCulture);

    private static string Placeless(Build build, Rule rule, RuleSet? rules)
    {
        var told = $"`{rule.Id}` speaks of each {rule.Subject.Word()} by itself, so its waiver says where it holds";
        var places = rules is null ? [] : BuildEvaluation.Judged(build, rules).Findings
            .Where(f => f.Rule == rule.Id && f.Status != Status.Pass).Select(f => $"`{f.Position}`").Distinct().ToList();
        return places.Count == 0
            ? $"{told}: add `at` with the {rule.Subject.Word()} that was looked at{(rules is null ? "" : "; here it finds nothing wrong")}"
            : $"{told}: it would match at {string.Join(", ", places)}; write into `at` which of them "
                + $"{(places.Count == 1 ? "was" : "were")} looked at";
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
        var places = findings.Where(f => f.Rule == waiver.Rule).ToList();
        if (waiver.Position is { } place && places.Count > 0 && !places.Exists(f => f.Position == place))
            return $"nothing to waive: `{waiver.Rule}` does not apply{where}{Nearest.Hint(place, places.Select(f => f.Position))}";
        return places.Count > 0
            ? $"nothing to waive: `{waiver.Rule}` finds nothing wrong{where}"
            : $"nothing to waive: `{waiver.Rule}` does not apply{where}";
    }
}
