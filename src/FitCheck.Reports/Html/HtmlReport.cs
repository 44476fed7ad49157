using FitCheck.Findings;

namespace FitCheck.Reports.Html;

/// <summary>For a customer, on a screen or on paper: one file, no script, nothing fetched from elsewhere.</summary>
public sealed class HtmlReport : ILintReport
{
    public string Format => "html";

    public void Write(CheckResult result, ReportOptions options, TextWriter output)
    {
        if (QuickProgram.IsThis)
            throw new HandOverException();
        var templates = new HtmlTemplates(Path.Combine(options.TemplatesDirectory, "html"));
        var builds = new List<BuildView>(result.Builds.Count);
        for (var i = 0; i < result.Builds.Count; i++)
            builds.Add(BuildViews.Of(result.Builds[i], $"b{Telling.Figures.Whole(i + 1)}"));
        var title = builds.Count == 1 ? builds[0].Name : Telling.Wording.Count(builds.Count, "build", "builds");
        var page = new PageView(title, result.Program, result.CatalogDigest, templates.Style(), builds, builds.Count > 1);
        output.Write(templates.Render("page", page).ToString());
    }

    public void Write(LintResult result, ReportOptions options, TextWriter output)
    {
        if (QuickProgram.IsThis)
            throw new HandOverException();
        var templates = new HtmlTemplates(Path.Combine(options.TemplatesDirectory, "html"));
        output.Write(templates.Render("lint", LintViews.Of(result, templates.Style())).ToString());
    }
}
