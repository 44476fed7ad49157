using System.Text.RegularExpressions;
using FitCheck.Evaluation;
using FitCheck.Findings;
using Xunit;

namespace FitCheck.Tests.Reports;

public class HtmlStructureTests
{
    private static readonly string Html = ReportSnapshotTests.Written("html",
        new CheckResult("fitcheck 0.1.0", "sha256:0", [SampleResult.Build, SampleResult.Build]));

    [Fact]
    public void Ids_are_unique_in_a_page_of_several_builds()
    {
        var ids = Ids();
        Assert.Equal(ids.Count, ids.Distinct(StringComparer.Ordinal).Count());
    }

    [Fact]
    public void Every_link_and_reference_leads_somewhere()
    {
        var ids = Ids().ToHashSet(StringComparer.Ordinal);
        var used = Regex.Matches(Html, "href=\"#([^\"]+)\"|url\\(#([^)]+)\\)|aria-labelledby=\"([^\"]+)\"")
            .SelectMany(m => m.Groups.Values.Skip(1).SelectMany(g => g.Value.Split(' ', StringSplitOptions.RemoveEmptyEntries)));
        Assert.DoesNotContain(used, id => !ids.Contains(id));
    }

    [Fact]
    public void Headings_descend_without_a_gap()
    {
        var levels = Regex.Matches(Html, "<h([1-6])[ >]").Select(m => m.Groups[1].Value[0] - '0').ToList();
        Assert.Equal(1, levels[0]);
        Assert.All(levels.Zip(levels.Skip(1)), pair => Assert.True(pair.Second <= pair.First + 1));
    }

    [Fact]
    public void Every_element_that_opens_closes()
    {
        var open = new Stack<string>();
        foreach (Match tag in Regex.Matches(
            Html[Html.IndexOf("<body>", StringComparison.Ordinal)..Html.IndexOf("</html>", StringComparison.Ordinal)],
            "<(/?)([a-z][a-z0-9]*)[^<>]*?(/?)>"))
        {
            if (tag.Groups[1].Length > 0)
                Assert.Equal(tag.Groups[2].Value, open.Pop());
            else if (tag.Groups[3].Length == 0)
                open.Push(tag.Groups[2].Value);
        }
        Assert.Empty(open);
    }

    [Fact]
    public void A_status_is_a_word_beside_every_shape() =>
        Assert.DoesNotMatch("class=\"icon\"[^>]*>(?:(?!</svg>).)*</svg></span>", Html);

    [Fact]
    public void A_build_of_a_thousand_findings_is_told_whole()
    {
        var finding = SampleResult.Build.Findings[0];
        var many = SampleResult.Build
            with
        { Findings = [.. Enumerable.Range(0, 1500).Select(i => finding with { Message = $"Finding {i}." })] };
        Assert.Contains("Finding 1499.", ReportSnapshotTests.Written("html", new CheckResult("fitcheck 0.1.0", "sha256:0", [many])),
            StringComparison.Ordinal);
    }

    private static List<string> Ids() => [.. Regex.Matches(Html, " id=\"([^\"]+)\"").Select(m => m.Groups[1].Value)];
}
