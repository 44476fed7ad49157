using System.Diagnostics;
using System.Globalization;

namespace FitCheck.Hostile;

/// <summary>
/// Hands batches to processes, one after the other: one that dies, by whatever it was given, is told and the next batch goes to another.
/// </summary>
internal sealed class Inputs(int seed, string folder)
{
    // A process of its own from time to time: what grows from run to run must not stay unseen, nor spoil the rest.
    private const int BatchesOfAProcess = 50;

    private readonly List<string> _failed = [];
    private readonly SortedDictionary<string, (int Inputs, int Time)> _sorts = new(StringComparer.Ordinal);
    // Larger ones take less time an input, and more to find which it was.
    private int _size = 50;
    private int _next, _inputs, _runs;
    private long _longest;

    /// <summary>Runs so many inputs; returns the exit status.</summary>
    public int Run(int count)
    {
        var watch = Stopwatch.StartNew();
        _size = Math.Clamp(count / 50, 50, 400);
        var batches = (count + _size - 1) / _size;
        while (_next < batches)
            One(Math.Min(batches, _next + BatchesOfAProcess));
        foreach (var (sort, (inputs, time)) in _sorts)
            Console.WriteLine($"{sort}: {inputs} inputs, {time / 1000} s");
        Console.WriteLine(string.Create(CultureInfo.InvariantCulture,
            $"{_inputs} inputs, {_runs} runs, the longest {_longest} ms, {_failed.Count} batches failed; "
                + $"{watch.Elapsed.TotalSeconds:0} s"));
        return _failed.Count == 0 ? 0 : 1;
    }

    private void One(int to)
    {
        var start = new ProcessStartInfo(Environment.ProcessPath!,
            [typeof(Inputs).Assembly.Location, "worker", Text(seed), Text(_next), Text(to), Text(_size), folder])
        {
            RedirectStandardInput = true,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
            UseShellExecute = false,
        };
        if (!Path.GetFileNameWithoutExtension(start.FileName).Equals("dotnet", StringComparison.Ordinal))
            start.ArgumentList.RemoveAt(0);
        start.Environment["FITCHECK_CACHE"] = Path.Combine(folder, "notes");
        using var process = Process.Start(start)!;
        process.StandardInput.Close();
        var error = process.StandardError.ReadToEndAsync();
        var (open, hung) = (-1, "");
        while (process.StandardOutput.ReadLine() is { } line)
        {
            if (!line.StartsWith(Worker.Mark, StringComparison.Ordinal))
                continue;
            switch (line[Worker.Mark.Length..].Split(' ', 3))
            {
                case ["begin", var number, ..]:
                    open = int.Parse(number, CultureInfo.InvariantCulture);
                    break;
                case ["end", var number, var figures]:
                    Count(Worker.Sort(int.Parse(number, CultureInfo.InvariantCulture)), figures.Split(' '));
                    open = -1;
                    break;
                case ["broken", var number, var what]:
                    Fail(int.Parse(number, CultureInfo.InvariantCulture), what);
                    open = -1;
                    break;
                case ["hang", ..]:
                    hung = line;
                    break;
            }
        }
        process.WaitForExit();
        if (open >= 0)
            Fail(open, hung.Length > 0 ? hung : $"the process ended with {process.ExitCode}: {error.Result}");
        else if (process.ExitCode != 0)
            Fail(_next = to, error.Result);
        _next = open >= 0 ? open + 1 : to;
    }

    private void Count(string sort, string[] figures)
    {
        var (inputs, time) = _sorts.GetValueOrDefault(sort);
        _sorts[sort] = (inputs + int.Parse(figures[0], CultureInfo.InvariantCulture),
            time + int.Parse(figures[3], CultureInfo.InvariantCulture));
        _inputs += int.Parse(figures[0], CultureInfo.InvariantCulture);
        _runs += int.Parse(figures[1], CultureInfo.InvariantCulture);
        _longest = Math.Max(_longest, long.Parse(figures[2], CultureInfo.InvariantCulture));
    }

    private void Fail(int batch, string what)
    {
        _failed.Add(what);
        _inputs += _size;
        Console.WriteLine($"{Path.Combine(folder, $"batch-{batch}")}: {what[..Math.Min(what.Length, 2000)]}");
    }

    private static string Text(int number) => number.ToString(CultureInfo.InvariantCulture);
}
