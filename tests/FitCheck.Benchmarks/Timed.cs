using System.Diagnostics;
using System.Globalization;

namespace FitCheck.Benchmarks;

/// <summary>A program that is run again and again, and the times that it took.</summary>
internal sealed class Timed(string name, string program, IReadOnlyList<string> arguments)
{
    private readonly List<double> _milliseconds = [];

    /// <summary>Given to the program as FITCHECK_CACHE.</summary>
    public string? CacheFolder { get; init; }

    /// <summary>Empties the cache before each run.</summary>
    public bool ForgetFirst { get; init; }

    /// <summary>Done before each run, and not counted.</summary>
    public Action? Before { get; init; }

    public string Name => name;

    public double Median => Quantile(0.5);

    public void Run() => _milliseconds.Add(Run(program, arguments, out _));

    /// <summary>The most memory that a run had resident, in megabytes, as GNU time tells it; NaN where there is none.</summary>
    public double PeakMegabytes()
    {
        if (!File.Exists("/usr/bin/time"))
            return double.NaN;
        Run("/usr/bin/time", ["--format", "%M", "--quiet", program, .. arguments], out var error);
        return double.Parse(error.TrimEnd().Split('\n')[^1], CultureInfo.InvariantCulture) / 1e3;
    }

    public void Clear() => _milliseconds.Clear();

    public string Line() => string.Create(CultureInfo.InvariantCulture,
        $"{Median,8:0.0} ms median, {Quantile(0.25):0.0} to {Quantile(0.75):0.0} ms the middle half: {name}");

    private double Run(string file, IReadOnlyList<string> words, out string said)
    {
        Before?.Invoke();
        if (ForgetFirst && CacheFolder is not null)
        {
            Directory.Delete(CacheFolder, recursive: true);
            Directory.CreateDirectory(CacheFolder);
        }
        var start = new ProcessStartInfo(file, words)
        {
            RedirectStandardOutput = true,
            RedirectStandardError = true,
            UseShellExecute = false
        };
        if (CacheFolder is not null)
            start.Environment["FITCHECK_CACHE"] = CacheFolder;

        var watch = Stopwatch.StartNew();
        using var process = Process.Start(start)!;
        var error = process.StandardError.ReadToEndAsync();
        process.StandardOutput.ReadToEnd();
        process.WaitForExit();
        var took = watch.Elapsed.TotalMilliseconds;
        said = error.Result;

        // 1 is an honest answer of a check.
        return process.ExitCode is 0 or 1 ? took : throw new InvalidOperationException($"{name} ended with {process.ExitCode}: {said}");
    }

    private double Quantile(double part)
    {
        var sorted = _milliseconds.Order().ToArray();
        var at = part * (sorted.Length - 1);
        var low = sorted[(int)at];
        return low + ((sorted[Math.Min((int)at + 1, sorted.Length - 1)] - low) * (at - (int)at));
    }
}
