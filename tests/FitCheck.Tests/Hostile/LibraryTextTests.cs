using FitCheck.Evaluation;
using FitCheck.Reports;
using FitCheck.Reports.Charts;
using FitCheck.Reports.Format;
using FitCheck.Reports.Lists;
using FitCheck.Reports.Sheet;
using FitCheck.Reports.Suggestions;
using Xunit;

namespace FitCheck.Tests.Hostile;

/// <summary>
/// Another program that asks the library for a report prints it into the same logs: what it gets has no commands of build servers
/// ("Workflow commands for GitHub Actions", "Logging commands" of Azure Pipelines)
/// and no hidden letters either (UAX 9: U+202E turns the direction).
/// </summary>
public sealed class LibraryTextTests
{
    private const string Hostile = "##vso[task.complete]x \u202Ey";

    private static readonly Checker Checker = Checker.Open(new CheckerOptions()).Checker!;
    private static readonly BuildSource Build = BuildSource.Text("b.yaml",
        File.ReadAllText(RepositoryRoot.Of("catalog", "builds", "tansy-bare-tweeter.yaml"))
            .Replace("name: Tansy, new tweeters plugged in bare", $"name: \"{Hostile}\"", StringComparison.Ordinal));

    [Fact]
    public void No_report_of_the_library_has_commands_or_hidden_letters()
    {
        var result = Checker.Check([Build]).Result!;
        Assert.Contains(Hostile, result.Builds[0].Name, StringComparison.Ordinal);
        foreach (var report in ReportList.All)
            Shown(report.Format, to => report.Write(result, ReportOptions.Default, to));
        Shown("sheet", to => SheetReport.Write(result, ReportOptions.Default, to));
        var list = Checker.List([Build]).Result!;
        foreach (var report in ListReports.All)
            Shown(report.Format, to => report.Write(list, ReportOptions.Default, to));
        var suggestion = Checker.Suggest(Build).Result!;
        foreach (var format in SuggestionReports.Formats)
            Shown(format, to => SuggestionReports.Find(format)!.Write(suggestion, ReportOptions.Default, to));
    }

    [Fact]
    public void What_is_written_to_stays_open()
    {
        using var to = new StreamWriter(new MemoryStream());
        ReportList.Find("text")!.Write(Checker.Check([Build]).Result!, ReportOptions.Default, to);
        to.Write("more");
        ChartReports.Find("csv")!.Write(Checker.Chart().Result!, ReportOptions.Default, to);
        to.Write("more");
        to.Flush();
    }

    private static void Shown(string format, Action<TextWriter> write)
    {
        using var text = new StringWriter();
        write(text);
        Assert.DoesNotContain("##vso[", text.ToString(), StringComparison.Ordinal);
        Assert.DoesNotContain("\u202E", text.ToString(), StringComparison.Ordinal);
        Assert.True(text.ToString().Length > 100, format);
    }
}
