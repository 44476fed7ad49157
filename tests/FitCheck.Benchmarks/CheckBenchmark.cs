using System.Globalization;

namespace FitCheck.Benchmarks;

/// <summary>
/// How long a check takes from start to end, beside an empty program: the runs of the two are interleaved, so that a busy machine slows
/// both alike.
/// </summary>
internal static class CheckBenchmark
{
    public static int Run(string[] args)
    {
        var cold = false;
        var runs = 40;
        var builds = new List<string>();
        for (var i = 0; i < args.Length; i++)
        {
            if (args[i] == "--cold")
                cold = true;
            else if (args[i] == "--runs" && i + 1 < args.Length
                && int.TryParse(args[i + 1], NumberStyles.None, CultureInfo.InvariantCulture, out var number) && number > 0)
                (runs, i) = (number, i + 1);
            else if (args[i].StartsWith('-'))
                return Wrong.Usage($"`{args[i]}` is no option here: --cold, --runs N, and builds.");
            else
                builds.Add(args[i]);
        }
        if (builds.Count == 0)
            builds.Add(Built.Path("catalog", "builds", "front-rear-two-amps.yaml"));
        if (builds.Find(b => !File.Exists(b)) is { } missing)
            return Wrong.Usage($"There is no {missing}.");

        var cache = Directory.CreateTempSubdirectory("fitcheck-benchmark-");
        try
        {
            var empty = new Timed("an empty .NET program", Built.Program("tests", "FitCheck.EmptyProgram"), []);
            var check = new Timed($"fitcheck check {string.Join(' ', builds.Select(Path.GetFileName))}",
                Built.Program("src", "FitCheck.Cli", "fitcheck"), ["check", .. builds])
            {
                CacheFolder = cache.FullName,
                ForgetFirst = cold,
            };
            // Not counted: files into the system's cache, and a warm cache of the program's own.
            empty.Run();
            check.Run();
            empty.Clear();
            check.Clear();
            for (var i = 0; i < runs; i++)
            {
                empty.Run();
                check.Run();
            }
            Console.WriteLine($"{runs} runs each, {(cold ? "without" : "with")} what earlier runs remember");
            Console.WriteLine(empty.Line());
            Console.WriteLine(check.Line());
            Console.WriteLine(string.Create(CultureInfo.InvariantCulture, $"ratio of the medians {check.Median / empty.Median:0.00}"));
            return 0;
        }
        finally
        {
            cache.Delete(recursive: true);
        }
    }
}
