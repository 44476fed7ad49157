using FitCheck.Foundation;
using Xunit;

namespace FitCheck.Tests.Catalog;

/// <summary>Who asks once keeps no catalog in memory: what was found valid is read again where a build names it.</summary>
public sealed class KeptEntriesTests
{
    [Fact]
    public void A_catalog_of_thousands_is_validated_without_being_kept()
    {
        using var folder = new TemporaryFolder();
        var part = File.ReadAllText(RepositoryRoot.Of("catalog", "drivers", "orrin-w165-4.yaml"));
        for (var i = 0; i < 3_000; i++)
            folder.Write($"drivers/orrin-{i}.yaml", part.Replace("id: orrin-w165-4", $"id: orrin-{i}", StringComparison.Ordinal));
        var options = new CheckerOptions
        {
            Catalogs = [RepositoryRoot.Of("catalog"), folder.Path],
            Rules = [RepositoryRoot.Of("rules")],
            KeepsEntries = false,
        };
        var opened = Checker.Open(options);
        Assert.True(opened.Checker is not null, string.Join('\n', opened.Problems.Take(5)));
        Assert.True(opened.Checker.Catalog.Kept < 100, $"{opened.Checker.Catalog.Kept} entries are kept");
        Assert.True(Checker.Open(options with { KeepsEntries = true }).Checker!.Catalog.Kept > 3_000);
    }
}
