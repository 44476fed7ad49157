using FitCheck.Catalog;
using FitCheck.Charts;
using FitCheck.Findings;
using FitCheck.Rules;
using FitCheck.Yaml;

namespace FitCheck;

/// <summary>What `chart` found: a result, or the reasons why there is none.</summary>
public sealed record ChartOutcome(ChartResult? Result, IReadOnlyList<Problem> Problems);

/// <summary>Which drivers fit which positions: every pair is judged on every mounting that the catalog has for it, by the rules that need no build.</summary>
public static class Chart
{
    /// <summary>Works out the chart or a slice of it. Bad input comes back as problems, never as an exception.</summary>
    public static ChartOutcome Run(ChartSlice slice, Folders folders, Remembered remembered, Action<string>? progress = null)
    {
        var problems = new ProblemList();
        if (Workshop.Open(folders, remembered, problems, progress) is not { } workshop)
            return new ChartOutcome(null, problems.Sorted());
        var result = Of(workshop.Catalog, workshop.Rules, slice, problems);
        return problems.HasErrors ? new ChartOutcome(null, problems.All) : new ChartOutcome(result, problems.Sorted());
    }

    /// <summary>The chart of a catalog that is known to be valid.</summary>
    internal static ChartResult? Of(PartsCatalog catalog, RuleSet ruleSet, ChartSlice slice, ProblemList problems)
    {
        var places = slice.PlacesIn(catalog, problems);
        var drivers = slice.DriversIn(catalog, problems);
        if (problems.HasErrors)
            return null;
        var rules = PairRules.Of(ruleSet);
        var accepts = (slice.Accepts ?? ChartSlice.Work).ToHashSet(StringComparer.Ordinal);
        var mounts = new Mounts(catalog);
        var found = new PairFinder(rules, accepts, places, drivers, mounts).Find();

        var maker = new RowMaker(places, drivers, found, new PairJudge(rules, accepts), ruleSet, catalog);
        var suited = maker.Suited(slice.AnyType);
        var asked = suited.Where(i => slice.Asks(found[i].Outcome.Status)).ToArray();
        var rows = new ChartRow[asked.Length];
        Parallel.For(0, rows.Length, i => rows[i] = maker.Row(asked[i]));
        return new ChartResult
        {
            Program = ProgramName.WithVersion,
            CatalogDigest = catalog.Digest,
            Accepts = [.. accepts.Order(StringComparer.Ordinal)],
            Rules = [.. rules.Judged.Select(r => r.Id)],
            LeftOut = rules.LeftOut,
            Rows = rows,
            Sets = [.. SetRows.Of(maker, suited).Where(s => slice.Asks(s.Status))],
            Counts = [.. Enum.GetValues<Status>().Select(s => suited.Count(i => found[i].Outcome.Status == s))],
            OfAnotherType = found.Length - suited.Count,
        };
    }
}
