using FitCheck.Catalog;
using FitCheck.Foundation.Problems;
using FitCheck.Schemas;
using Xunit;

namespace FitCheck.Tests.Catalog;

public sealed class SeededCatalogTests
{
    private static PartsCatalog Open(ProblemList problems) => PartsCatalog.Open([RepositoryRoot.Of("catalog")], problems);

    [Fact]
    public void Every_entry_keeps_its_schema_and_refers_to_something()
    {
        var problems = new ProblemList();
        Open(problems).CheckAll(new SchemaCheck());

        Assert.Empty(problems.Sorted());
    }

    [Theory]
    [InlineData(8, "vehicle")]
    [InlineData(60, "driver", "component-set")]
    [InlineData(25, "adapter", "cup")]
    [InlineData(20, "harness")]
    [InlineData(10, "source-unit")]
    [InlineData(8, "line-converter")]
    [InlineData(15, "amplifier")]
    [InlineData(20, "wiring")]
    [InlineData(20, "sundry")]
    public void There_are_enough_to_be_useful(int atLeast, params string[] kinds)
    {
        var catalog = Open(new ProblemList());

        Assert.True(kinds.Sum(k => catalog.IdsOf(k).Count()) >= atLeast);
    }

    [Fact]
    public void Every_vehicle_has_four_to_eight_positions()
    {
        var catalog = Open(new ProblemList());
        var wrong = catalog.IdsOf("vehicle").Select(catalog.Find).OfType<Vehicle>().Where(v => v.Positions.Count is < 4 or > 8)
            .Select(v => v.Id);

        Assert.Empty(wrong);
    }

    [Fact]
    public void Every_file_tells_editors_its_schema()
    {
        var silent = Directory.GetFiles(RepositoryRoot.Of("catalog"), "*.yaml", SearchOption.AllDirectories)
            .Concat(Directory.GetFiles(RepositoryRoot.Of("rules"), "*.yaml", SearchOption.AllDirectories))
            .Where(f => !File.ReadLines(f).First().StartsWith("# yaml-language-server: $schema=", StringComparison.Ordinal)
                || !File.Exists(Path.Combine(Path.GetDirectoryName(f)!, File.ReadLines(f).First().Split('=')[1])));

        Assert.Empty(silent);
    }

    [Fact]
    public void A_duplicate_id_names_the_first_one()
    {
        using var folder = new TemporaryFolder();
        var text = File.ReadAllText(RepositoryRoot.Of("catalog", "drivers", "orrin-w165-4.yaml"));
        folder.Write("drivers/orrin-w165-4.yaml", text);
        folder.Write("drivers/old/orrin-w165-4.yaml", text);
        var problems = new ProblemList();

        PartsCatalog.Open([folder.Path], problems);

        Assert.Contains("the id `orrin-w165-4` is taken by", Assert.Single(problems.Sorted()).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_later_folder_overlays_an_entry()
    {
        using var folder = new TemporaryFolder();
        var text = File.ReadAllText(RepositoryRoot.Of("catalog", "drivers", "orrin-w165-4.yaml"));
        folder.Write("drivers/orrin-w165-4.yaml", text.Replace("name: ", "name: Shop's own ", StringComparison.Ordinal));
        var problems = new ProblemList();

        var catalog = PartsCatalog.Open([RepositoryRoot.Of("catalog"), folder.Path], problems);

        Assert.StartsWith("Shop's own", catalog.Find("orrin-w165-4")!.Name, StringComparison.Ordinal);
        Assert.Empty(problems.Sorted());
    }
}
