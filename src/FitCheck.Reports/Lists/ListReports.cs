using FitCheck.Lists;
using FitCheck.Reports.Format;

namespace FitCheck.Reports.Lists;

/// <summary>Every format of a list of parts.</summary>
public static class ListReports
{
    /// <summary>In the order in which help names them.</summary>
    public static IReadOnlyList<IListReport> All { get; } =
        [new Shown(new ListText()), new Shown(new ListCsv()), new Shown(new ListHtml()), new Shown(new ListMarkdown()),
            new Shown(new ListJson())];

    /// <summary>What the formats are called.</summary>
    public static string[] Formats => [.. All.Select(r => r.Format)];

    /// <summary>The report of this format, or null.</summary>
    public static IListReport? Find(string format) => All.FirstOrDefault(r => r.Format == format);

    private sealed class Shown(IListReport report) : IListReport
    {
        public string Format => report.Format;

        public void Write(ListResult result, ReportOptions options, TextWriter output) =>
            ShownText.Tell(output, Format, shown => report.Write(result, options, shown));
    }
}
