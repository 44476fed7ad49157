using FitCheck.Charts;
using FitCheck.Evaluation;
using FitCheck.Foundation;
using FitCheck.Foundation.Problems;

namespace FitCheck;

/// <summary>What `chart` found: a result, or the reasons why there is none.</summary>
public sealed record ChartOutcome(ChartResult? Result, IReadOnlyList<Problem> Problems);

/// <summary>Which drivers fit which positions: every pair is judged on every mounting that the catalog has for it, by the rules that need no build.</summary>
public static class Chart
{
    /// <summary>Works out the chart or a slice of it once: opens, charts and forgets. Who asks more than once keeps a <see cref="Checker"/> open.</summary>
    public static ChartOutcome Run(ChartSlice slice, Folders folders, Remembered remembered, Action<string>? progress = null)
    {
        var told = Telling.By(progress);
        var opened = Checker.Open(CheckerOptions.Of(folders, remembered, told));
        if (opened.Checker is not { } checker)
            return new ChartOutcome(null, opened.Problems);
        var outcome = checker.Chart(new ChartOptions { Slice = slice, Progress = told });
        return outcome with { Problems = outcome.Result is null ? outcome.Problems : opened.With(outcome.Problems) };
    }

    /// <summary>The chart of a catalog that is known to be valid.</summary>
    internal static ChartResult? Of(PartsCatalog catalog, RuleSet ruleSet, ChartSlice slice, ProblemList problems, CancellationToken cancel = default)
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
