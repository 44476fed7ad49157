using FitCheck.Catalog;
using FitCheck.Evaluation;
using FitCheck.Foundation;
using FitCheck.Foundation.Problems;
using FitCheck.Schemas;
using Xunit;

namespace FitCheck.Tests.Catalog;

/// <summary>
/// A build is read to its end also where entries of the catalog are not valid, so that all mistakes are told at once: nothing that an entry
/// leaves out may end that with a defect.
/// </summary>
public sealed class DamagedEntryTests
{
    [Theory]
    [InlineData("front-rear-two-amps")]
    [InlineData("tansy-supply-afterthought")]
    [InlineData("tansy-angled-rings")]
    public void A_build_is_read_whatever_key_an_entry_that_it_names_leaves_out(string name)
    {
        var build = RepositoryRoot.Of("catalog", "builds", name + ".yaml");
        var catalog = RepositoryRoot.Of("catalog");
        var text = File.ReadAllText(build);
        using var folder = new TemporaryFolder();
        var tried = 0;
        foreach (var path in CatalogFiles.In(catalog, new ProblemList()).Select(f => f.File.Path)
            .Where(f => text.Contains(Path.GetFileNameWithoutExtension(f), StringComparison.Ordinal)))
        {
            var entry = File.ReadAllLines(path);
            foreach (var key in entry.Where(l => l.Length > 0 && char.IsAsciiLetter(l[0])))
            {
                var from = Array.IndexOf(entry, key);
                var to = Array.FindIndex(entry, from + 1, l => l.Length > 0 && !char.IsWhiteSpace(l[0])) is >= 0 and var next ? next
                    : entry.Length;
                foreach (var damaged in (IEnumerable<string>[])[[.. entry[..from], .. entry[to..]],
                    [.. entry[..from], key.Split(':')[0] + ":", .. entry[to..]]])
                {
                    var written = folder.Write(Path.GetRelativePath(catalog, path), string.Join('\n', damaged) + "\n");
                    var problems = new ProblemList();
                    BuildFiles.Read(build, [catalog, folder.Path], PartsCatalog.Open([catalog, folder.Path], problems),
                        ValidationCache.Nothing, new Lazy<SchemaCheck>(() => new SchemaCheck()), problems);
                    File.Delete(written);
                    tried++;
                }
            }
        }
        Assert.True(tried > 50, $"only {tried} were tried");
    }
}
