using FitCheck.Charts;
using FitCheck.Reports.Format;

namespace FitCheck.Reports.Charts;

/// <summary>Every format of a chart.</summary>
public static class ChartReports
{
    /// <summary>In the order in which help names them.</summary>
    public static IReadOnlyList<IChartReport> All { get; } =
        [new Shown(new ChartText()), new Shown(new ChartCsv()), new Shown(new ChartJson()), new Shown(new ChartHtml())];

    /// <summary>What the formats are called.</summary>
    public static string[] Formats => [.. All.Select(r => r.Format)];

    /// <summary>The report of this format, or null.</summary>
    public static IChartReport? Find(string format) => All.FirstOrDefault(r => r.Format == format);

    private sealed class Shown(IChartReport report) : IChartReport
    {
        public string Format => report.Format;

        public void Write(ChartResult result, ReportOptions options, TextWriter output) =>
            ShownText.Tell(output, Format, shown => report.Write(result, options, shown));
    }
}
