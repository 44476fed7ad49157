using System.Globalization;
using System.Text.RegularExpressions;
using FitCheck.Catalog;
using FitCheck.Charts;
using FitCheck.Charts.BestMount;
using FitCheck.Charts.Pairs;
using FitCheck.Facts;
using FitCheck.Foundation.Problems;
using FitCheck.Reports.Charts;
using FitCheck.Reports.Format;
using FitCheck.Rules;
using Xunit;

namespace FitCheck.Tests.Charts;

/// <summary>What is left out before it is judged, and what is let go before it is told, changes no word of a chart.</summary>
public sealed partial class SievedChartTests
{
    private static readonly RuleSet Rules = RuleSet.Load([RepositoryRoot.Of("rules")], FactRegistry.Declarations, new ProblemList());

    [Theory]
    [InlineData(0, "json")]
    [InlineData(0, "text")]
    [InlineData(21, "json")]
    [InlineData(22, "csv")]
    public void The_chart_is_that_of_every_part_judged_and_every_row_kept(int seed, string format)
    {
        using var folder = new TemporaryFolder();
        var catalog = Catalog(seed, folder, varied: true);
        var whole = Written(catalog, format, most: int.MaxValue, sieved: false);
        Assert.Equal(whole, Written(catalog, format, most: int.MaxValue, sieved: true));
        Assert.Equal(whole, Written(catalog, format, most: 0, sieved: true));
    }

    // Ten times the same spacer under other names and prices: to a driver they are one.
    [Fact]
    public void Of_spacers_that_do_the_same_the_cheapest_alone_is_judged()
    {
        using var folder = new TemporaryFolder();
        var catalog = Catalog(23, folder, varied: false);
        var places = catalog.IdsOf("vehicle").Select(catalog.Find).OfType<Vehicle>()
            .SelectMany(v => v.Positions.Select(p => (v, p))).ToList();
        var (sieved, all) = (Asked(sieved: true), Asked(sieved: false));
        Assert.True(sieved * 5 < all, $"{sieved} of {all}");

        int Asked(bool sieved) => new PairFinder(PairRules.Of(Rules), ChartSlice.Work.ToHashSet(StringComparer.Ordinal), places,
            new Mounts(catalog), sieved).Candidates(catalog.IdsOf("driver").Select(catalog.Find).OfType<Driver>().First(d => !d.IsTweeter));
    }

    [Fact]
    public void A_row_that_is_not_kept_keeps_no_driver_alive()
    {
        using var folder = new TemporaryFolder();
        var catalog = PartsCatalog.Open([RepositoryRoot.Of("catalog")], new ProblemList());
        var result = Chart(catalog, most: 0, sieved: true);
        var rows = result.Rows.Take(50).ToList();
        var drivers = rows.ConvertAll(r => new WeakReference(r.Driver));
        _ = result.Rows[^1].Driver;
        GC.Collect();
        Assert.True(drivers.Count(d => d.IsAlive) <= 1, $"{drivers.Count(d => d.IsAlive)} drivers are alive");
        GC.KeepAlive(rows);
    }

    // The repository's catalog as it is or shaken, with every universal spacer ten times, each dearer than the one before; varied, one
    // length of each copy is half as long, another one each time.
    private static PartsCatalog Catalog(int seed, TemporaryFolder folder, bool varied)
    {
        if (seed > 0)
            ShakenCatalog.Open(seed, folder);
        var root = seed > 0 ? folder.Path : RepositoryRoot.Of("catalog");
        foreach (var path in Directory.GetFiles(Path.Combine(root, "adapters"), "*.yaml").Order(StringComparer.Ordinal))
        {
            var (id, text) = (Path.GetFileNameWithoutExtension(path), File.ReadAllText(path));
            for (var i = 0; i < 10 && !text.Contains("{vehicle: ", StringComparison.Ordinal); i++)
            {
                var copy = text.Replace($"id: {id}", $"id: {id}-as-{i}", StringComparison.Ordinal)
                    .Replace("price: ", $"price: {i + 1}", StringComparison.Ordinal);
                folder.Write($"adapters/{id}-as-{i}.yaml", varied ? Halved(copy, i) : copy);
            }
        }
        return PartsCatalog.Open(seed > 0 ? [folder.Path] : [root, folder.Path], new ProblemList());
    }

    private static string Halved(string text, int which)
    {
        var lengths = Length().Matches(text);
        return lengths.Count == 0 ? text : Length().Replace(text, m => m.Index != lengths[which % lengths.Count].Index ? m.Value
            : (double.Parse(m.Groups["number"].Value, CultureInfo.InvariantCulture) / 2).ToString(CultureInfo.InvariantCulture) + " mm");
    }

    [GeneratedRegex(@"(?<=: )(?<number>\d+(?:\.\d+)?) mm\b", RegexOptions.ExplicitCapture)]
    private static partial Regex Length();

    private static ChartResult Chart(PartsCatalog catalog, int most, bool sieved)
    {
        var problems = new ProblemList();
        var result = PairChart.Of(catalog, Rules, new ChartSlice { Vehicles = ["tansy-hatch"] }, problems, most: most, sieved: sieved);
        Assert.Empty(problems.All);
        return result!;
    }

    private static string Written(PartsCatalog catalog, string format, int most, bool sieved)
    {
        using var text = new StringWriter { NewLine = "\n" };
        ChartReports.Find(format)!.Write(Chart(catalog, most, sieved), ReportOptions.Default, text);
        return text.ToString();
    }
}
