using FitCheck.Foundation;
using FitCheck.Fuzz;
using FitCheck.Page;

namespace FitCheck.Hostile;

/// <summary>Builds and sellers' lists that somebody opens at the page.</summary>
internal sealed class PageBatch(Seeds seeds) : IBatch
{
    private readonly PageEngine _engine = new(Checker.Open(new CheckerOptions { Cache = ValidationCache.InUserFolder() }).Checker!,
        PageVisits.Options);

    public int Run(Commands commands, int seed, int count)
    {
        var random = new Random(seed);
        var builds = new Shaker([.. seeds.Builds.Select(s => s.Bytes)], seed);
        var lists = seeds.Lists.Where(l => !l.Name.EndsWith(".xlsx", StringComparison.Ordinal)).ToList();
        var shaken = new Shaker([.. lists.Select(l => l.Bytes)], seed);
        var visits = new PageVisits(_engine, commands, random);
        for (var i = 0; i < count; i++)
        {
            if (random.Next(5) > 0)
            {
                // Most that are shaken are refused; of the others what the form carries is altered.
                visits.Opened(null, "build", $"b{i}.yaml",
                    random.Next(2) == 0 ? builds.Next() : seeds.Builds[random.Next(seeds.Builds.Count)].Bytes);
            }
            else
                visits.Opened(random.Next(9) == 0 ? null : "vehicle:tansy-hatch", "quote", $"l{i}.csv", shaken.Next());
        }
        // Else the page is another one than this knows its way about.
        commands.Hold(visits.Told is { Verdicts: var verdicts, Papers: var papers } && verdicts > count && papers > count / 20,
            $"verdicts and papers: {visits.Told}");
        return count;
    }
}
