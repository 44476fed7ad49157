using FitCheck.Lists;
using FitCheck.Schemas;
using FitCheck.Yaml;

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
        if (Workshop.Open(folders, remembered, problems, progress) is not { } workshop)
            return new ListOutcome(null, problems.Sorted());
        var schemas = new Lazy<SchemaCheck>(() => new SchemaCheck());
        var lists = new List<PartsList>();
        foreach (var file in files)
        {
            progress?.Invoke($"listing {file}");
            if (BuildFiles.ReadWithRoot(file, workshop, remembered, schemas, problems) is var (build, root))
                lists.Add(AskedParts.Of(root, build, workshop.Catalog, workshop.Rules));
        }
        return problems.HasErrors
            ? new ListOutcome(null, problems.Sorted())
            : new ListOutcome(new ListResult(ProgramName.WithVersion, workshop.Catalog.Digest, tax, lists), problems.Sorted());
    }
}
