using FitCheck.Evaluation;
using FitCheck.Findings;
using FitCheck.Reports;
using FitCheck.Reports.Format;
using FitCheck.Reports.Sheet;
using FitCheck.Reports.Wording;
using Xunit;

namespace FitCheck.Tests.Reports;

/// <summary>A verdict that holds only because somebody waived what is worse says so first, in every format that has a headline.</summary>
public class HeadlineTests
{
    private static readonly Finding Passing = SampleResult.Build.Findings.First(f => f.Status == Status.Pass && f.Waived is null);
    private static readonly Finding Warning = SampleResult.Build.Findings.First(f => f.Status == Status.Warn && f.Waived is null);
    private static readonly Finding Failing = SampleResult.Build.Findings.First(f => f.Status == Status.Fail && f.Waived is null);

    [Fact]
    public void A_verdict_that_rests_on_waivers_says_so_first()
    {
        var build = Build(Passing, Failing with { Waived = "agreed", Title = "Too deep" },
            Warning with { Waived = "agreed", Title = "Too near" });
        Assert.Equal("On the strength of 2 waivers (Too deep; Too near), this build goes together: the one check that applies passes.",
            Headline.Of(build));
    }

    [Fact]
    public void One_waiver_of_several_findings_is_one()
    {
        var build = Build(Passing, Failing with { Waived = "agreed", Title = "Too deep", Position = "a" },
            Failing with { Waived = "agreed", Title = "Too deep", Position = "b" });
        Assert.StartsWith("On the strength of 1 waiver (Too deep),", Headline.Of(build), StringComparison.Ordinal);
    }

    [Fact]
    public void More_than_three_are_counted() => Assert.StartsWith("On the strength of 5 waivers (A; B; C; and 2 more),",
        Headline.Of(Build([Passing, .. "ABCDE".Select(c => Failing with { Rule = $"x/{c}", Title = c.ToString(), Waived = "agreed" })])),
        StringComparison.Ordinal);

    // A waived warning beside another one changes nothing, nor does what is waived beside a failure.
    [Fact]
    public void A_verdict_that_would_be_the_same_says_nothing_of_it_first()
    {
        Assert.Equal("This build goes together, with 1 point to look at, and 1 finding is waived.",
            Headline.Of(Build(Warning, Warning with { Title = "Other", Waived = "agreed" })));
        Assert.StartsWith("This build does not go together",
            Headline.Of(Build(Failing, Failing with { Title = "Other", Waived = "agreed" })), StringComparison.Ordinal);
        Assert.Equal("Nothing is left to judge: every finding on this build is waived.",
            Headline.Of(Build(Failing with { Waived = "agreed" })));
    }

    [Theory]
    [InlineData("text")]
    [InlineData("html")]
    [InlineData("markdown")]
    [InlineData("junit")]
    [InlineData("github")]
    [InlineData("sarif")]
    public void Every_format_with_a_headline_says_it(string format)
    {
        using var text = new StringWriter { NewLine = "\n" };
        ReportList.Find(format)!.Write(Result(Waived), ReportOptions.Default, text);
        Assert.Contains("On the strength of 1 waiver (Too deep), this build",
            string.Join(' ', text.ToString().Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries)), StringComparison.Ordinal);
        using var none = new StringWriter { NewLine = "\n" };
        ReportList.Find(format)!.Write(Result(Build(Passing)), ReportOptions.Default, none);
        Assert.DoesNotContain("strength", none.ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public void Json_has_the_rules_and_the_sheet_the_sentence()
    {
        using var json = new StringWriter();
        ReportList.Find("json")!.Write(Result(Waived), ReportOptions.Default, json);
        Assert.Equal([Failing.Rule],
            System.Text.Json.Nodes.JsonNode.Parse(json.ToString())!["builds"]![0]!["rests_on_waivers"]!.AsArray().Select(n => (string)n!));
        using var sheet = new StringWriter();
        SheetReport.Write(Result(Waived), ReportOptions.Default, sheet);
        Assert.Contains("On the strength of 1 waiver (Too deep), this build goes together", sheet.ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public void A_comparison_and_a_table_of_many_say_it_too()
    {
        Assert.Equal(["pass", "pass, on the strength of 1 waiver"],
            BuildComparison.Of(Result(Build(Passing), Waived))!.Rows.Single(r => r.Label == "Verdict").Cells);
        using var text = new StringWriter { NewLine = "\n" };
        ReportList.Find("markdown")!.Write(Result(Build(Passing), Waived), ReportOptions.Default, text);
        Assert.Contains("all 2 builds go together, 1 of them on the strength of waivers", text.ToString(), StringComparison.Ordinal);
    }

    private static BuildResult Waived => Build(Passing, Failing with { Waived = "agreed", Title = "Too deep" });

    private static BuildResult Build(params IReadOnlyList<Finding> findings) =>
        SampleResult.Build with { Findings = findings, RuleChanges = [], Remarks = [] };

    private static CheckResult Result(params BuildResult[] builds) => SampleResult.Full with { Builds = builds };
}
