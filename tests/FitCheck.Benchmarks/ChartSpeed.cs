using System.Diagnostics;
using System.Globalization;
using System.Text;
using FitCheck;
using FitCheck.Catalog;
using FitCheck.Charts;
using FitCheck.Facts;
using FitCheck.Rules;
using FitCheck.Yaml;

namespace FitCheck.Benchmarks;

/// <summary>How many pairs of a driver and a position are charted in a second, on the repository's catalog and on a larger one made from it.</summary>
internal static class ChartSpeed
{
    public static int Run(int copies)
    {
        var problems = new ProblemList();
        var rules = PairRules.Of(RuleSet.Load([Built.Path("rules")], FactRegistry.Declarations, problems));
        Measure("this catalog", PartsCatalog.Open([Built.Path("catalog")], problems), rules);
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

    private static void Measure(string what, PartsCatalog catalog, PairRules rules)
    {
        var mounts = new Mounts(catalog);
        var drivers = catalog.IdsOf("driver").Select(catalog.Find).OfType<Driver>().ToList();
        var places = catalog.IdsOf("vehicle").Select(catalog.Find).OfType<Vehicle>().SelectMany(v => v.Positions.Select(p => (v, p))).ToList();
        var accepts = ChartSlice.Work.ToHashSet(StringComparer.Ordinal);
        // As a program that is started meets it, then warm: the fastest of several, since the machine has other work too.
        var first = Seconds(() => new PairFinder(rules, accepts, places, drivers, mounts).Find());
        var best = double.MaxValue;
        for (var i = 0; i < 5; i++)
            best = Math.Min(best, Seconds(() => new PairFinder(rules, accepts, places, drivers, mounts).Find()));
        double pairs = drivers.Count * places.Count;
        var mountings = drivers.Sum(d => places.Sum(p => (double)mounts.For(p.v, p.p, d.IsTweeter).Count));
        Console.WriteLine(string.Create(CultureInfo.InvariantCulture,
            $"{what}: {drivers.Count} drivers at {places.Count} positions, {pairs:0} pairs, {mountings:0} with every mounting; first run {first * 1e3:0.0} ms ({pairs / first / 1e6:0.000} million pairs/s), best of 5 {best * 1e3:0.0} ms ({pairs / best / 1e6:0.000} million pairs/s, {mountings / best / 1e6:0.00} million mountings/s)"));
        var judge = new PairJudge(rules, accepts);
        var random = new Random(1);
        var watch = Stopwatch.StartNew();
        var slow = 0;
        for (; watch.ElapsedMilliseconds < 2000; slow++)
        {
            var (place, driver) = (places[random.Next(places.Count)], drivers[random.Next(drivers.Count)]);
            judge.Best([.. mounts.For(place.v, place.p, driver.IsTweeter).Select(m => new Pair(place.v, place.p, driver, m))]);
        }
        Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"  one by one, by the classes of facts and the judge of check, on one thread: {slow / watch.Elapsed.TotalSeconds:0} pairs/s"));
    }

    private static double Seconds(Action action)
    {
        var watch = Stopwatch.StartNew();
        action();
        return watch.Elapsed.TotalSeconds;
    }

    // Every entry again and again under another id; lengths differ by up to 3 %, so that no two stack up alike. Spacers follow the vehicle of their copy.
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
                for (var i = 0; i < copies; i++)
                {
                    var copy = kind == "sources" && i > 0 ? null : Changed(text, id, i, random);
                    if (copy is not null)
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
                : line.Contains("{vehicle: ", StringComparison.Ordinal) ? System.Text.RegularExpressions.Regex.Replace(line, @"\{vehicle: ([a-z0-9-]+)", $"{{vehicle: $1-{copy}")
                : System.Text.RegularExpressions.Regex.Replace(line, @"(?<=[ \[])(\d+(?:\.\d+)?) mm\b", m => (double.Parse(m.Groups[1].Value, CultureInfo.InvariantCulture) * (0.97 + (0.06 * random.NextDouble()))).ToString("0.0", CultureInfo.InvariantCulture) + " mm");
            changed.Append(told).Append('\n');
        }
        return changed.ToString();
    }
}
