using FitCheck.Evaluation;
using FitCheck.Findings;
using FitCheck.Foundation.Problems;
using FitCheck.Reports.Format;
using Xunit;

namespace FitCheck.Tests.Reports;

public class EscapingTests
{
    private const string Script = "<script>alert(1)</script>";
    private const string Hostile = Script + "\" onload=\"alert(2) ' </style></svg><img src=x onerror=alert(3)> & \u0007\u001b[31m";

    [Fact]
    public void A_hostile_name_reaches_no_browser()
    {
        var html = ReportSnapshotTests.Written("html", Everywhere(Hostile));
        Assert.DoesNotContain("<script", html, StringComparison.OrdinalIgnoreCase);
        Assert.DoesNotContain("<img", html, StringComparison.OrdinalIgnoreCase);
        // Within a tag there is no attribute of theirs; as text between tags it does no harm.
        Assert.DoesNotMatch("<[a-z][^<>]*onload", html);
        Assert.DoesNotContain('\u0007', html);
        Assert.Contains("&lt;script&gt;alert(1)&lt;/script&gt;", html, StringComparison.Ordinal);
        // The style element is closed once: where the page closes it.
        Assert.Equal(html.IndexOf("</style>", StringComparison.Ordinal), html.LastIndexOf("</style>", StringComparison.Ordinal));
        // Encoded once, not twice.
        Assert.DoesNotContain("&amp;lt;", html, StringComparison.Ordinal);
    }

    [Fact]
    public void A_hostile_name_does_not_steer_the_terminal()
    {
        var text = ReportSnapshotTests.Written("text", Everywhere(Hostile));
        Assert.DoesNotContain('\u001b', text);
        Assert.DoesNotContain('\u0007', text);
    }

    [Fact]
    public void The_page_fetches_nothing_and_runs_nothing()
    {
        var html = ReportSnapshotTests.Written("html", SampleResult.Full);
        foreach (var word in new[] { "<script", "http:", "https:", "@import", "src=", "<link", "<iframe" })
            Assert.DoesNotContain(word, html, StringComparison.OrdinalIgnoreCase);
    }

    [Fact]
    public void Colour_appears_only_when_asked_for()
    {
        Assert.DoesNotContain('\u001b', ReportSnapshotTests.Written("text", SampleResult.Full));
        Assert.Contains("\u001b[1;31mFAIL",
            ReportSnapshotTests.Written("text", SampleResult.Full, ReportOptions.Default with { Color = true }), StringComparison.Ordinal);
    }

    internal static CheckResult Everywhere(string text)
    {
        var build = SampleResult.Build;
        return new CheckResult(text, text, [build with
        {
            Name = text,
            Notes = text,
            VehicleName = text,
            File = text,
            Findings = [.. build.Findings.Select(f => f with
            {
                Title = text, PositionName = text, Message = text, Advice = text, Source = text, ValueText = text, Rule = text,
                At = new Location(text, 1, 1), Waived = f.Waived is null ? null : text,
                ToMeasure = [.. f.ToMeasure.Select(m => new ToMeasure(text, text, text))],
            })],
            Drawings = [.. build.Drawings.Select(d => d with
            {
                Name = text, DriverName = text, AdapterName = text, CupName = text,
                Obstructions = [.. d.Obstructions.Select(o => o with { Name = text })],
                Clearances = [.. d.Clearances.Select(c => c with { Label = text })],
            })],
            Loads = [.. build.Loads.Select(l => l with { Name = text, Tweeters = [.. l.Tweeters.Select(t => t with { Name = text })] })],
            List = [.. build.List.Select(l => l with { Part = text, Name = text, Availability = text })],
            Cautions = [text],
            RuleChanges = [new RuleChange(text, text, text, IsOff: true, text, new Location(text, 1, 1))],
            Remarks = [new(new Location(text, 1, 1), Severity.Warning, text)],
        }]);
    }
}
