using FitCheck.Catalog;

namespace FitCheck;

/// <summary>Which files a run reads, so that none of them is written over.</summary>
public static class FilesRead
{
    // Whatever is hidden or can't be opened is not for this to tell.
    private static readonly EnumerationOptions Below = new() { RecurseSubdirectories = true, AttributesToSkip = FileAttributes.None, IgnoreInaccessible = true };

    /// <summary>The files that a command line names, and those in the folders that it names.</summary>
    public static IEnumerable<string> Named(IEnumerable<string> paths)
    {
        ArgumentNullException.ThrowIfNull(paths);
        return paths.SelectMany(p => Directory.Exists(p) ? In(p, "*.yaml") : [p]);
    }

    /// <summary>Entries, starting files, rules, and the templates beside the program.</summary>
    /// <param name="folders">Catalog and rules.</param>
    /// <param name="builds">True when the builds inside the catalog folders are read too.</param>
    public static IEnumerable<string> Of(Folders folders, bool builds = false)
    {
        ArgumentNullException.ThrowIfNull(folders);
        IEnumerable<string> inside = [.. Kinds.All.Select(k => k.Folder), "starters", .. builds ? ["builds"] : Array.Empty<string>()];
        return folders.Catalog.SelectMany(c => inside.SelectMany(f => In(Path.Combine(c, f), "*.yaml")))
            .Concat(folders.Rules.SelectMany(r => In(r, "*.yaml"))).Concat(In(Path.Combine(AppContext.BaseDirectory, "reports"), "*"));
    }

    private static IEnumerable<string> In(string folder, string names) => Directory.Exists(folder) ? Directory.EnumerateFiles(folder, names, Below) : [];
}
