using System.Globalization;
using FitCheck.Foundation.Problems;

namespace FitCheck.Page.Server;

/// <summary>
/// Looks at catalog and rules again when they change. Where the system tells of a change that is soon after it; and as some file systems
/// tell nothing, also when somebody asks for something and the last look was a while ago. A state that can't be used changes nothing but
/// what the page says of it.
/// </summary>
internal sealed class CatalogWatch : IDisposable
{
    // An editor writes a file in several steps, and a checkout many files.
    private static readonly TimeSpan Quiet = TimeSpan.FromMilliseconds(250);
    // Between two looks for file systems that tell nothing; of a large catalog so much of the time is not spent looking.
    private const long OldMs = 5000, OldLooks = 20;
    private const int MostTold = 3;

    private readonly Checker _checker;
    private readonly PageEngine _engine;
    private readonly List<FileSystemWatcher> _watchers = [];
    private readonly Timer _timer;
    private long _nextLook = Environment.TickCount64 + OldMs;

    public CatalogWatch(IEnumerable<string> folders, Checker checker, PageEngine engine)
    {
        (_checker, _engine, _timer) = (checker, engine, new Timer(_ => Look()));
        foreach (var folder in folders.Distinct(StringComparer.Ordinal))
            Follow(folder);
    }

    public void Dispose()
    {
        foreach (var watcher in _watchers)
            watcher.Dispose();
        _timer.Dispose();
    }

    /// <summary>Somebody asks for something: when the last look was a while ago there is another one, for who asks next.</summary>
    public void IsAsked()
    {
        var (now, next) = (Environment.TickCount64, Interlocked.Read(ref _nextLook));
        if (now >= next && Interlocked.CompareExchange(ref _nextLook, now + OldMs, next) == next)
            Soon(TimeSpan.Zero);
    }

    private void Follow(string folder)
    {
        try
        {
            var watcher = new FileSystemWatcher(folder) { IncludeSubdirectories = true };
            watcher.Changed += (_, _) => Soon(Quiet);
            watcher.Created += (_, _) => Soon(Quiet);
            watcher.Deleted += (_, _) => Soon(Quiet);
            watcher.Renamed += (_, _) => Soon(Quiet);
            // More changes at once than it can count, or the folder itself has gone.
            watcher.Error += (_, _) => Soon(Quiet);
            watcher.EnableRaisingEvents = true;
            _watchers.Add(watcher);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException or ArgumentException)
        {
            // The system watches no more folders: the look at a question has to do.
        }
    }

    private void Soon(TimeSpan after)
    {
        try
        {
            _timer.Change(after, Timeout.InfiniteTimeSpan);
        }
        catch (ObjectDisposedException)
        {
            // It has ended.
        }
    }

    private void Look()
    {
        var begin = Environment.TickCount64;
        try
        {
            var outcome = _checker.Refresh();
            _engine.Trouble = outcome.IsSound ? null : Told(outcome);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            // In the middle of a change: the end of it is told too.
        }
        var end = Environment.TickCount64;
        Interlocked.Exchange(ref _nextLook, end + Math.Max(OldMs, OldLooks * (end - begin)));
    }

    private static string Told(RefreshOutcome outcome)
    {
        var errors = outcome.Problems.Where(p => p.Severity == Severity.Error).ToList();
        var told = errors.Take(MostTold).Select(p => $"{p.At}: {p.Message}.");
        var more = errors.Count <= MostTold ? ""
            : string.Create(CultureInfo.InvariantCulture, $" There are {errors.Count - MostTold} more.");
        return "The catalog or the rules can't be used as they are on the disk now; the last good state stays open. "
            + string.Join(' ', told) + more;
    }
}
