using FitCheck.Builds;
using FitCheck.Evaluation;
using FitCheck.Foundation;
using FitCheck.Foundation.Problems;

namespace FitCheck;

/// <summary>What `check` found: a result, or the reasons why there is none.</summary>
public sealed record CheckOutcome(CheckResult? Result, IReadOnlyList<Problem> Problems);

/// <summary>The main job: builds are resolved against the catalog, facts are computed, rules judge them.</summary>
internal static class Check
{
    /// <summary>Everything that is found of some builds.</summary>
    internal static CheckResult Of(IReadOnlyList<BuildFile> builds, ValidInputs valid, IProgress<string>? progress,
        CancellationToken cancel)
    {
        var results = new List<BuildResult>();
        foreach (var (build, _, _) in builds)
        {
            cancel.ThrowIfCancellationRequested();
            progress?.Report($"checking {build.File}");
            results.Add(BuildEvaluation.Judged(build, valid.Practice, () => valid.Rules));
        }
        return new CheckResult(ProgramName.WithVersion, valid.Catalog.Digest, results) { Rules = valid.Rules.Help };
    }

    /// <summary>The same of very many builds, each judged when it is asked for.</summary>
    internal static CheckResult InTurn(IReadOnlyList<Func<Build>> builds, ValidInputs valid, CancellationToken cancel) =>
        new(ProgramName.WithVersion, valid.Catalog.Digest, new ResultsInTurn(builds, valid, cancel)) { Rules = valid.Rules.Help };
}
