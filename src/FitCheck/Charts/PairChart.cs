using FitCheck.Catalog;
using FitCheck.Charts.BestMount;
using FitCheck.Charts.Pairs;
using FitCheck.Findings;
using FitCheck.Foundation;
using FitCheck.Foundation.Problems;
using FitCheck.Rules;

namespace FitCheck.Charts;

/// <summary>Every driver at every position of a slice of the catalog, each on its best mounting, as rows that a report tells.</summary>
internal static class PairChart
{
    /// <summary>The chart of a catalog that is known to be valid.</summary>
    public static ChartResult? Of(PartsCatalog catalog, RuleSet ruleSet, ChartSlice slice, ProblemList problems,
        CancellationToken cancel = default)
    {
        var places = slice.PlacesIn(catalog, problems);
        var drivers = slice.DriversIn(catalog, problems);
        if (problems.HasErrors)
            return null;
        var rules = PairRules.Of(ruleSet);
        var accepts = (slice.Accepts ?? ChartSlice.Work).ToHashSet(StringComparer.Ordinal);
        var mounts = new Mounts(catalog);
        var found = new PairFinder(rules, accepts, places, drivers, mounts).Find(cancel);

        var maker = new RowMaker(places, drivers, found, new PairJudge(rules, accepts), ruleSet, catalog);
        var suited = maker.Suited(slice.AnyType);
        var asked = suited.Where(i => slice.Asks(found[i].Outcome.Status)).ToArray();
        var rows = new ChartRow[asked.Length];
        Parallel.For(0, rows.Length, new ParallelOptions { CancellationToken = cancel }, i => rows[i] = maker.Row(asked[i]));
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
