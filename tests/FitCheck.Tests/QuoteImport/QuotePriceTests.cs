using FitCheck.Builds;
using FitCheck.Catalog;
using FitCheck.Facts;
using FitCheck.Foundation.Files;
using FitCheck.Foundation.Problems;
using FitCheck.QuoteImport;
using FitCheck.Rules;
using FitCheck.Schemas;
using FitCheck.Yaml;
using Xunit;

namespace FitCheck.Tests.QuoteImport;

/// <summary>
/// What a list says of prices. The catalog has a pair of orrin-c165 for 89.00 EUR, a pair of spacer-165-tansy-18 for 32.00 EUR and one
/// kestow-d4-60 for 249.00 EUR.
/// </summary>
public sealed class QuotePriceTests
{
    private static readonly PartsCatalog Catalog = PartsCatalog.Open([RepositoryRoot.Of("catalog")], new ProblemList());
    private static readonly RuleSet Rules = RuleSet.Load([RepositoryRoot.Of("rules")], FactRegistry.Declarations, new ProblemList());

    [Theory]
    // A unit price, a total, both; a discount makes the total less, and the total is what is paid: 2 packs for 160 are 80 each.
    [InlineData("part;qty;price\norrin-c165;1;79,00", "1 at 79.00 EUR")]
    [InlineData("part;qty;total\norrin-c165;2;158,00", "2 at 79.00 EUR")]
    [InlineData("part;qty;price;total\norrin-c165;2;79,00;158,00", "2 at 79.00 EUR")]
    [InlineData("part;qty;price;total\norrin-c165;2;89,00;160,00", "2 at 80.00 EUR")]
    // Signs and codes of the catalog's currency, in the cell or the heading.
    [InlineData("part;qty;price\norrin-c165;1;79,00 €", "1 at 79.00 EUR")]
    [InlineData("part;qty;price (EUR)\norrin-c165;1;79", "1 at 79.00 EUR")]
    [InlineData("part;qty;price\norrin-c165;1;EUR 79.-", "1 at 79.00 EUR")]
    // Thousands and hundredths: one cell that can be read in one way only decides for the list.
    [InlineData("part;qty;price\nkestow-d4-60;1;1.249,00 €", "1 at 1249.00 EUR")]
    [InlineData("part;qty;price\nkestow-d4-60;1;1'249.00 €", "1 at 1249.00 EUR")]
    [InlineData("part;qty;price\nkestow-d4-60;1;1,249 €\norrin-c165;1;79.50", "1 at 1249.00 EUR")]
    [InlineData("part;qty;price\nkestow-d4-60;1;249,000\norrin-c165;1;79,50", "1 at 249.00 EUR")]
    // 18.50 is about half of 32.00, the price of a pair: five pieces are no packs, four called pieces are two packs.
    [InlineData("part;qty;price\nspacer-165-tansy-18;4 pcs;16.00", "2 at 32.00 EUR")]
    [InlineData("part;qty;price\nspacer-165-tansy-18;4;16.00", "4 at 16.00 EUR")]
    [InlineData("part;qty;price\nspacer-165-tansy-18;5 pcs;16.00", "5 at 16.00 EUR")]
    // The same part twice: 1 pack at 80 and 3 at 88 are 86 in the middle.
    [InlineData("part;qty;price\norrin-c165;1;80.00\norrin-c165;3;88.00", "4 at 86.00 EUR")]
    // Nothing, and what is no price.
    [InlineData("part;qty\norrin-c165;1", "1")]
    [InlineData("part;qty;price\norrin-c165;1;on request", "1")]
    public void A_pack_costs(string list, string expected)
    {
        var line = Build(list).Build.Quote![0];
        Assert.Equal(expected, line.Price is null ? $"{line.Packs}" : $"{line.Packs} at {line.Price}");
    }

    [Theory]
    [InlineData("part;qty;price\norrin-c165;1;£59.00", "59.00 GBP", "prices in GBP are not compared")]
    [InlineData("part;qty;price\norrin-c165;1;590 kr", "", "prices in kr are not compared")]
    [InlineData("part;qty;price\norrin-c165;1;990,00", "", "no currency is written, and these prices are far from the catalog's")]
    // 24,900 may be 24.90 or 24900; neither is near 249.00.
    [InlineData("part;qty;price\nkestow-d4-60;1;24,900", "", "nothing decides what these prices are")]
    [InlineData("part;qty;price\nspacer-165-tansy-18;4 pcs;16.00", "32.00 EUR", "the 4 pieces are taken for 2 packs of 2")]
    [InlineData("part;qty;price\nspacer-165-tansy-18;1;16.00", "16.00 EUR", "about the price of a piece; 1 is taken for packs")]
    public void What_is_not_compared_or_not_sure_is_told(string list, string price, string told)
    {
        var (build, problems) = Build(list);

        Assert.Equal(price, build.Quote![0].Price?.ToString() ?? "");
        Assert.Contains(problems, p => p.Severity == Severity.Warning && p.Message.Contains(told, StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("1,234.50", "1234.50", null)]
    [InlineData("1.234,50", null, "1234.50")]
    [InlineData("1 234,50 zł", null, "1234.50")]
    [InlineData("1,000", "1000", "1.000")]
    [InlineData("12,50", null, "12.50")]
    [InlineData("12.5", "12.5", null)]
    [InlineData("-5,80", null, "-5.80")]
    [InlineData("1,2,3", null, null)]
    [InlineData("45mm", null, null)]
    public void A_number_is_read_in_each_way_in_which_it_can_be(string cell, string? point, string? comma)
    {
        var price = PriceText.Of(cell);
        Assert.Equal((Number(point), Number(comma)), (price?.WithPoint, price?.WithComma));

        static decimal? Number(string? text) => text is null ? null
            : decimal.Parse(text, System.Globalization.CultureInfo.InvariantCulture);
    }

    private static (Build Build, IReadOnlyList<Problem> Told) Build(string csv)
    {
        var outcome = ImportQuote.Of(QuoteFile.Read("quote.csv", System.Text.Encoding.UTF8.GetBytes(csv), new ProblemList()), "tansy-hatch",
            new ImportOptions(), null, Catalog, Rules, new ProblemList());
        var problems = new ProblemList();
        var root = YamlReader.Read(new SourceText("build.yaml", outcome.Build!), problems)!;
        new SchemaCheck().Check("build", root, problems);
        var build = BuildReader.Read(root, Catalog, problems)!;
        Assert.Empty(problems.Sorted());
        return (build, outcome.Problems);
    }
}
