using FitCheck.Reports.Format;
using FitCheck.Reports.GitHub;
using FitCheck.Reports.Html;
using FitCheck.Reports.Json;
using FitCheck.Reports.JUnit;
using FitCheck.Reports.Markdown;
using FitCheck.Reports.Sarif;
using FitCheck.Reports.Text;

namespace FitCheck.Reports;

/// <summary>Every format there is. A new one is a class and a line here.</summary>
public static class ReportList
{
    private static readonly IReport[] Reports = Array.ConvertAll<IReport, IReport>(
    [
        new TextReport(),
        new JsonReport(),
        new HtmlReport(),
        new MarkdownReport(),
        new SarifReport(),
        new JUnitReport(),
        new GitHubReport(),
    ], ShownReport.Of);

    /// <summary>In the order in which help names them.</summary>
    public static IReadOnlyList<IReport> All => Reports;

    /// <summary>What the formats are called.</summary>
    public static string[] Formats => Array.ConvertAll(Reports, r => r.Format);

    /// <summary>What those are called that also tell what `lint` found.</summary>
    public static string[] LintFormats => Array.ConvertAll(Array.FindAll(Reports, r => r is ILintReport), r => r.Format);

    /// <summary>The report of this format that tells what `lint` found, or null.</summary>
    public static ILintReport? FindForLint(string format) => Find(format) as ILintReport;

    /// <summary>The report of this format, or null.</summary>
    public static IReport? Find(string format)
    {
        foreach (var report in Reports)
        {
            if (report.Format == format)
                return report;
        }
        return null;
    }
}
