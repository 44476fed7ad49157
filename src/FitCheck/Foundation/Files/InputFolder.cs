using System.IO.Enumeration;
using FitCheck.Foundation.Problems;

namespace FitCheck.Foundation.Files;

/// <summary>A file that was found in a folder.</summary>
/// <param name="Path">From the folder on as it was named.</param>
/// <param name="Look">How it looks; null where the system doesn't tell.</param>
/// <param name="IsLink">True when it is a link to the file.</param>
internal readonly record struct FoundFile(string Path, FileLook? Look, bool IsLink);

/// <summary>
/// Finds the files of a folder. It may come from strangers, as a change that is to be checked: a link out of it would put what stands
/// elsewhere into a public log, and a link in a circle, a pipe or a device would keep the program busy for ever. These are told and not
/// read.
/// </summary>
internal sealed class InputFolder
{
    private readonly string _named;
    private readonly string[] _endings;
    private readonly ProblemList _problems;
    private readonly EnumerationOptions _options;
    private readonly int _depth;
    private readonly Lazy<string?> _real;
    private readonly List<FoundFile> _found = [];
    private readonly List<string> _entered = [];
    private readonly Queue<(string Path, int Depth)> _links = new();
    // The folders that were entered, without any link in their paths; made when the first link is met.
    private HashSet<string>? _reached;

    private InputFolder(string named, string[] endings, ProblemList problems, bool hidden, int depth)
    {
        (_named, _endings, _problems, _depth) = (named, endings, problems, depth);
        _options = new EnumerationOptions
        {
            AttributesToSkip = hidden ? FileAttributes.None : FileAttributes.Hidden,
            IgnoreInaccessible = false
        };
        _real = new Lazy<string?>(() => RealPath.Of(named));
    }

    /// <summary>The files in ordinal order of their paths.</summary>
    /// <param name="named">The folder that was named, which may itself be a link; nothing outside it is read.</param>
    /// <param name="folder">Where to begin, in it or the same.</param>
    /// <param name="endings">Those of the files that are wanted.</param>
    /// <param name="problems">Where links that lead out of it and the like are told.</param>
    /// <param name="hidden">Whether hidden files are wanted too.</param>
    /// <param name="depth">How many folders deep.</param>
    public static IReadOnlyList<FoundFile> Files(string named, string folder, string[] endings, ProblemList problems, bool hidden = true,
        int depth = int.MaxValue)
    {
        var walk = new InputFolder(named, endings, problems, hidden, depth);
        if (folder != named && new DirectoryInfo(folder).LinkTarget is not null)
            walk._links.Enqueue((folder, 0));
        else
            walk.Enter(folder, 0);
        // Links come last, so that what stands in the folder is read under its own name.
        while (walk._links.TryDequeue(out var link))
            walk.Follow(link.Path, link.Depth);
        walk._found.Sort((a, b) => string.CompareOrdinal(a.Path, b.Path));
        return walk._found;
    }

    /// <summary>
    /// The first of some folders in which a file stands by its path, when links lead it out of there; null when they do not, and when it
    /// stands in none.
    /// </summary>
    public static string? LeftBy(string path, IEnumerable<string> folders)
    {
        var full = Path.GetFullPath(path);
        return folders.FirstOrDefault(f => RealPath.IsWithin(full, Path.TrimEndingDirectorySeparator(Path.GetFullPath(f)))) is { } named
            && !(RealPath.Of(path) is { } real && RealPath.Of(named) is { } fence && RealPath.IsWithin(real, fence)) ? named : null;
    }

    /// <summary>What is said of a link out of a folder.</summary>
    public static string LeadsOut(string folder) =>
        $"the link leads out of {(folder == "." ? "the folder that you are in" : $"the folder {ShownPath.Of(folder)}")}, so it is not "
            + $"followed; put the file itself there";

    private void Enter(string folder, int depth)
    {
        if (_reached is not null && !(RealPath.Of(folder) is { } real && _reached.Add(real)))
        {
            Tell(folder, "the link leads to a folder that is read already; links must not lead round in a circle");
            return;
        }
        _entered.Add(folder);
        var folders = new List<(string Path, bool IsLink)>();
        try
        {
            foreach (var (path, isFolder, isLink) in Entries(folder))
            {
                if (isFolder)
                    folders.Add((path, isLink));
                else
                    Take(path);
            }
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            Tell(folder, "the folder can't be read");
        }
        foreach (var (path, isLink) in depth < _depth ? folders : [])
        {
            if (isLink)
                _links.Enqueue((path, depth + 1));
            else
                Enter(path, depth + 1);
        }
    }

    // The attributes of a file would cost a call each.
    private FileSystemEnumerable<(string Path, bool IsFolder, bool IsLink)> Entries(string folder) =>
        new(folder,
            (ref FileSystemEntry e) =>
                (e.ToSpecifiedFullPath(), e.IsDirectory, e.IsDirectory && e.Attributes.HasFlag(FileAttributes.ReparsePoint)), _options)
        {
            ShouldIncludePredicate = (ref FileSystemEntry e) => e.IsDirectory || HasEnding(e.FileName),
        };

    private bool HasEnding(ReadOnlySpan<char> name)
    {
        foreach (var ending in _endings)
        {
            if (name.EndsWith(ending, StringComparison.Ordinal))
                return true;
        }
        return false;
    }

    private void Take(string path)
    {
        var look = FileLook.Of(path, followed: false);
        var isLink = look is { } known ? known.Type == FileType.Link : File.GetAttributes(path).HasFlag(FileAttributes.ReparsePoint);
        if (isLink)
        {
            if (!StaysInside(path))
                return;
            look = FileLook.Of(path);
        }
        if (look is { Type: not FileType.Plain })
            Tell(path, "this is no plain file, so it is not read");
        else
            _found.Add(new FoundFile(path, look, isLink));
    }

    private void Follow(string path, int depth)
    {
        if (!StaysInside(path))
            return;
        _reached ??= _entered.Select(RealPath.Of).OfType<string>().ToHashSet(StringComparer.Ordinal);
        Enter(path, depth);
    }

    private bool StaysInside(string link)
    {
        var real = RealPath.Of(link);
        if (real is null || !Path.Exists(real))
            Tell(link, real is null ? "the link leads round in a circle" : "the link leads to nothing");
        else if (_real.Value is not { } fence || !RealPath.IsWithin(real, fence))
            Tell(link, LeadsOut(_named));
        else
            return true;
        return false;
    }

    private void Tell(string path, string message) =>
        _problems.Error(new Location(ShownPath.Of(path), 1, 1), message, ProblemKind.Unreadable);
}
