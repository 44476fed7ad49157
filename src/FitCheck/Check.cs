using FitCheck.Builds;
using FitCheck.Evaluation;
using FitCheck.Foundation;
using FitCheck.Foundation.Problems;

namespace FitCheck;

/// <summary>What `check` found: a result, or the reasons why there is none.</summary>
public sealed record CheckOutcome(CheckResult? Result, IReadOnlyList<Problem> Problems);

/// <summary>The main job: builds are resolved against the catalog, facts are computed, rules judge them.</summary>
public static class Check
{
    /// <summary>Checks build files. Bad input comes back as problems, never as an exception.</summary>
    public static CheckOutcome Run(IReadOnlyList<string> files, Folders folders, Remembered remembered, Action<string>? progress = null)
    {
        var problems = new ProblemList();
        if (BuildFiles.Open(files, folders, remembered, problems, progress) is not var (workshop, builds))
            return new CheckOutcome(null, problems.Sorted());
        var results = new List<BuildResult>();
        foreach (var build in builds.Select(b => b.Build))
        {
            progress?.Invoke($"checking {build.File}");
            results.Add(BuildEvaluation.Judged(build, () => workshop.Rules));
        }
        return new CheckOutcome(new CheckResult(ProgramName.WithVersion, workshop.Catalog.Digest, results) { Rules = workshop.Rules.Help }, problems.Sorted());
    }
}
