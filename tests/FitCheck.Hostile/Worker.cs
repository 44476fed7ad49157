using System.Diagnostics;

namespace FitCheck.Hostile;

/// <summary>
/// Runs some batches and tells of each on a line of standard output: what comes between belongs to the commands. A batch depends on the
/// seed and its number alone; the folder of one in which something did not hold is kept.
/// </summary>
internal static class Worker
{
    public const string Mark = "@@ ";

    // Most are of what strangers send most; states and visits take ten times as long as a build.
    private static readonly string[] Sorts =
    [
        "build", "entry", "impact", "rule", "build", "table", "page", "build", "entry", "rule", "build", "entry",
        "build", "rule", "build", "entry", "table", "build", "rule", "build", "entry", "build", "rule", "build",
    ];

    /// <summary>The sort of a batch.</summary>
    public static string Sort(int number) => Sorts[number % Sorts.Length];

    public static int Run(int seed, int from, int to, int size, string folder)
    {
        var seeds = new Seeds();
        var batches = new Dictionary<string, IBatch>(StringComparer.Ordinal);
        using var commands = new Commands();
        for (var number = from; number < to; number++)
        {
            var place = Path.Combine(folder, $"batch-{number}");
            Directory.CreateDirectory(place);
            Environment.CurrentDirectory = place;
            Tell($"begin {number}");
            var (before, sort, begun) = (commands.Count, Sort(number), Stopwatch.GetTimestamp());
            if (!batches.TryGetValue(sort, out var batch))
                batches[sort] = batch = Of(sort, seeds);
            try
            {
                var inputs = batch.Run(commands, unchecked((seed * 1_000_003) + number), size);
                var took = (int)Stopwatch.GetElapsedTime(begun).TotalMilliseconds;
                Tell($"end {number} {inputs} {commands.Count - before} {commands.Longest} {took}");
                Environment.CurrentDirectory = folder;
                Directory.Delete(place, recursive: true);
            }
            catch (BrokenException e)
            {
                Tell($"broken {number} {e.Message.ReplaceLineEndings(" | ")}");
            }
        }
        return 0;
    }

    private static IBatch Of(string sort, Seeds seeds) => sort switch
    {
        "build" => new BuildBatch(seeds),
        "entry" => new EntryBatch(seeds),
        "rule" => new RuleBatch(seeds),
        "impact" => new ImpactBatch(seeds),
        "page" => new PageBatch(seeds),
        _ => new TableBatch(seeds),
    };

    private static void Tell(string line)
    {
        Console.Out.WriteLine("\n" + Mark + line);
        Console.Out.Flush();
    }
}
