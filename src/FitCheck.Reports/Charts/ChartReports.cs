namespace FitCheck.Reports.Charts;

/// <summary>Every format of a chart.</summary>
public static class ChartReports
{
    public static IReadOnlyList<IChartReport> All { get; } = [new ChartText(), new ChartCsv(), new ChartJson(), new ChartHtml()];

    public static string[] Formats => [.. All.Select(r => r.Format)];

    public static IChartReport? Find(string format) => All.FirstOrDefault(r => r.Format == format);
}
