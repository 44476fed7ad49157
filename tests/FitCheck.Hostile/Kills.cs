using System.Diagnostics;
using System.Globalization;

namespace FitCheck.Hostile;

/// <summary>
/// Kills commands outright at random moments, alone and eight at a time in one folder, and looks at what they leave: each file is what it
/// was before or whole, and the next run is right and leaves nothing beside.
/// </summary>
internal sealed class Kills(int seed, string folder)
{
    private const int AtOnce = 8;

    private readonly Random _random = new(seed);
    private readonly List<string> _failed = [];
    private readonly Dictionary<Killed, Whole> _whole = [];
    private int _rounds, _kills, _early, _parts;

    /// <summary>Kills so many; returns the exit status.</summary>
    public int Run(int count)
    {
        for (var i = 0; _kills < count; i++)
        {
            // Every sixth round has eight at a time, so about half of all kills.
            Round(Killed.All[i % Killed.All.Count], _random.Next(6) == 0 && count - _kills >= AtOnce ? AtOnce : 1);
        }
        Console.WriteLine(string.Create(CultureInfo.InvariantCulture,
            $"{_kills} kills in {_rounds} rounds ({_early} came after the end), {_parts} parts of files or folders were left and taken "
                + $"away, {_failed.Count} failed"));
        return _failed.Count == 0 ? 0 : 1;
    }

    private void Round(Killed killed, int atOnce)
    {
        var (takes, status, before, after) = Undisturbed(killed);
        _rounds++;
        var place = New(killed);
        var running = Enumerable.Range(0, atOnce).Select(_ => place.Start(killed)).ToList();
        foreach (var process in running)
        {
            _ = process.StandardOutput.ReadToEndAsync();
            _ = process.StandardError.ReadToEndAsync();
        }
        var watch = Stopwatch.StartNew();
        // Eight at a time take longer; what is written is written late.
        foreach (var (process, at) in running.Select(p => (p, (long)(takes * Math.Max(1, atOnce / 2.0) * Moment()))).OrderBy(p => p.Item2))
        {
            process.WaitForExit((int)Math.Max(1, at - watch.ElapsedMilliseconds));
            if (process.HasExited)
                _early++;
            // With the terminal that it is on.
            process.Kill(entireProcessTree: killed.Typed is not null);
            process.WaitForExit();
            _kills++;
        }
        running.ForEach(p => p.Dispose());
        _parts += place.Left().Count;
        foreach (var (name, text) in place.Files().Where(f => !f.Key.EndsWith(".part", StringComparison.Ordinal)))
            Hold(text == before.GetValueOrDefault(name) || text == after.GetValueOrDefault(name), killed, place,
                $"{name} is neither old nor whole");
        foreach (var name in before.Keys.Where(n => !place.Files().ContainsKey(n)))
            Hold(false, killed, place, $"{name} is gone");
        var (again, error) = place.Run(killed);
        if (again != status && killed.Keeps && error.Contains("it is kept as it is", StringComparison.Ordinal))
            again = status;
        else
            Hold(place.Left().Count == 0, killed, place, $"left: {string.Join(", ", place.Left())}");
        // What is changed in its place is another input the next time.
        Hold(again == status || (again == 0 && killed.Words.Contains("--force")), killed, place, $"then status {again}: {error}");
        var files = place.Files();
        foreach (var (name, text) in after)
            Hold(files.GetValueOrDefault(name) == text, killed, place, $"then {name} is not what it should be");
        Directory.Delete(place.Path, recursive: true);
    }

    private double Moment() => _random.Next(3) == 0 ? _random.NextDouble() : 0.6 + (0.5 * _random.NextDouble());

    private Whole Undisturbed(Killed killed)
    {
        if (_whole.TryGetValue(killed, out var known))
            return known;
        var place = New(killed);
        var before = place.Files();
        var watch = Stopwatch.StartNew();
        var (status, error) = place.Run(killed);
        if (status is not (0 or 1))
            throw new InvalidOperationException($"{killed}: {status} {error}");
        _whole[killed] = new Whole(watch.ElapsedMilliseconds, status, before, place.Files());
        Directory.Delete(place.Path, recursive: true);
        return _whole[killed];
    }

    private KillFolder New(Killed killed) =>
        new(Directory.CreateDirectory(Path.Combine(folder, Path.GetRandomFileName())).FullName, killed);

    private void Hold(bool condition, Killed killed, KillFolder place, string what)
    {
        if (condition)
            return;
        _failed.Add(what);
        Console.WriteLine($"{place.Path}: fitcheck {killed}: {what}");
    }

    // A run that nobody kills: what it takes and leaves.
    private sealed record Whole(long Takes, int Status, Dictionary<string, string> Before, Dictionary<string, string> After);
}
