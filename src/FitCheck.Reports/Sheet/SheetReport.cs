using FitCheck.Evaluation;
using FitCheck.Foundation;
using FitCheck.Reports.Format;
using FitCheck.Reports.Html;
using FitCheck.Reports.Wording;

namespace FitCheck.Reports.Sheet;

/// <summary>
/// For whoever does the work: a page to print, in working order, with templates for holes at full size. One file, no script.
/// </summary>
public static class SheetReport
{
    // Enough to tell two catalogs apart on paper.
    private const int DigestShown = 16;

    /// <summary>Writes the sheets of all builds, one behind the other.</summary>
    /// <exception cref="TemplateException">A template of the sheet is missing or wrong; nothing was written.</exception>
    public static void Write(CheckResult result, ReportOptions options, TextWriter output)
    {
        if (QuickProgram.IsThis)
            throw new HandOverException();
        var templates = new HtmlTemplates(Path.Combine(options.TemplatesDirectory, "sheet"));
        List<BuildSheet> builds = [.. result.Builds.Select(
            (b, i) => WorkOrder.Of(b, $"b{Figures.Whole(i + 1)}",
                $"{result.Program} · catalog {result.CatalogDigest[..Math.Min(DigestShown, result.CatalogDigest.Length)]}"))];
        var title = builds.Count == 1 ? builds[0].Name : Sentences.Count(builds.Count, "build", "builds");
        var page = templates.Render("page", new SheetView(title, templates.Styled(options.StyleAddress), builds)).ToString();
        ShownText.Tell(output, "sheet", shown => shown.Write(page));
    }
}
