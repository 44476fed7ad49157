using FitCheck.Builds;
using FitCheck.Findings;
using FitCheck.Foundation.Problems;

namespace FitCheck.Evaluation;

/// <summary>
/// Holds what was found of a build to what it is meant to give: its verdict, and all findings of that status. Nothing of the report hangs
/// on it.
/// </summary>
internal static class Expectations
{
    /// <summary>Every difference with its line; empty where the build gives what is meant, or does not say what that is.</summary>
    /// <param name="build">What was found.</param>
    /// <param name="rules">Ids of all rules, for the right spelling.</param>
    public static IReadOnlyList<Problem> Unmet(BuildResult build, IReadOnlyList<string> rules)
    {
        if (build.Expected is not { } expected)
            return [];
        var verdict = StatusWords.Parse(expected.Verdict.Value)!.Value;
        var counted = build.Findings.Where(f => f.Waived is null && f.Status != Status.Pass).ToList();
        var differences = new List<Problem>();
        if (build.Verdict != verdict)
            differences.Add(Difference(expected.Verdict.At, $"meant to give {verdict.Word()}, and gives {build.Verdict.Word()}"));
        differences.AddRange((expected.Findings ?? []).Where(e => !counted.Exists(f => f.Status == verdict && IsMeant(e, f)))
            .Select(e => Difference(e.At, Missing(e, verdict, build, rules))));
        // What is worse than the verdict is never meant; what is as bad is, where it is listed or nothing is.
        differences.AddRange(counted.Where(f => f.Status > verdict
                || (f.Status == verdict && expected.Findings is { } meant && !meant.Any(e => IsMeant(e, f))))
            .Select(f => Difference(f.At, $"not meant: {f.Status.Word()} `{f.Rule}` at `{f.Position}`: {f.Message}")));
        return [.. differences.OrderBy(d => d.At).ThenBy(d => d.Message, StringComparer.Ordinal)];
    }

    private static bool IsMeant(ExpectedFinding expected, Finding found) =>
        expected.Rule == found.Rule && (expected.Place is null || expected.Place == found.Position);

    private static string Missing(ExpectedFinding expected, Status verdict, BuildResult build, IReadOnlyList<string> rules)
    {
        var where = expected.Place is { } place ? $" at `{place}`" : "";
        if (!rules.Contains(expected.Rule, StringComparer.Ordinal))
            return $"no rule `{expected.Rule}` of builds{Nearest.Hint(expected.Rule, rules)}";
        var found = build.Findings.Where(f => IsMeant(expected, f)).OrderByDescending(f => f.Status).FirstOrDefault();
        var instead = found is null ? "it does not apply" : found.Waived is not null ? "it is waived" : $"it says {found.Status.Word()}";
        return $"meant to {(verdict == Status.Measure ? "wait for a measurement" : verdict.Word())} by `{expected.Rule}`{where}, "
            + $"and {instead}";
    }

    private static Problem Difference(Location at, string message) =>
        new(at, Severity.Error, message) { Kind = ProblemKind.UnmetExpectation };
}
