using FitCheck.Impacts;

namespace FitCheck.Cli.Revisions;

/// <summary>
/// Finds what `--from` and `--to` name: a folder, or a revision of the repository around the current folder, which is laid out in a
/// temporary one.
/// </summary>
internal sealed class ComparedStates : IDisposable
{
    private readonly TemporaryFolders _temporary = new();

    /// <summary>The side, or a sentence that says why there is none.</summary>
    public (SideFolder? Side, string? Error) Find(string option, string word)
    {
        var isFolder = !IsRevision(word) && Directory.Exists(word);
        if (IsFolder(word))
            return isFolder ? InFolder(option, word) : (null, $"{option}: there is no folder {word}");
        var top = Git.Line(".", "rev-parse", "--show-toplevel");
        var commit = top is null || word.StartsWith('-') ? null
            : Git.Line(".", "rev-parse", "--verify", "--quiet", "--end-of-options", word + "^{commit}");
        if (commit is not { Length: > 0 })
        {
            return isFolder ? InFolder(option, word)
                : (null, top is null ? $"{option}: no folder `{word}`, and no git repository here that could have such a revision"
                : $"{option}: neither a folder nor a revision is named `{word}`");
        }
        // A change can bring a folder of any name: it must not take the place of the revision that it is compared with.
        return isFolder
            ? (null, $"{option}: `{word}` is a revision and a folder too; give `./{word}` for the folder, `{FullName(word, commit)}` "
                + $"for the revision")
            : LayOut(option, word, commit, top!);
    }

    /// <summary>The working tree: the current folder where it has a catalog, else the top of its repository.</summary>
    public static (SideFolder? Side, string? Error) WorkingTree()
    {
        if (Directory.Exists("catalog"))
            return (new SideFolder("the working tree", "."), null);
        return Git.Line(".", "rev-parse", "--show-toplevel") is { } top && Directory.Exists(Path.Combine(top, "catalog"))
            ? (new SideFolder("the working tree", top), null)
            : (null, "--to: there is no `catalog` in this folder or at the top of its git repository; name a folder or a revision");
    }

    public void Dispose() => _temporary.Dispose();

    private static (SideFolder? Side, string? Error) InFolder(string option, string word) =>
        Directory.Exists(Path.Combine(word, "catalog")) ? (new SideFolder(word, word), null)
            : (null, $"{option}: the folder {word} has no `catalog` in it");

    // No revision begins or ends so.
    private static bool IsFolder(string word) =>
        word is "." or ".." || word.StartsWith("./", StringComparison.Ordinal) || word.StartsWith("../", StringComparison.Ordinal)
        || word.EndsWith('/') || Path.IsPathRooted(word);

    // What names a revision in full is never taken for a folder.
    private static bool IsRevision(string word) =>
        word.StartsWith("refs/", StringComparison.Ordinal) || (word.Length is 40 or 64 && word.All(char.IsAsciiHexDigit));

    private static string FullName(string word, string commit) =>
        Git.Line(".", "rev-parse", "--verify", "--quiet", "--symbolic-full-name", "--end-of-options", word) is { } name
            && name.StartsWith("refs/", StringComparison.Ordinal) ? name : commit;

    // The catalog stands where the working tree has it: below the current folder, or at the top.
    private (SideFolder?, string?) LayOut(string option, string word, string commit, string top)
    {
        var prefix = Directory.Exists("catalog") ? Git.Line(".", "rev-parse", "--show-prefix") ?? "" : "";
        if (Git.Line(top, "cat-file", "-t", $"{commit}:{prefix}catalog") != "tree")
            return (null, $"{option}: the revision `{word}` has no folder {prefix}catalog");
        var paths = Git.Line(top, "cat-file", "-t", $"{commit}:{prefix}rules") == "tree" ? new[] { "catalog", "rules" } : ["catalog"];
        var folder = _temporary.New();
        var tree = prefix.Length == 0 ? commit : $"{commit}:{prefix.TrimEnd('/')}";
        if (RevisionTree.LayOut(top, tree, paths, folder, _temporary.Write) is { } error)
            return (null, $"{option}: the revision `{word}` can't be compared: {error}");
        return (new SideFolder(word, folder), null);
    }
}
