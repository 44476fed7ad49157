using FitCheck.Catalog;
using FitCheck.Charts.BestMount;
using FitCheck.Charts.Pairs;
using FitCheck.Facts.Fitting;
using FitCheck.Findings;
using FitCheck.Foundation;
using FitCheck.Foundation.Problems;
using FitCheck.Rules;

namespace FitCheck.Charts;

/// <summary>Every driver at every position of a slice of the catalog, each on its best mounting, as rows that a report tells.</summary>
internal static class PairChart
{
    /// <summary>The chart of a catalog that is known to be valid.</summary>
    /// <param name="catalog">What there is.</param>
    /// <param name="ruleSet">What judges.</param>
    /// <param name="slice">What is asked for.</param>
    /// <param name="problems">Where words of the slice are told that name nothing.</param>
    /// <param name="progress">Told how far it has come; null for nobody.</param>
    /// <param name="most">How many rows keep all that is told of them; more are judged again when they are told.</param>
    /// <param name="sieved">False to judge also what a cheaper part does alike: the answer is the same, later.</param>
    /// <param name="cancel">Looked at between two entries that are read, two drivers, and two rows.</param>
    public static ChartResult? Of(PartsCatalog catalog, RuleSet ruleSet, ChartSlice slice, ProblemList problems,
        IProgress<string>? progress = null, int most = RowMaker.Few, bool sieved = true, CancellationToken cancel = default)
    {
        var places = slice.PlacesIn(catalog, problems);
        var drivers = slice.DriversIn(catalog, problems);
        if (problems.HasErrors)
            return null;
        var rules = PairRules.Of(ruleSet);
        var accepts = (slice.Accepts ?? ChartSlice.Work).ToHashSet(StringComparer.Ordinal);
        var finder = new PairFinder(rules, accepts, places, new Mounts(catalog, places, cancel), sieved);
        var maker = new RowMaker(places, drivers, new PairJudge(rules, accepts), ruleSet, catalog);
        foreach (var some in drivers.Chunk(ChartSlice.AtOnce))
        {
            progress?.Report($"charting: {maker.Found} of {drivers.Count} drivers");
            IReadOnlyList<Driver> read = [.. catalog.InPassing(some, cancel).OfType<Driver>()];
            maker.Add(read, finder.Find(read, slice.AnyType ? null : Suits, cancel));
        }

        var suited = maker.Suited(slice.AnyType);
        var asked = suited.Where(i => slice.Asks(maker.Status(i))).ToArray();
        var (rows, made) = (new ChartRow[asked.Length], 0);
        Parallel.For(0, rows.Length, new ParallelOptions { CancellationToken = cancel }, i =>
        {
            rows[i] = maker.Row(asked[i], isKept: rows.Length <= most);
            if (Interlocked.Increment(ref made) % 256 == 0)
                progress?.Report($"telling what fits: {made} of {rows.Length} pairs");
        });
        return new ChartResult
        {
            Program = ProgramName.WithVersion,
            CatalogDigest = catalog.Digest,
            Accepts = [.. accepts.Order(StringComparer.Ordinal)],
            Rules = [.. rules.Judged.Select(r => r.Id)],
            LeftOut = rules.LeftOut,
            Rows = rows,
            Sets = [.. SetRows.Of(maker, suited, slice.Asks)],
            Counts = [.. Enum.GetValues<Status>().Select(s => suited.Count(i => maker.Status(i) == s))],
            OfAnotherType = (places.Count * drivers.Count) - suited.Count,
        };
    }

    /// <summary>By position and driver, what carries it best there; nothing where that is the panel itself, or a driver does not belong
    /// there.</summary>
    /// <param name="catalog">What there is.</param>
    /// <param name="ruleSet">What judges.</param>
    /// <param name="places">Positions of one vehicle.</param>
    /// <param name="drivers">The drivers.</param>
    /// <param name="accepts">Work that is accepted; other words than those of the chart are passed over.</param>
    /// <param name="cancel">Looked at between two entries that are read and between two drivers.</param>
    public static IReadOnlyDictionary<(string Position, string Driver), Part> BestMounts(PartsCatalog catalog, RuleSet ruleSet,
        IReadOnlyList<(Vehicle Vehicle, Position Position)> places, IReadOnlyList<Driver> drivers, IEnumerable<string> accepts,
        CancellationToken cancel)
    {
        var best = new Dictionary<(string, string), Part>();
        if (places.Count == 0 || drivers.Count == 0)
            return best;
        var work = accepts.Where(ChartSlice.Work.Contains).ToHashSet(StringComparer.Ordinal);
        var finder = new PairFinder(PairRules.Of(ruleSet), work, places, new Mounts(catalog, places, cancel));
        var found = finder.Find(drivers, Suits, cancel);
        for (var i = 0; i < found.Length; i++)
        {
            var (position, driver) = (places[i / drivers.Count].Position, drivers[i % drivers.Count]);
            if (found[i].Mount is { } mount && Suits(driver, position))
                best[(position.Id, driver.Id)] = mount;
        }
        return best;
    }

    private static bool Suits(Driver driver, Position at) => PlaceFacts.Suits(driver.Type, at.Role);
}
