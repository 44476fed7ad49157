using FitCheck.Catalog;
using Xunit;

namespace FitCheck.Tests.Cli;

/// <summary>"Add a part" of DEVELOPERS.md, with the words that stand there.</summary>
public sealed class NewPartTests : IDisposable
{
    private const string Printed = "fitcheck new part driver -o catalog/drivers/my-id.yaml";
    private const string Proof = "lint --catalog catalog";

    private readonly TemporaryFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    [Fact]
    public void A_part_of_every_kind_is_added_as_it_is_printed()
    {
        var text = File.ReadAllText(RepositoryRoot.Of("DEVELOPERS.md"));
        Assert.Contains($"`{Printed}`", text, StringComparison.Ordinal);
        Assert.Contains($"-- {Proof}\n", text, StringComparison.Ordinal);
        var catalog = RepositoryRoot.Of("catalog");
        foreach (var file in Directory.GetFiles(catalog, "*.yaml", SearchOption.AllDirectories))
            _folder.Write(Path.Combine("catalog", Path.GetRelativePath(catalog, file)), File.ReadAllText(file));

        foreach (var (folder, kind) in Kinds.All)
        {
            var (status, output, error) = Run.Of(_folder.Path, Words(Printed.Replace("driver ", kind + " ", StringComparison.Ordinal)
                .Replace("drivers", folder, StringComparison.Ordinal).Replace("my-id", $"my-id-{kind}", StringComparison.Ordinal)));
            Assert.Equal((0, "", ""), (status, output, error));
        }

        var lint = Run.Of(_folder.Path, Words("fitcheck " + Proof));
        Assert.DoesNotContain("my-id", lint.Out, StringComparison.Ordinal);
        Assert.Equal(0, lint.Status);
    }

    [Fact]
    public void So_it_is_in_a_catalog_of_one_s_own()
    {
        foreach (var (folder, kind) in Kinds.All)
        {
            Directory.CreateDirectory(_folder.Of($"shop/{folder}"));
            Assert.Equal(0, Run.Of(_folder.Path, "new", "part", kind, "-o", $"shop/{folder}/x1-{kind}.yaml").Status);
            Assert.Contains($"id: x1-{kind}\n", File.ReadAllText(_folder.Of($"shop/{folder}/x1-{kind}.yaml")), StringComparison.Ordinal);
        }

        var lint = Run.Of(_folder.Path, "lint", "--catalog", "default", "--catalog", "shop");
        Assert.DoesNotContain("x1-", lint.Out, StringComparison.Ordinal);
        Assert.Equal(0, lint.Status);
    }

    // What an id is stands in catalog/schema/common.schema.json.
    [Theory]
    [InlineData("My Part.yaml")]
    [InlineData("Driver.yaml")]
    [InlineData("my_driver.yaml")]
    [InlineData("my--driver.yaml")]
    [InlineData("-driver.yaml")]
    [InlineData("driver.yml")]
    [InlineData("driver")]
    [InlineData(".yaml")]
    public void A_name_that_can_not_be_an_id_is_told(string name)
    {
        var (status, output, error) = Run.Of(_folder.Path, "new", "part", "driver", "-o", "./" + name);

        Assert.Equal(
            (3, "", $"fitcheck: ./{name}: the name of a catalog file is the id of its entry and `.yaml`: lower-case letters, digits and "
                + $"single hyphens, such as `spacer-165-tilt-8.yaml`\n"), (status, output, error));
        Assert.Empty(Directory.GetFiles(_folder.Path));
    }

    [Fact]
    public void A_file_that_exists_is_kept()
    {
        var file = _folder.Write("mine.yaml", "mine\n");
        var (status, _, error) = Run.Of(_folder.Path, "new", "part", "driver", "-o", "mine.yaml");

        Assert.Equal((2, "fitcheck: mine.yaml exists; it is kept as it is\n"), (status, error));
        Assert.Equal("mine\n", File.ReadAllText(file));
    }

    private static string[] Words(string line) => line.Split(' ')[1..];
}
