using System.IO.Compression;
using FitCheck.Foundation;
using FitCheck.Foundation.Problems;

namespace FitCheck.Page.Static.Packing;

/// <summary>Catalog, rules and templates, opened as any program opens them and packed with the note that they were found valid.</summary>
internal sealed class Data(string catalog, string rules, string reports, string valid)
{
    /// <summary>What is wrong with them.</summary>
    public IReadOnlyList<Problem> Problems { get; private set; } = [];

    /// <summary>The page for them; null where something is wrong.</summary>
    public PageEngine? Open()
    {
        var opened = Checker.Open(new CheckerOptions { Catalogs = [catalog], Rules = [rules], Cache = ValidationCache.In(valid) });
        Problems = opened.Problems;
        return opened.Checker is { } checker ? new PageEngine(checker, new PageOptions { TemplatesDirectory = reports }) : null;
    }

    /// <summary>
    /// All of it in one file. It is compressed by itself, since the plainest of web servers compresses nothing.
    /// </summary>
    public byte[] Packed()
    {
        using var packed = new MemoryStream();
        using (var small = new GZipStream(packed, CompressionLevel.SmallestSize, leaveOpen: true))
        {
            Bundle.Pack(
                [
                    .. In(catalog, "catalog", "*.yaml"), .. In(rules, "rules", "*.yaml"), .. In(reports, "reports", "*"),
                    .. In(valid, "valid", "*"),
                ],
                small);
        }
        return packed.ToArray();
    }

    private static IEnumerable<(string Path, byte[] Bytes)> In(string folder, string name, string pattern) =>
        from file in Directory.EnumerateFiles(folder, pattern, SearchOption.AllDirectories).Order(StringComparer.Ordinal)
        select ($"{name}/{Path.GetRelativePath(folder, file).Replace('\\', '/')}", File.ReadAllBytes(file));
}
