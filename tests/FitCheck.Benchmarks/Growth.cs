using System.Diagnostics;
using System.Globalization;
using FitCheck.Benchmarks.Synthetic;

namespace FitCheck.Benchmarks;

/// <summary>
/// What grows with what: time and the most memory of whole processes, for more builds, more positions, more parts and more mistakes. Each
/// size is run once, with what the smaller ones left in the cache; compare the rows of a group.
/// </summary>
internal static class Growth
{
    private static readonly string[] Inputs = ["--catalog", Built.Path("catalog"), "--rules", Built.Path("rules")];

    public static int Run(string[] args)
    {
        if (args.Length != 1)
            return Wrong.Usage("--growth takes nothing more");
        var work = Directory.CreateTempSubdirectory("fitcheck-benchmark-");
        try
        {
            foreach (var (name, arguments) in All(work.FullName))
                Tell(name, arguments, Path.Combine(work.FullName, "cache"));
            return 0;
        }
        finally
        {
            work.Delete(recursive: true);
        }
    }

    private static IEnumerable<(string Name, string[] Arguments)> All(string work)
    {
        var build = Built.Path("catalog", "builds", "tansy-bare-tweeter.yaml");
        var builds = Directory.CreateDirectory(Path.Combine(work, "builds")).FullName;
        List<string> files = [];
        foreach (var count in new[] { 50, 500, 5_000 })
        {
            while (files.Count < count)
            {
                files.Add(Path.Combine(builds, FormattableString.Invariant($"b{files.Count}.yaml")));
                File.Copy(build, files[^1]);
            }
            foreach (var format in new[] { "text", "json" })
                yield return ($"check, {count} builds, {format}", ["check", .. files, "--format", format, .. Inputs]);
        }
        foreach (var count in new[] { 62, 125, 250, 500 })
        {
            yield return ($"check, {count} positions",
                ["check", Bus(work, count), "--catalog", Path.Combine(work, $"bus{count}"), .. Inputs]);
        }
        foreach (var count in new[] { 10_000, 50_000, 200_000 })
        {
            var catalog = Path.Combine(work, $"parts{count}");
            new SyntheticCatalog(count, 500).Write(catalog, int.MaxValue);
            yield return ($"check, {count} parts, first sight", ["check", build, "--catalog", catalog, .. Inputs]);
            yield return ($"check, {count} parts, again", ["check", build, "--catalog", catalog, .. Inputs]);
            yield return ($"lint, {count} parts, first sight", ["lint", "--catalog", catalog, .. Inputs[2..]]);
        }
        foreach (var count in new[] { 1_000, 10_000, 100_000 })
        {
            var wrong = Path.Combine(work, $"wrong{count}.yaml");
            File.WriteAllText(wrong, File.ReadAllText(build)
                + string.Concat(Enumerable.Range(0, count).Select(i => FormattableString.Invariant($"kez{i}: 1\n"))));
            yield return ($"check, {count} wrong keys", ["check", wrong, .. Inputs]);
        }
    }

    private static string Bus(string work, int positions)
    {
        var folder = Directory.CreateDirectory(Path.Combine(work, $"bus{positions}", "vehicles")).FullName;
        File.WriteAllText(Path.Combine(folder, "longbus.yaml"), Longbus.Vehicle(positions));
        var file = Path.Combine(work, $"bus{positions}.yaml");
        File.WriteAllText(file, Longbus.Build(positions));
        return file;
    }

    private static void Tell(string name, string[] arguments, string cache)
    {
        // Where there are two programs, the one that does the work.
        var (quick, whole) = (Built.Program("src", "FitCheck.Cli", "fitcheck"), Built.Program("src", "FitCheck.Cli", "fitcheck-whole"));
        var start = new ProcessStartInfo(File.Exists(whole) ? whole : quick, arguments)
        {
            RedirectStandardOutput = true,
            RedirectStandardError = true,
            UseShellExecute = false,
        };
        start.Environment["FITCHECK_CACHE"] = cache;
        var watch = Stopwatch.StartNew();
        using var process = Process.Start(start)!;
        var bytes = Task.Run(() => Drained(process.StandardOutput.BaseStream));
        var error = Task.Run(() => Drained(process.StandardError.BaseStream));
        var most = 0L;
        while (!process.WaitForExit(20))
        {
            process.Refresh();
            most = Math.Max(most, process.HasExited ? 0 : process.PeakWorkingSet64);
        }
        Console.WriteLine(string.Create(CultureInfo.InvariantCulture,
            $"{name,-40} {watch.Elapsed.TotalSeconds,7:0.00} s {most / 1e6,6:0} MB, {(bytes.Result + error.Result) / 1e6:0.0} MB told, "
            + $"status {process.ExitCode}"));
    }

    private static long Drained(Stream from)
    {
        var (piece, all) = (new byte[1 << 16], 0L);
        for (int read; (read = from.Read(piece)) > 0; all += read)
        {
        }
        return all;
    }
}
