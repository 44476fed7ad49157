using FitCheck.Builds;
using FitCheck.Catalog;
using FitCheck.Lists;
using FitCheck.Reports.Format;
using FitCheck.Reports.Lists;
using FitCheck.Reports.Wording;
using Xunit;

namespace FitCheck.Tests.Lists;

/// <summary>
/// What is there already costs nothing, and a quote's own price is counted instead of the catalog's: 89.00 EUR for a pair of orrin-c165,
/// 32.00
/// EUR for a pair of spacer-165-tansy-18. The sums are worked out by hand.
/// </summary>
public sealed class OwnPriceTests
{
    private const string Coaxials = """
        kind: build
        name: Coaxials
        vehicle: tansy-hatch
        budget: 200.00 EUR
        fit:
          - at: [front-door-left, front-door-right]
            driver: orrin-c165
            adapter: spacer-165-tansy-18

        """;

    private const string OwnRing = """
        id: own-mdf
        kind: adapter
        owned: true
        name: Own ring of MDF
        provenance: measured
        thickness: 18 mm
        opening: 146 mm
        fits: any

        """;

    [Fact]
    public void The_catalog_s_prices_are_counted_where_no_quote_has_any() =>
        Assert.Equal("121.00 EUR", Total(Listed.Of(Coaxials))); // 89 + 32

    [Fact]
    public void A_quote_s_own_price_is_counted_and_the_difference_told()
    {
        var list = Listed.Of(Coaxials + "quote:\n  - {part: orrin-c165, packs: 1, price: 79.50 EUR}\n");

        Assert.Equal("111.50 EUR", Total(list)); // 79.50 + 32
        Assert.Equal("quoted at 79.50 EUR a pack, 9.50 EUR less than in the catalog (89.00 EUR)",
            ListPrices.Difference(list.Line("orrin-c165")));
        Assert.Null(ListPrices.Difference(list.Line("spacer-165-tansy-18")));
        Assert.Equal("The sum is made of the quote's own prices for 1 part and of the catalog's for 1. That is 9.50 EUR less than by the "
            + "catalog's.", ListPrices.Counted(list.Lines));
        Assert.All(ListReports.Formats.Except(["csv", "json"]), f => Assert.Contains("9.50 EUR less than in the catalog",
            string.Join(' ', Written(f, list).Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries)), StringComparison.Ordinal));
        Assert.Contains("\"quote_price\": 79.50", Written("json", list), StringComparison.Ordinal);
    }

    [Theory]
    // 86.00 is the middle of 1 pack at 80 and 3 at 88.
    [InlineData("[{part: orrin-c165, packs: 1, price: 80.00 EUR}, {part: orrin-c165, packs: 3, price: 88.00 EUR}]", "118.00 EUR")]
    // Another currency is kept, and not counted.
    [InlineData("[{part: orrin-c165, packs: 1, price: 59.00 GBP}]", "121.00 EUR")]
    [InlineData("[{part: orrin-c165, packs: 1, price: 89.00 EUR}]", "121.00 EUR")]
    public void The_total_by(string quote, string total) => Assert.Equal(total, Total(Listed.Of($"{Coaxials}quote: {quote}\n")));

    [Fact]
    public void Another_currency_is_told_and_not_compared() =>
        Assert.Equal("quoted at 59.00 GBP a pack, which is not compared; counted is the catalog's price in EUR",
            ListPrices.Difference(Listed.Of(Coaxials + "quote: [{part: orrin-c165, packs: 1, price: 59.00 GBP}]\n").Line("orrin-c165")));

    [Fact]
    public void An_entry_that_is_owned_has_no_price_and_is_not_bought()
    {
        var list = Listed.Of(Coaxials.Replace("spacer-165-tansy-18", "own-mdf", StringComparison.Ordinal),
            ("adapters/own-mdf.yaml", OwnRing));

        var line = list.Line("own-mdf");
        Assert.Equal((0, 2, true), (line.Packs, line.Needed, line.IsOwned));
        Assert.Equal("89.00 EUR", Total(list));
        var row = Assert.Single(Written("text", list).Split('\n'), l => l.Contains("Own ring of MDF", StringComparison.Ordinal));
        Assert.Matches(@"^  nothing +Own ring of MDF +– +owned$", row);
        Assert.Contains("| nothing | – | – | owned |", Written("markdown", list), StringComparison.Ordinal);
    }

    [Fact]
    public void A_part_that_the_build_says_is_there_is_not_bought_either_and_superfluous_on_a_quote()
    {
        var list = Listed.Of(Coaxials + "owned: [orrin-c165]\n");
        Assert.Equal("32.00 EUR", Total(list));
        Assert.Equal("owned", list.Line("orrin-c165").Availability);
        var told = Checked(Coaxials + "owned: [orrin-c165]\n"
            + "quote: [{part: orrin-c165, packs: 1}, {part: spacer-165-tansy-18, packs: 1}]\n");
        Assert.Contains(told, f => f is { Rule: "list/more-than-needed", Status: Findings.Status.Warn });
        Assert.DoesNotContain(told, f => f is { Rule: "list/missing-from-quote", Status: Findings.Status.Fail });
    }

    [Fact]
    public void What_the_quote_asks_is_held_against_the_budget() =>
        Assert.Contains(Checked(Coaxials.Replace("200.00", "100.00", StringComparison.Ordinal)
            + "quote: [{part: orrin-c165, packs: 1, price: 60.00 EUR}, {part: spacer-165-tansy-18, packs: 1}]\n"),
            f => f is { Rule: "list/over-budget", Status: Findings.Status.Pass }); // 60 + 32 = 92

    [Fact]
    public void An_owned_id_that_is_no_part_is_told() =>
        Assert.Contains(Opened.Check([Evaluation.BuildSource.Text("b.yaml", Coaxials + "owned: [orrin-c156]\n")]).Problems,
            p => p.ToString() == "b.yaml:9:9: error: no part `orrin-c156` in the catalog; did you mean `orrin-c165`?");

    [Theory]
    [InlineData("price: 9.00 EUR\n", "3 keys are missing here; add")]
    [InlineData("", "4 keys are missing here; add")]
    public void Without_owned_the_keys_of_what_is_bought_are_required(string more, string expected)
    {
        using var folder = new TemporaryFolder();
        folder.Write("adapters/own-mdf.yaml", OwnRing.Replace("owned: true\n", more, StringComparison.Ordinal));
        var told = Lint.Run([], new Evaluation.Folders([RepositoryRoot.Of("catalog"), folder.Path], [RepositoryRoot.Of("rules")]),
            Foundation.ValidationCache.Nothing).Problems.Where(p => p.At.File.EndsWith("own-mdf.yaml", StringComparison.Ordinal));

        var message = Assert.Single(told).Message;
        Assert.StartsWith(expected, message, StringComparison.Ordinal);
        Assert.Contains("`availability: current  # one of current, to-order, discontinued`", message, StringComparison.Ordinal);
        Assert.EndsWith("; or instead of `source`, `pack`, `price`, `availability`: `owned: true`", message, StringComparison.Ordinal);
    }

    private static readonly Lazy<Checker> Checker = new(() => FitCheck.Checker.Open(new CheckerOptions
    {
        Catalogs = [RepositoryRoot.Of("catalog")],
        Rules = [RepositoryRoot.Of("rules")],
    }).Checker!);

    private static Checker Opened => Checker.Value;

    private static IReadOnlyList<Findings.Finding> Checked(string build) =>
        Opened.Check([Evaluation.BuildSource.Text("b.yaml", build)]).Result!.Builds[0].Findings;

    private static string Total(PartsList list) => Assert.Single(list.Totals).ToString();

    private static string Written(string format, PartsList list)
    {
        using var text = new StringWriter { NewLine = "\n" };
        ListReports.Find(format)!.Write(new ListResult("fitcheck", "0", Tax.NotAsked, [list]), ReportOptions.Default, text);
        return text.ToString();
    }
}
