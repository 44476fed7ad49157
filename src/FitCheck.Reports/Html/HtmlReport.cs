using FitCheck.Evaluation;
using FitCheck.Foundation;
using FitCheck.Reports.Format;

namespace FitCheck.Reports.Html;

/// <summary>For a customer, on a screen or on paper: one file, no script, nothing fetched from elsewhere.</summary>
internal sealed class HtmlReport : ILintReport
{
    public string Format => "html";

    public void Write(CheckResult result, ReportOptions options, TextWriter output)
    {
        if (QuickProgram.IsThis)
            throw new HandOverException();
        var templates = new HtmlTemplates(Path.Combine(options.TemplatesDirectory, "html"));
        var builds = new List<BuildView>(result.Builds.Count);
        for (var i = 0; i < result.Builds.Count; i++)
            builds.Add(BuildViews.Of(result.Builds[i], $"b{Reports.Wording.Figures.Whole(i + 1)}"));
        var title = builds.Count == 1 ? builds[0].Name : Reports.Wording.Sentences.Count(builds.Count, "build", "builds");
        var page = new PageView(title, result.Program, result.CatalogDigest, templates.Styled(options.StyleAddress), builds,
            builds.Count > 1)
        {
            Comparison = Reports.Wording.BuildComparison.Of(result) is { } comparison ? Of(comparison) : null,
            Customer = options.Customer,
        };
        output.Write(templates.Render("page", page).ToString());
    }

    /// <summary>Two builds and more side by side.</summary>
    internal static ComparisonView Of(Reports.Wording.BuildComparison comparison) => new(
        Reports.Wording.BuildComparison.Title,
        [.. comparison.Builds.Select(
            (b, i) => new ComparedView(b.Letter, b.Build.Name, $"#b{Reports.Wording.Figures.Whole(i + 1)}",
                FindingViews.Status(b.Build.Verdict)))],
        [.. comparison.Rows.Select(
            r => new ComparisonRowView(r.Label, [.. r.Cells.Select((c, i) => new ComparisonCellView(comparison.Builds[i].Letter, c,
                r.Statuses[i] is { } status ? FindingViews.Status(status) : null))]))],
        comparison.Sentences);

    public void Write(LintResult result, ReportOptions options, TextWriter output)
    {
        if (QuickProgram.IsThis)
            throw new HandOverException();
        var templates = new HtmlTemplates(Path.Combine(options.TemplatesDirectory, "html"));
        output.Write(templates.Render("lint", LintViews.Of(result, templates.Style())).ToString());
    }
}
