namespace FitCheck.Reports.Lists;

/// <summary>Every format of a list of parts.</summary>
public static class ListReports
{
    /// <summary>In the order in which help names them.</summary>
    public static IReadOnlyList<IListReport> All { get; } =
        [new ListText(), new ListCsv(), new ListHtml(), new ListMarkdown(), new ListJson()];

    /// <summary>What the formats are called.</summary>
    public static string[] Formats => [.. All.Select(r => r.Format)];

    /// <summary>The report of this format, or null.</summary>
    public static IListReport? Find(string format) => All.FirstOrDefault(r => r.Format == format);
}
