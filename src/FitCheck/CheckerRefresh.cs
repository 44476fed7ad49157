using FitCheck.Evaluation;
using FitCheck.Foundation.Files;
using FitCheck.Foundation.Problems;

namespace FitCheck;

/// <summary>What came of looking at the files again.</summary>
/// <param name="HasChanged">True when another state is open now than before.</param>
/// <param name="IsSound">False when the files can't be used as they are now: the last good state stays open, and the problems say
/// why.</param>
/// <param name="Problems">What is wrong with catalogs and rules, in the order of files and lines; of a sound state only warnings.</param>
public sealed record RefreshOutcome(bool HasChanged, bool IsSound, IReadOnlyList<Problem> Problems);

/// <summary>Files that change while it is open.</summary>
public sealed partial class Checker
{
    /// <summary>
    /// Looks at all files of catalogs and rules again. Where a byte differs, the new state is opened: of the catalog only what changed is
    /// read anew. It takes the place of the old one at once; calls that run keep the state with which they began.
    /// </summary>
    /// <param name="progress">Told in words what goes on; null for nobody.</param>
    /// <param name="cancel">Ends it within a fraction of a second; the old state then stays open.</param>
    /// <exception cref="OperationCanceledException">It was cancelled.</exception>
    public RefreshOutcome Refresh(IProgress<string>? progress = null, CancellationToken cancel = default)
    {
        // One after the other, so that the last to look is the last to put its state there.
        lock (_reopening)
        {
            var (before, problems) = (_valid, new ProblemList());
            var after = before.Again(_folders, _cache, problems, progress is null ? null : progress.Report, cancel);
            if (after is not null)
                _valid = after;
            return new RefreshOutcome(after is not null && after != before, after is not null, problems.Sorted());
        }
    }

    /// <summary>
    /// Looks at all files again, for who is told of changes, where one of the paths bears on catalogs or rules; else nothing is read.
    /// </summary>
    /// <param name="paths">Files or folders that were changed, made, moved or deleted; they need not exist any more.</param>
    /// <param name="progress">Told in words what goes on; null for nobody.</param>
    /// <param name="cancel">Ends it within a fraction of a second; the old state then stays open.</param>
    /// <exception cref="ArgumentException"><paramref name="paths"/> is null, empty, or holds a path that is null or empty.</exception>
    /// <exception cref="OperationCanceledException">It was cancelled.</exception>
    public RefreshOutcome Changed(IReadOnlyList<string> paths, IProgress<string>? progress = null, CancellationToken cancel = default)
    {
        Arguments.Words(paths, nameof(paths));
        return paths.Any(Bears) ? Refresh(progress, cancel) : new RefreshOutcome(HasChanged: false, IsSound: true, []);
    }

    // In one of the folders, or above one: a folder may be moved with all that is in it. By their names and by where links lead.
    private bool Bears(string path)
    {
        if (path.Contains('\0', StringComparison.Ordinal))
            return false;
        var full = Path.TrimEndingDirectorySeparator(Path.GetFullPath(path));
        string[] changed = [full, .. RealPath.Of(path) is { } real ? new[] { real } : []];
        return _folders.Catalog.Concat(_folders.Rules).Any(folder =>
        {
            var named = Path.TrimEndingDirectorySeparator(Path.GetFullPath(folder));
            string[] fences = [named, .. RealPath.Of(folder) is { } there ? new[] { there } : []];
            return changed.Any(c => fences.Any(f => RealPath.IsWithin(c, f) || RealPath.IsWithin(f, c)));
        });
    }
}
