using FitCheck.Evaluation;
using FitCheck.Foundation;
using FitCheck.Foundation.Problems;
using FitCheck.Lists;

namespace FitCheck;

/// <summary>What `list` found: a result, or the reasons why there is none.</summary>
public sealed record ListOutcome(ListResult? Result, IReadOnlyList<Problem> Problems);

/// <summary>What to buy for builds, what it costs, and what the rules miss on the list.</summary>
public static class ListParts
{
    /// <summary>Lists the parts of build files. Bad input comes back as problems, never as an exception.</summary>
    public static ListOutcome Run(IReadOnlyList<string> files, Tax tax, Folders folders, Remembered remembered, Action<string>? progress = null)
    {
        var problems = new ProblemList();
        if (BuildFiles.Open(files, folders, remembered, problems, progress) is not var (workshop, builds))
            return new ListOutcome(null, problems.Sorted());
        var lists = new List<PartsList>();
        foreach (var (build, root, _) in builds)
        {
            progress?.Invoke($"listing {build.File}");
            lists.Add(AskedParts.Of(root, build, workshop.Catalog, workshop.Rules));
        }
        return new ListOutcome(new ListResult(ProgramName.WithVersion, workshop.Catalog.Digest, tax, lists), problems.Sorted());
    }
}
