using FitCheck.Catalog;
using FitCheck.Foundation.Files;
using FitCheck.Foundation.Problems;

namespace FitCheck.Evaluation;

/// <summary>Which files a run reads, so that none of them is written over.</summary>
internal static class FilesRead
{
    /// <summary>The files that a command line names, and those in the folders that it names.</summary>
    public static IEnumerable<string> Named(IEnumerable<string> paths)
    {
        ArgumentNullException.ThrowIfNull(paths);
        return paths.SelectMany(p => Directory.Exists(p) ? In(p, p) : [p]);
    }

    /// <summary>Entries, starting files, rules, and the templates beside the program.</summary>
    /// <param name="folders">Catalog and rules.</param>
    /// <param name="builds">True when the builds inside the catalog folders are read too.</param>
    public static IEnumerable<string> Of(Folders folders, bool builds = false)
    {
        ArgumentNullException.ThrowIfNull(folders);
        IEnumerable<string> inside = [.. Kinds.All.Select(k => k.Folder), "starters", .. builds ? ["builds"] : Array.Empty<string>()];
        return folders.Catalog.SelectMany(c => inside.SelectMany(f => In(c, Path.Combine(c, f))))
            .Concat(folders.Rules.SelectMany(r => In(r, r))).Concat(In(Templates, Templates, ""));
    }

    private static string Templates => Path.Combine(AppContext.BaseDirectory, "reports");

    // As they are found when they are read: a link in a circle ends, one that leads out of the folder is not read. What is wrong with them
    // is told there.
    private static IEnumerable<string> In(string named, string folder, string ending = ".yaml") =>
        Directory.Exists(folder) ? InputFolder.Files(named, folder, [ending], new ProblemList()).Select(f => f.Path) : [];
}
