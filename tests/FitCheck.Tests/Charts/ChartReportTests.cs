using FitCheck.Catalog;
using FitCheck.Charts;
using FitCheck.Facts;
using FitCheck.Findings;
using FitCheck.Foundation.Problems;
using FitCheck.Reports.Charts;
using FitCheck.Reports.Format;
using FitCheck.Rules;
using NJsonSchema;
using Xunit;

namespace FitCheck.Tests.Charts;

public sealed class ChartReportTests
{
    private const string Script = "<script>alert(1)</script>";

    private static readonly RuleSet Rules = RuleSet.Load([RepositoryRoot.Of("rules")], FactRegistry.Declarations, new ProblemList());
    private static readonly PartsCatalog Parts = PartsCatalog.Open([RepositoryRoot.Of("catalog")], new ProblemList());

    [Fact]
    public async Task Json_keeps_the_published_schema()
    {
        var schema =
            await JsonSchema.FromJsonAsync(
                File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "reports", "schema", "chart.schema.json")));
        Assert.Empty(schema.Validate(Written("json", Chart(new ChartSlice { Vehicles = ["tansy-hatch"] }))));
        Assert.NotEmpty(
            schema.Validate(
                Written("json", Chart(new ChartSlice { Vehicles = ["tansy-hatch"] }))
                    .Replace("\"pass\"", "\"good\"", StringComparison.Ordinal)));
    }

    [Theory]
    [InlineData("=HYPERLINK(\"x\")", "'=HYPERLINK(\"x\")")]
    [InlineData("+1", "'+1")]
    [InlineData("@cmd", "'@cmd")]
    [InlineData("-2 mm is too little", "'-2 mm is too little")]
    [InlineData("\t=1", "'\t=1")]
    [InlineData("Orrin W165", "Orrin W165")]
    [InlineData("", "")]
    public void A_spreadsheet_runs_no_text_as_a_formula(string text, string harmless) => Assert.Equal(harmless, ChartCsv.Harmless(text));

    [Fact]
    public void Csv_has_a_row_for_each_pair_and_quotes_what_holds_a_comma()
    {
        var result = Chart(new ChartSlice { Vehicles = ["tansy-hatch"], Positions = ["front-door-left"] });
        var lines = Written("csv", result).Split('\n', StringSplitOptions.RemoveEmptyEntries);
        Assert.Equal(result.Rows.Count + 1, lines.Length);
        Assert.StartsWith("vehicle,position,role,driver,", lines[0], StringComparison.Ordinal);
        Assert.Contains(lines, l => l.Contains(",\"", StringComparison.Ordinal));
    }

    [Fact]
    public void A_hostile_name_reaches_neither_browser_nor_terminal()
    {
        using var folder = new TemporaryFolder();
        folder.Write("drivers/orrin-w165-4.yaml", File.ReadAllText(RepositoryRoot.Of("catalog", "drivers", "orrin-w165-4.yaml"))
            .Replace("name: Orrin W165-4 woofer", $"name: \"{Script}\\e[31m\"", StringComparison.Ordinal));
        var result = Chart(new ChartSlice { Vehicles = ["tansy-hatch"] },
            PartsCatalog.Open([RepositoryRoot.Of("catalog"), folder.Path], new ProblemList()));
        var html = Written("html", result);
        Assert.DoesNotContain(Script, html, StringComparison.OrdinalIgnoreCase);
        Assert.Contains("&lt;script&gt;alert(1)", html, StringComparison.Ordinal);
        Assert.Equal(html.IndexOf("<script>", StringComparison.Ordinal), html.LastIndexOf("<script>", StringComparison.Ordinal));
        Assert.DoesNotContain('\u001b', Written("text", result));
    }

    [Fact]
    public void The_page_fetches_nothing()
    {
        var html = Written("html", Chart(new ChartSlice { Vehicles = ["tansy-hatch"] }));
        foreach (var word in new[] { "http:", "https:", "@import", "src=", "<link", "<iframe", "fetch(", "import(" })
            Assert.DoesNotContain(word, html, StringComparison.OrdinalIgnoreCase);
    }

    [Fact]
    public void A_slice_holds_what_is_asked_for_and_nothing_else()
    {
        var result =
            Chart(new ChartSlice
            {
                Vehicles = ["tansy-hatch", "ostler-pickup"],
                Positions = ["front-door-left"],
                Sizes = ["165 mm"],
                Statuses = [Status.Pass, Status.Warn]
            });
        Assert.NotEmpty(result.Rows);
        Assert.All(result.Rows,
            r => Assert.True(
                r.Vehicle.Id is "tansy-hatch" or "ostler-pickup" && r.Position.Id == "front-door-left"
                    && r.Driver.Size?.ToString() == "165 mm" && r.Status <= Status.Warn));
    }

    [Fact]
    public void A_wrong_word_gets_the_nearest_right_one_and_all_are_told()
    {
        var problems = new ProblemList();
        PairChart.Of(Parts, Rules,
            new ChartSlice { Vehicles = ["tansy-hatcj"], Positions = ["front-dor-left"], Sizes = ["165", "999 mm"] }, problems);
        var told = problems.All.Select(p => p.ToString()).ToList();
        Assert.Equal(4, told.Count);
        Assert.Contains("did you mean `tansy-hatch`?", told[0], StringComparison.Ordinal);
        Assert.Contains("did you mean `front-door-left`?", told[1], StringComparison.Ordinal);
        Assert.Contains("such as `165 mm`", told[2], StringComparison.Ordinal);
        Assert.Contains("there are 20, 22, 25", told[3], StringComparison.Ordinal);
    }

    // By hand: the MDF ring has no holes and no exit for the cable, so it is a choice only where drilling and trimming are accepted.
    [Fact]
    public void Work_is_told_where_it_is_accepted_and_never_chosen_where_it_is_not()
    {
        var slice = new ChartSlice { Vehicles = ["tansy-hatch"], Positions = ["front-door-left"], Drivers = ["quillon-q165-4"] };
        var accepted = Assert.Single(Chart(slice).Rows);
        var refused = Assert.Single(Chart(slice with { Accepts = [] }).Rows);
        Assert.Equal("spacer-165-flat-20", accepted.Mount?.Id);
        Assert.Contains(accepted.Work, w => w.Rule == "mount/blank-spacer-to-drill");
        Assert.Contains(accepted.Work, w => w.Rule == "mount/cable-exit-to-cut");
        Assert.NotEqual("spacer-165-flat-20", refused.Mount?.Id);
        Assert.Empty(refused.Work);
    }

    [Fact]
    public void The_same_chart_is_the_same_text_on_any_number_of_threads()
    {
        var once = Written("json", Chart(new ChartSlice { Vehicles = ["tansy-hatch"] }));
        Assert.Equal(once, Written("json", Chart(new ChartSlice { Vehicles = ["tansy-hatch"] })));
    }

    private static ChartResult Chart(ChartSlice slice, PartsCatalog? parts = null)
    {
        var problems = new ProblemList();
        var result = PairChart.Of(parts ?? Parts, Rules, slice, problems);
        Assert.Empty(problems.All);
        return result!;
    }

    private static string Written(string format, ChartResult result)
    {
        using var text = new StringWriter { NewLine = "\n" };
        ChartReports.Find(format)!.Write(result, ReportOptions.Default, text);
        return text.ToString();
    }
}
