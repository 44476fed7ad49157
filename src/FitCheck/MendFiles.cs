using FitCheck.Catalog;
using FitCheck.Evaluation;
using FitCheck.Fixes;
using FitCheck.Foundation.Files;
using FitCheck.Foundation.Problems;

namespace FitCheck;

/// <summary>A file, and how it should be.</summary>
internal sealed record FileToMend(string Path, MendedFile Mended);

/// <summary>Finds what `lint --fix` may put right in the files that `lint` reads. It writes nothing.</summary>
internal static class MendFiles
{
    /// <summary>
    /// Every file with something to put right, in the order of folders and names. The catalog beside the program is nobody's to change and
    /// is left out; so is a file that can't be read.
    /// </summary>
    /// <param name="paths">Builds, or folders with them; without any, the builds inside the catalog folders.</param>
    /// <param name="folders">The catalog folders; the rules are not touched.</param>
    public static IEnumerable<FileToMend> Of(IReadOnlyList<string> paths, Folders folders)
    {
        ArgumentNullException.ThrowIfNull(folders);
        var own = folders with { Catalog = [.. folders.Catalog.Except(Folders.BesideProgram.Catalog, StringComparer.Ordinal)] };
        var orders = new Dictionary<string, IReadOnlyList<string>>(StringComparer.Ordinal);
        var entries = own.Catalog.Where(Directory.Exists)
            .SelectMany(root => CatalogFiles.In(root, new ProblemList()).Select(f => (File: f.File.Path, f.Kind)));
        foreach (var (file, kind) in entries.Concat(Lint.BuildPaths(paths, own, new ProblemList()).Select(b => (File: b, Kind: "build"))))
        {
            if (!orders.TryGetValue(kind, out var order))
                orders[kind] = order = OrderOf(kind, folders);
            if (BuildFiles.PlainBytes(file, [.. own.Catalog, .. paths.Where(Directory.Exists)]) is { } bytes
                && Mend.Of(file.Replace('\\', '/'), bytes, kind, order) is { Edits.Count: > 0 } mended)
                yield return new FileToMend(file, mended);
        }
    }

    // A shop's own starting file says how its entries are to look.
    private static IReadOnlyList<string> OrderOf(string kind, Folders folders)
    {
        var starter = folders.Catalog.Concat(Folders.BesideProgram.Catalog).Select(c => Path.Combine(c, "starters", kind + ".yaml"))
            .FirstOrDefault(File.Exists);
        return starter is not null && BuildFiles.PlainBytes(starter, folders.Catalog) is { } bytes
            && SourceText.Decode(starter, bytes, new ProblemList()) is { } source ? Mend.KeysOf(source.Text) : [];
    }
}
