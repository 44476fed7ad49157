using System.Diagnostics;
using System.Globalization;
using System.Text;
using FitCheck.Catalog;
using FitCheck.Charts;
using FitCheck.Charts.BestMount;
using FitCheck.Charts.Pairs;
using FitCheck.Facts;
using FitCheck.Foundation.Problems;
using FitCheck.Rules;

namespace FitCheck.Benchmarks;

/// <summary>
/// How many pairs of a driver and a position are charted in a second, on the repository's catalog and on a larger one made from it.
/// </summary>
internal static class ChartSpeed
{
    public static int Run(int copies)
    {
        var problems = new ProblemList();
        var rules = PairRules.Of(RuleSet.Load([Built.Path("rules")], FactRegistry.Declarations, problems));
        Measure("this catalog", PartsCatalog.Open([Built.Path("catalog")], problems), rules);
        if (copies < 2)
            return 0;
        var large = Directory.CreateTempSubdirectory("fitcheck-chart-");
        try
        {
            Copy(large.FullName, copies);
            Measure($"{copies} times as many entries, each with its own figures", PartsCatalog.Open([large.FullName], problems), rules);
        }
        finally
        {
            large.Delete(recursive: true);
        }
        foreach (var problem in problems.Sorted())
            Console.Error.WriteLine(problem);
        return 0;
    }

    /// <summary>The same on a catalog that is there.</summary>
    public static int Run(string catalog)
    {
        var problems = new ProblemList();
        var rules = PairRules.Of(RuleSet.Load([Built.Path("rules")], FactRegistry.Declarations, problems));
        Measure(catalog, PartsCatalog.Open([catalog], problems), rules);
        foreach (var problem in problems.Sorted())
            Console.Error.WriteLine(problem);
        return 0;
    }

    private static void Measure(string what, PartsCatalog catalog, PairRules rules)
    {
        var mounts = new Mounts(catalog);
        var drivers = catalog.IdsOf("driver").Select(catalog.Find).OfType<Driver>().ToList();
        var places = catalog.IdsOf("vehicle").Select(catalog.Find).OfType<Vehicle>().SelectMany(v => v.Positions.Select(p => (v, p)))
            .ToList();
        var accepts = ChartSlice.Work.ToHashSet(StringComparer.Ordinal);
        // As a program that is started meets it, then warm: the best of several, since the machine has other work too.
        var first = Cost(() => new PairFinder(rules, accepts, places, mounts).Find(drivers));
        var best = (Wall: double.MaxValue, Processor: double.MaxValue);
        for (var i = 0; i < 5; i++)
        {
            var (wall, processor) = Cost(() => new PairFinder(rules, accepts, places, mounts).Find(drivers));
            best = (Math.Min(best.Wall, wall), Math.Min(best.Processor, processor));
        }
        double pairs = drivers.Count * places.Count;
        var mountings = drivers.CountBy(d => d.IsTweeter)
            .Sum(kind => places.Sum(p => (double)kind.Value * mounts.For(p.v, p.p, kind.Key).Count));
        Console.WriteLine(
            string.Create(CultureInfo.InvariantCulture,
                $"{what}: {drivers.Count} drivers at {places.Count} positions, {pairs:0} pairs, {mountings:0} with every mounting"));
        Tell("first run", first, pairs);
        Tell("best of 5", best, pairs);
        var judge = new PairJudge(rules, accepts);
        var found = new PairFinder(rules, accepts, places, mounts).Find(drivers);
        var random = new Random(1);
        const int some = 200;
        var same = 0;
        Tell("one by one, by the classes of facts and the judge of check", Cost(() =>
        {
            for (var n = 0; n < some; n++)
            {
                var i = random.Next(found.Length);
                var (place, driver) = (places[i / drivers.Count], drivers[i % drivers.Count]);
                var on = mounts.For(place.v, place.p, driver.IsTweeter);
                var (best, outcome) = judge.Best([.. on.Select(m => new Pair(place.v, place.p, driver, m))]);
                same += found[i] == (on[best], outcome) ? 1 : 0;
            }
        }), some);
        Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"  {same} of these {some} are as they were found in bulk"));
    }

    // The time of the processors tells what it costs; the time on the clock what a busy machine made of it.
    private static (double Wall, double Processor) Cost(Action action)
    {
        using var process = Process.GetCurrentProcess();
        var before = process.TotalProcessorTime;
        var watch = Stopwatch.StartNew();
        action();
        var wall = watch.Elapsed.TotalSeconds;
        process.Refresh();
        return (wall, (process.TotalProcessorTime - before).TotalSeconds);
    }

    private static void Tell(string what, (double Wall, double Processor) cost, double pairs) =>
        Console.WriteLine(string.Create(CultureInfo.InvariantCulture,
            $"  {what}: {cost.Wall * 1e3:0.0} ms, {pairs / cost.Wall:0} pairs/s; "
            + $"{cost.Processor / pairs * 1e6:0.00} µs of a processor for each pair"));

    // Every entry again and again under another id; lengths differ by up to 3 %, so that no two stack up alike. Spacers follow the vehicle
    // of their copy.
    private static void Copy(string folder, int copies)
    {
        var random = new Random(1);
        foreach (var kind in new[] { "drivers", "adapters", "cups", "vehicles", "sources" })
        {
            Directory.CreateDirectory(Path.Combine(folder, kind));
            foreach (var path in Directory.GetFiles(Built.Path("catalog", kind), "*.yaml").Order(StringComparer.Ordinal))
            {
                var text = File.ReadAllText(path);
                var id = Path.GetFileNameWithoutExtension(path);
                // A trade with more vehicles has more spacers for one vehicle each, and hardly more that are universal.
                var times = kind == "sources" || (kind is "adapters" or "cups" && !text.Contains("{vehicle: ", StringComparison.Ordinal))
                    ? 1 : copies;
                for (var i = 0; i < times; i++)
                {
                    var copy = Changed(text, id, i, random);
                    File.WriteAllText(Path.Combine(folder, kind, i == 0 ? $"{id}.yaml" : $"{id}-{i}.yaml"), copy);
                }
            }
        }
    }

    private static string Changed(string text, string id, int copy, Random random)
    {
        if (copy == 0)
            return text;
        var changed = new StringBuilder();
        foreach (var line in text.Split('\n'))
        {
            var told = line == $"id: {id}" ? $"id: {id}-{copy}"
                : line.Contains("{vehicle: ", StringComparison.Ordinal)
                ? System.Text.RegularExpressions.Regex.Replace(line, @"\{vehicle: ([a-z0-9-]+)", $"{{vehicle: $1-{copy}")
                : System.Text.RegularExpressions.Regex.Replace(line, @"(?<=[ \[])(\d+(?:\.\d+)?) mm\b",
                m => (double.Parse(m.Groups[1].Value, CultureInfo.InvariantCulture) * (0.97 + (0.06 * random.NextDouble()))).ToString(
                    "0.0", CultureInfo.InvariantCulture) + " mm");
            changed.Append(told).Append('\n');
        }
        return changed.ToString();
    }
}
