namespace FitCheck.Reports.Lists;

/// <summary>Every format of a list of parts.</summary>
public static class ListReports
{
    public static IReadOnlyList<IListReport> All { get; } = [new ListText(), new ListCsv(), new ListHtml(), new ListMarkdown(), new ListJson()];

    public static string[] Formats => [.. All.Select(r => r.Format)];

    public static IListReport? Find(string format) => All.FirstOrDefault(r => r.Format == format);
}
