using FitCheck.Evaluation;
using FitCheck.Foundation;
using FitCheck.Foundation.Problems;
using FitCheck.Lists;

namespace FitCheck;

/// <summary>What `list` found: a result, or the reasons why there is none.</summary>
public sealed record ListOutcome(ListResult? Result, IReadOnlyList<Problem> Problems);

/// <summary>What to buy for builds, what it costs, and what the rules miss on the list.</summary>
internal static class ListParts
{
    /// <summary>Lists the parts of build files once: opens, lists and forgets. Who asks more than once keeps a <see cref="Checker"/> open.</summary>
    /// <exception cref="ArgumentException"><paramref name="files"/> is null, empty, or holds a path that is null or empty.</exception>
    public static ListOutcome Run(IReadOnlyList<string> files, Tax tax, Folders folders, ValidationCache cache, Action<string>? progress = null)
    {
        Arguments.Words(files, nameof(files));
        var (builds, told) = (BuildSource.Files(files), Telling.By(progress));
        var opened = Checker.Open(CheckerOptions.Of(folders, cache, told));
        if (opened.Checker is not { } checker)
            return new ListOutcome(null, opened.ProblemsWith(builds));
        var outcome = checker.List(builds, new ListOptions { Tax = tax, Progress = told });
        return outcome with { Problems = opened.With(outcome.Problems) };
    }

    /// <summary>The lists of some builds.</summary>
    internal static ListResult Of(IReadOnlyList<BuildFile> builds, ValidInputs valid, ListOptions options, CancellationToken cancel)
    {
        var lists = new List<PartsList>();
        foreach (var (build, root, _) in builds)
        {
            cancel.ThrowIfCancellationRequested();
            options.Progress?.Report($"listing {build.File}");
            lists.Add(AskedParts.Of(root, build, valid.Catalog, valid.Rules, cancel));
        }
        return new ListResult(ProgramName.WithVersion, valid.Catalog.Digest, options.Tax, lists);
    }
}
