using FitCheck.Reports.Html;
using FitCheck.Reports.Json;
using FitCheck.Reports.Text;

namespace FitCheck.Reports;

/// <summary>Every format there is. A new one is a class and a line here.</summary>
public static class ReportList
{
    public static readonly IReadOnlyList<IReport> All =
    [
        new TextReport(),
        new JsonReport(),
        new HtmlReport(),
    ];

    /// <summary>The report of this format, or null.</summary>
    public static IReport? Find(string format)
    {
        foreach (var report in All)
        {
            if (report.Format == format)
                return report;
        }
        return null;
    }
}
