using System.Diagnostics;
using System.Globalization;
using System.Text;
using System.Text.Json;
using FitCheck.Benchmarks.Synthetic;

namespace FitCheck.Benchmarks;

/// <summary>
/// How long a person waits for `suggest`: each reference build that fails, with the project's catalog among 50,000 invented parts, as a
/// process of its own that tells a terminal how far it is. Counted from the start of the process.
/// </summary>
internal static class SuggestBenchmark
{
    private const int Parts = 50_000;

    public static int Run(string[] args)
    {
        var seconds = 60;
        if (args.Length > 2 || (args.Length == 2 && !int.TryParse(args[1], NumberStyles.None, CultureInfo.InvariantCulture, out seconds)))
            return Wrong.Usage("--suggest [SECONDS]");
        if (!File.Exists("/usr/bin/script"))
            return Wrong.Usage("--suggest needs the program `script` of util-linux, which gives it a terminal");
        var work = Directory.CreateTempSubdirectory("fitcheck-benchmark-");
        try
        {
            var catalog = Path.Combine(work.FullName, "catalog");
            new SyntheticCatalog(Parts, 500).Write(catalog, int.MaxValue);
            foreach (var file in Directory.GetFiles(Built.Path("catalog"), "*.yaml", SearchOption.AllDirectories))
            {
                var copy = Path.Combine(catalog, Path.GetRelativePath(Built.Path("catalog"), file));
                Directory.CreateDirectory(Path.GetDirectoryName(copy)!);
                File.Copy(file, copy);
            }
            var cache = Directory.CreateDirectory(Path.Combine(work.FullName, "cache")).FullName;
            var builds = Directory.GetFiles(Built.Path("catalog", "builds"), "*.yaml").Order(StringComparer.Ordinal).ToList();
            Watched(builds[0], catalog, cache, 1);
            var firsts = new List<double>();
            foreach (var build in builds)
            {
                if (Watched(build, catalog, cache, seconds) is not { } times)
                    continue;
                firsts.Add(times.First ?? double.PositiveInfinity);
                Console.WriteLine(string.Create(CultureInfo.InvariantCulture,
                    $"{Path.GetFileNameWithoutExtension(build),-30} open {times.Opened:0.00} s  first answer {Told(times.First)}  "
                    + $"end {times.End,6:0.00} s  {times.Words}"));
            }
            firsts.Sort();
            Console.WriteLine(string.Create(CultureInfo.InvariantCulture,
                $"{firsts.Count} builds that fail: first answer within 2 s for {firsts.Count(f => f <= 2)}, "
                + $"median {firsts[firsts.Count / 2]:0.00} s"));
            return 0;
        }
        finally
        {
            work.Delete(recursive: true);
        }
    }

    private static string Told(double? first) =>
        first is { } time ? string.Create(CultureInfo.InvariantCulture, $"{time,6:0.00} s") : "    none";

    private sealed record Times(double Opened, double? First, double End, string Words);

    // Null for a build that passes.
    private static Times? Watched(string build, string catalog, string cache, int seconds)
    {
        var answer = Path.Combine(cache, "answer.json");
        var command =
            $"'{Built.Program("src", "FitCheck.Cli", "fitcheck")}' suggest '{build}' --catalog '{catalog}' --rules '"
                + $"{Built.Path("rules")}' --time {seconds} --format json --output '{answer}'";
        var start = new ProcessStartInfo("/usr/bin/script", ["-qec", command, "/dev/null"])
        {
            RedirectStandardOutput = true,
            RedirectStandardInput = true,
            UseShellExecute = false
        };
        start.Environment["FITCHECK_CACHE"] = cache;
        var watch = Stopwatch.StartNew();
        using var process = Process.Start(start)!;
        var said = new StringBuilder();
        double opened = 0;
        double? first = null;
        var buffer = new char[4096];
        while (process.StandardOutput.Read(buffer, 0, buffer.Length) is > 0 and var count)
        {
            var text = said.Append(buffer, 0, count).ToString();
            if (opened == 0 && text.Contains("looking for changes", StringComparison.Ordinal))
                opened = watch.Elapsed.TotalSeconds;
            if (first is null && text.Contains("enough", StringComparison.Ordinal))
                first = watch.Elapsed.TotalSeconds;
        }
        process.WaitForExit();
        var end = watch.Elapsed.TotalSeconds;
        if (process.ExitCode is not (0 or 1))
            throw new InvalidOperationException($"{build}: {said}");
        using var told = JsonDocument.Parse(File.ReadAllBytes(answer));
        if (told.RootElement.GetProperty("verdict").GetString() != "fail")
            return null;
        var proof = told.RootElement.GetProperty("proof");
        return new Times(opened, first, end, string.Create(CultureInfo.InvariantCulture,
            $"{(proof.GetProperty("complete").GetBoolean() ? "proved" : "not proved")}, "
            + $"{proof.GetProperty("judged").GetInt32()} judged, {proof.GetProperty("ruled_out").GetInt32()} ruled out"));
    }
}
