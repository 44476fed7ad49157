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
