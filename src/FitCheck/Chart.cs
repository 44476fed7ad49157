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
        var judge = new PairJudge(rules, accepts);
        var mounts = new Mounts(catalog);
        var sets = catalog.IdsOf("component-set").Select(catalog.Find).OfType<ComponentSet>().ToList();
        var soldIn = SoldIn(sets);

        var pairs = new ChartRow[places.Count * drivers.Count];
        Parallel.For(0, pairs.Length, i =>
        {
            var ((vehicle, position), driver) = (places[i / drivers.Count], drivers[i % drivers.Count]);
            var mountings = mounts.For(vehicle, position, driver.IsTweeter).Select(m => new Pair(vehicle, position, driver, m)).ToList();
            var (best, outcome) = judge.Best(mountings);
            pairs[i] = Row(mountings[best], outcome.Status, judge, ruleSet, soldIn);
        });
        return new ChartResult
        {
            Program = ProgramName.WithVersion,
            CatalogDigest = catalog.Digest,
            Accepts = [.. accepts.Order(StringComparer.Ordinal)],
            Rules = [.. rules.Judged.Select(r => r.Id)],
            LeftOut = rules.LeftOut,
            Rows = [.. pairs.Where(r => slice.Asks(r.Status))],
            Sets = [.. SetRows.Of(sets, pairs).Where(s => slice.Asks(s.Status))],
            Counts = [.. Enum.GetValues<Status>().Select(s => pairs.Count(r => r.Status == s))],
        };
    }

    private static ChartRow Row(Pair pair, Status status, PairJudge judge, RuleSet rules, Dictionary<string, List<string>> soldIn)
    {
        var findings = judge.Findings(pair);
        return new ChartRow
        {
            Vehicle = pair.Vehicle,
            Position = pair.Position,
            Driver = pair.Driver,
            Sets = soldIn.GetValueOrDefault(pair.Driver.Id) ?? [],
            Mount = pair.Mount,
            Status = status,
            Findings = findings,
            Work = [.. findings.Where(f => f.Status == Status.Warn && PairRules.TellsOfWork(rules.Find(f.Rule)!))],
        };
    }

    private static Dictionary<string, List<string>> SoldIn(IEnumerable<ComponentSet> sets)
    {
        var soldIn = new Dictionary<string, List<string>>(StringComparer.Ordinal);
        foreach (var set in sets)
        {
            foreach (var member in new[] { set.Woofer, set.Tweeter }.OfType<Located<string>>())
                (soldIn.TryGetValue(member.Value, out var known) ? known : soldIn[member.Value] = []).Add(set.Id);
        }
        return soldIn;
    }
}
