using System.Text;
using FitCheck.Catalog;
using FitCheck.Facts;
using FitCheck.Rules;
using FitCheck.Schemas;
using FitCheck.Yaml;

namespace FitCheck;

/// <summary>Catalog and rules, opened and known to be valid.</summary>
/// <param name="Catalog">What exists.</param>
/// <param name="Rules">What is acceptable.</param>
/// <param name="Digest">Of everything that was validated together.</param>
internal sealed record Workshop(PartsCatalog Catalog, RuleSet Rules, string Digest)
{
    /// <summary>Opens both; validates them unless the same bytes were found valid before. Null when something is wrong; problems say what.</summary>
    public static Workshop? Open(Folders folders, Remembered remembered, ProblemList problems, Action<string>? progress = null)
    {
        var catalog = PartsCatalog.Open(folders.Catalog, problems);
        var digest = Remembered.Key([Encoding.UTF8.GetBytes(catalog.Digest), .. RuleBytes(folders.Rules)]);
        var known = !problems.HasErrors && remembered.Knows(digest);
        var rules = RuleSet.Load(folders.Rules, FactRegistry.Declarations, problems, checkTemplates: !known);
        if (!known)
            catalog.CheckAll(new SchemaCheck(), (done, all) => progress?.Invoke($"reading the catalog: {done} of {all}"));
        if (problems.HasErrors)
            return null;
        if (!known)
            remembered.Add(digest);
        return new Workshop(catalog, rules, digest);
    }

    private static IEnumerable<byte[]> RuleBytes(IReadOnlyList<string> folders)
    {
        foreach (var folder in folders.Where(Directory.Exists))
        {
            foreach (var path in Directory.GetFiles(folder, "*.yaml", SearchOption.AllDirectories).Order(StringComparer.Ordinal))
            {
                yield return Encoding.UTF8.GetBytes(Path.GetRelativePath(folder, path).Replace('\\', '/'));
                yield return Read(path);
            }
        }
    }

    // A file that can't be read is told by the rule reader; here it only must not stop the digest.
    private static byte[] Read(string path)
    {
        try
        {
            return File.ReadAllBytes(path);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            return [];
        }
    }
}
