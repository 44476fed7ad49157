using FitCheck.Catalog;
using FitCheck.Evaluation;
using FitCheck.Foundation.Problems;
using FitCheck.Schemas;

namespace FitCheck;

/// <summary>A checker that is open, or the reasons why none is.</summary>
public sealed class OpenOutcome
{
    private readonly CheckerOptions _options;
    private readonly PartsCatalog _catalog;

    internal OpenOutcome(Checker? checker, IReadOnlyList<Problem> problems, CheckerOptions options, PartsCatalog catalog) =>
        (Checker, Problems, _options, _catalog) = (checker, problems, options, catalog);

    /// <summary>The checker; null when catalogs or rules can't be used.</summary>
    public Checker? Checker { get; }

    /// <summary>
    /// What is wrong with catalogs and rules, in the order of files and lines. Beside a checker these are only warnings, such as a file
    /// that is not read.
    /// </summary>
    public IReadOnlyList<Problem> Problems { get; }

    /// <summary>
    /// The same, and what is wrong with some builds besides, so that everything is told at once. Of a catalog with a file that can't be
    /// read nothing more is told: what stands in it would be missed by every build.
    /// </summary>
    /// <param name="builds">Builds that were to be checked.</param>
    /// <exception cref="ArgumentException"><paramref name="builds"/> is null, empty or holds a null.</exception>
    public IReadOnlyList<Problem> ProblemsWith(IReadOnlyList<BuildSource> builds)
    {
        Arguments.Builds(builds, nameof(builds));
        if (Checker is null && Problems.Any(p => p.Kind == ProblemKind.Unreadable))
            return Problems;
        var (told, schemas) = (new ProblemList(), new Lazy<SchemaCheck>(() => new SchemaCheck()));
        foreach (var build in builds)
            BuildFiles.Read(build, _options.Catalogs, _catalog, _options.Cache, schemas, told);
        return With(told.All);
    }

    internal IReadOnlyList<Problem> With(IReadOnlyList<Problem> others)
    {
        if (Problems.Count == 0)
            return others;
        var all = new ProblemList();
        all.AddRange(Problems);
        all.AddRange(others);
        return all.Sorted();
    }
}
