namespace FitCheck.Reports.Charts;

/// <summary>Every format of a chart.</summary>
public static class ChartReports
{
    /// <summary>In the order in which help names them.</summary>
    public static IReadOnlyList<IChartReport> All { get; } = [new ChartText(), new ChartCsv(), new ChartJson(), new ChartHtml()];

    /// <summary>What the formats are called.</summary>
    public static string[] Formats => [.. All.Select(r => r.Format)];

    /// <summary>The report of this format, or null.</summary>
    public static IChartReport? Find(string format) => All.FirstOrDefault(r => r.Format == format);
}
