using System.Net;
using System.Text.RegularExpressions;
using FitCheck.Evaluation;
using FitCheck.Reports.Format;
using FitCheck.Reports.Markdown;
using Markdig;
using Xunit;

namespace FitCheck.Tests.Reports;

/// <summary>Rendered by a Markdown library that the program doesn't use, with the extensions of the site where comments are read.</summary>
public partial class MarkdownTests
{
    private static readonly MarkdownPipeline Site = new MarkdownPipelineBuilder().UsePipeTables().UseTaskLists().UseAutoLinks()
        .UseEmphasisExtras().Build();

    public static TheoryData<string> Hostile => HostileTexts.All;

    [Fact]
    public void The_verdict_comes_first_then_what_to_do()
    {
        var text = ReportSnapshotTests.Written("markdown", SampleResult.Full);
        string[] order = ["### **FAIL**", "**This build does not go together", "**What to change**", "**Measure first**", "<details>"];

        Assert.Equal(order.Select(o => text.IndexOf(o, StringComparison.Ordinal)).Order(),
            order.Select(o => text.IndexOf(o, StringComparison.Ordinal)));
        Assert.DoesNotContain("\r", text, StringComparison.Ordinal);
    }

    [Fact]
    public void What_is_folded_is_closed_again()
    {
        var text = ReportSnapshotTests.Written("markdown", SampleResult.Full);
        Assert.Equal(Regex.Count(text, "<details>"), Regex.Count(text, "</details>"));
    }

    [Fact]
    public void A_great_many_builds_still_fit_into_a_comment()
    {
        var text = ReportSnapshotTests.Written("markdown",
            new CheckResult("", "", [.. Enumerable.Range(0, 500).Select(i => SampleResult.Build with { Name = $"Build {i}" })]));

        Assert.InRange(text.Length, 1, 65_536); // the most that a comment on GitHub may have
        Assert.Contains("### FitCheck: 500 of 500 builds do not go together as planned", text, StringComparison.Ordinal);
        Assert.Contains("are left out to keep this short", text, StringComparison.Ordinal);
    }

    [Fact]
    public void A_great_many_problems_still_fit_into_a_comment()
    {
        var text = ReportSnapshotTests.Written("markdown", new LintResult([.. Enumerable.Repeat(SampleLint.Full.Problems[1], 2000)], 1));

        Assert.InRange(text.Length, 1, 65_536);
        Assert.Contains("2000 errors", text, StringComparison.Ordinal);
        Assert.Contains("left out to keep this short", text, StringComparison.Ordinal);
    }

    [Theory]
    [MemberData(nameof(Hostile))]
    public void A_hostile_text_is_only_text(string text)
    {
        var html = Html($"- {MarkdownText.Plain(text)}");
        var seen = string.Concat(
            text.ReplaceLineEndings(" ").Replace('\t', ' ').Select(c => char.IsControl(c) || c >= '\uFFFE' ? '\uFFFD' : c));

        if (!text.Any(char.IsSurrogate))
            Assert.Equal($"<ul><li>{seen.Trim()}</li></ul>", Shown(html));
        Assert.DoesNotMatch("[@#][A-Za-z0-9]", WebUtility.HtmlDecode(html));
    }

    [Theory]
    [MemberData(nameof(Hostile))]
    public void A_hostile_text_brings_no_element_into_a_report(string text)
    {
        var reports = new[]
        {
            ReportSnapshotTests.Written("markdown", EscapingTests.Everywhere(text)),
            ReportSnapshotTests.Written("markdown",
                new CheckResult("", "", [.. EscapingTests.Everywhere(text).Builds, SampleResult.Build])),
            ReportSnapshotTests.Written("markdown", EscapingTests.Everywhere(text), ReportOptions.Default with { AsExpected = true }),
            ReportSnapshotTests.Written("markdown", SampleLint.Everywhere(text)),
        };

        Assert.All(reports,
            r => Assert.DoesNotMatch("<(?!/?(h3|p|strong|em|ul|li|br|code|table|thead|tbody|tr|th|td|details|summary|input)[ />])",
                Html(r)));
        Assert.All(reports, r => Assert.Equal(Regex.Count(Html(r), "<details>"), Regex.Count(Html(r), "</details>")));
    }

    [Fact]
    public void Words_of_a_file_are_set_as_code() => Assert.Equal("no key `drivr`, or \\*", MarkdownText.Prose("no key `drivr`, or *"));

    private static string Html(string markdown) => Markdown.ToHtml(markdown, Site);

    private static string Shown(string html) =>
        WebUtility.HtmlDecode(LineEnd().Replace(html, "")).Replace("\u200b", "", StringComparison.Ordinal);

    [GeneratedRegex(@"\n")]
    private static partial Regex LineEnd();
}
