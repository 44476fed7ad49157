using System.Globalization;
using FitCheck.Evaluation;

namespace FitCheck.Benchmarks;

/// <summary>
/// What one more check costs a checker that is open and warm: processor time of all threads, from the build's text to the result.
/// </summary>
internal static class WarmBenchmark
{
    private const int Warm = 400;
    private const int Together = 20;

    public static int Run(string[] args)
    {
        var runs = 40;
        var build = Built.Path("catalog", "builds", "front-rear-two-amps.yaml");
        for (var i = 1; i < args.Length; i++)
        {
            if (args[i] == "--runs" && i + 1 < args.Length
                && int.TryParse(args[i + 1], NumberStyles.None, CultureInfo.InvariantCulture, out var number) && number > 0)
                (runs, i) = (number, i + 1);
            else if (File.Exists(args[i]))
                build = args[i];
            else
                return Wrong.Usage("--warm [--runs N] [BUILD]");
        }
        if (Checker.Open(
            new CheckerOptions { Catalogs = [Built.Path("catalog")], Rules = [Built.Path("rules")] }).Checker is not { } checker)
            return Wrong.Usage("Catalog or rules can't be opened; `fitcheck lint` says why.");
        var source = BuildSource.Text("build.yaml", File.ReadAllText(build));
        for (var i = 0; i < Warm; i++)
            Check(checker, source);
        var costs = new List<double>();
        for (var i = 0; i < runs; i++)
        {
            var before = Environment.CpuUsage.TotalTime;
            for (var n = 0; n < Together; n++)
                Check(checker, source);
            costs.Add((Environment.CpuUsage.TotalTime - before).TotalMilliseconds / Together);
        }
        costs.Sort();
        Console.WriteLine(string.Create(CultureInfo.InvariantCulture,
            $"{costs[costs.Count / 2]:0.00} ms of processor time a check, median of {runs} times {Together}; "
            + $"{costs[costs.Count / 4]:0.00} to {costs[costs.Count * 3 / 4]:0.00} the middle half: "
            + $"{Path.GetFileName(build)}, text in, result out"));
        return 0;
    }

    private static void Check(Checker checker, BuildSource source)
    {
        if (checker.Check([source]).Result is null)
            throw new InvalidOperationException("the build can't be read");
    }
}
