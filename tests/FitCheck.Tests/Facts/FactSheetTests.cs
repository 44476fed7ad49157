using FitCheck.Builds;
using FitCheck.Catalog;
using FitCheck.Facts;
using FitCheck.Facts.Values;
using FitCheck.Foundation.Files;
using FitCheck.Foundation.Problems;
using FitCheck.Rules.Files;
using FitCheck.Yaml;
using Xunit;

namespace FitCheck.Tests.Facts;

/// <summary>Facts are computed when asked for; in which order they are must make no difference.</summary>
public sealed class FactSheetTests
{
    private static readonly ProblemList Problems = new();
    private static readonly PartsCatalog Catalog = PartsCatalog.Open([RepositoryRoot.Of("catalog")], Problems);

    public static TheoryData<string> Builds() =>
        [.. Directory.GetFiles(RepositoryRoot.Of("catalog", "builds"), "*.yaml").Select(f => Path.GetFileName(f))
            .Order(StringComparer.Ordinal)];

    [Theory]
    [MemberData(nameof(Builds))]
    public void The_last_fact_first_gives_the_same(string file)
    {
        var expected = Tables(file);
        var actual = Tables(file);
        Assert.Equal(expected.Count, actual.Count);
        for (var i = expected.Count - 1; i >= 0; i--)
        {
            var all = expected[i].Values.ToList();
            foreach (var (name, value) in Enumerable.Reverse(all))
                Same(value, actual[i].Values[name], name);
            // Afterwards they stand in the same order, and nothing has come besides.
            Assert.Equal(all.Select(f => f.Key), actual[i].Values.Select(f => f.Key));
        }
    }

    [Fact]
    public void A_fact_alone_is_the_same_as_among_all()
    {
        const string file = "front-rear-two-amps.yaml";
        var build = Read(file);
        foreach (var table in Tables(file).Where(t => t.Subject is Subject.Position or Subject.Channel))
        {
            foreach (var (name, value) in table.Values.ToList())
                Same(value, FactRegistry.Of(build, table.Subject, table.Key, PracticeReader.OfProgram)!.Values[name], name);
        }
    }

    private static void Same(FactValue expected, FactValue actual, string name) =>
        Assert.Equal((name, expected.Text, expected.Number, expected.Word, expected.Truth, expected.Unsure.Count, expected.Data.Count),
            (name, actual.Text, actual.Number, actual.Word, actual.Truth, actual.Unsure.Count, actual.Data.Count));

    private static IReadOnlyList<FactTable> Tables(string file)
    {
        var build = Read(file);
        return FactRegistry.Of(build, Shopping.List(build), PracticeReader.OfProgram).Tables;
    }

    private static Build Read(string file)
    {
        var root = YamlReader.Read(new SourceText(file, File.ReadAllText(RepositoryRoot.Of("catalog", "builds", file))), Problems);
        return BuildReader.Read(root!, Catalog, Problems)!;
    }
}
