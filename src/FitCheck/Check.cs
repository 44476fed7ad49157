using FitCheck.Evaluation;
using FitCheck.Foundation;
using FitCheck.Foundation.Problems;

namespace FitCheck;

/// <summary>What `check` found: a result, or the reasons why there is none.</summary>
public sealed record CheckOutcome(CheckResult? Result, IReadOnlyList<Problem> Problems);

/// <summary>The main job: builds are resolved against the catalog, facts are computed, rules judge them.</summary>
internal static class Check
{
    /// <summary>Checks build files once: opens, checks and forgets. Who checks more than once keeps a <see cref="Checker"/> open.</summary>
    /// <exception cref="ArgumentException"><paramref name="files"/> is null, empty, or holds a path that is null or empty.</exception>
    public static CheckOutcome Run(IReadOnlyList<string> files, Folders folders, ValidationCache cache, Action<string>? progress = null)
    {
        Arguments.Words(files, nameof(files));
        var (builds, told) = (BuildSource.Files(files), Telling.By(progress));
        var opened = Checker.Open(CheckerOptions.Of(folders, cache, told));
        if (opened.Checker is not { } checker)
            return new CheckOutcome(null, opened.ProblemsWith(builds));
        var outcome = checker.Check(builds, new CheckOptions { Progress = told });
        return outcome with { Problems = opened.With(outcome.Problems) };
    }

    /// <summary>Everything that is found of some builds.</summary>
    internal static CheckResult Of(IReadOnlyList<BuildFile> builds, ValidInputs valid, IProgress<string>? progress, CancellationToken cancel)
    {
        var results = new List<BuildResult>();
        foreach (var (build, _, _) in builds)
        {
            cancel.ThrowIfCancellationRequested();
            progress?.Report($"checking {build.File}");
            results.Add(BuildEvaluation.Judged(build, () => valid.Rules));
        }
        return new CheckResult(ProgramName.WithVersion, valid.Catalog.Digest, results) { Rules = valid.Rules.Help };
    }
}
