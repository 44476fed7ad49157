using System.Formats.Tar;
using FitCheck.Impacts;

namespace FitCheck.Cli.Revisions;

/// <summary>Finds what `--from` and `--to` name: a folder, or a revision of the repository around the current folder, which is laid out in a temporary one.</summary>
internal sealed class Sides : IDisposable
{
    private readonly List<string> _temporary = [];

    /// <summary>The side, or a sentence that says why there is none.</summary>
    public (SideFolder? Side, string? Error) Find(string option, string word)
    {
        if (Directory.Exists(Path.Combine(word, "catalog")))
            return (new SideFolder(word, word), null);
        if (Directory.Exists(word))
            return (null, $"{option}: the folder {word} has no `catalog` in it");
        if (Git.Line(".", "rev-parse", "--show-toplevel") is not { } top)
            return (null, $"{option}: no folder `{word}`, and no git repository here that could have such a revision");
        if (word.StartsWith('-') || Git.Line(".", "rev-parse", "--verify", "--quiet", "--end-of-options", word + "^{commit}") is not { Length: > 0 } commit)
            return (null, $"{option}: neither a folder nor a revision is named `{word}`");
        return LayOut(option, word, commit, top);
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

    public void Dispose()
    {
        foreach (var folder in _temporary)
            Directory.Delete(folder, recursive: true);
    }

    // The catalog stands where the working tree has it: below the current folder, or at the top.
    private (SideFolder?, string?) LayOut(string option, string word, string commit, string top)
    {
        var prefix = Directory.Exists("catalog") ? Git.Line(".", "rev-parse", "--show-prefix") ?? "" : "";
        if (Git.Line(top, "cat-file", "-t", $"{commit}:{prefix}catalog") != "tree")
            return (null, $"{option}: the revision `{word}` has no folder {prefix}catalog");
        var paths = Git.Line(top, "cat-file", "-t", $"{commit}:{prefix}rules") == "tree" ? new[] { "catalog", "rules" } : ["catalog"];
        var folder = Directory.CreateTempSubdirectory("fitcheck-revision-").FullName;
        _temporary.Add(folder);
        using var tar = new MemoryStream();
        var tree = prefix.Length == 0 ? commit : $"{commit}:{prefix.TrimEnd('/')}";
        if (!Git.Into(tar, top, ["archive", "--format=tar", tree, .. paths]))
            return (null, $"{option}: git can't read `{word}`");
        tar.Position = 0;
        TarFile.ExtractToDirectory(tar, folder, overwriteFiles: false);
        return (new SideFolder(word, folder), null);
    }
}
