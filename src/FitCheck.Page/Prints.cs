using FitCheck.Evaluation;
using FitCheck.Page.State;
using FitCheck.Reports.Format;
using FitCheck.Reports.Html;
using FitCheck.Reports.Lists;
using FitCheck.Reports.Sheet;

namespace FitCheck.Page;

/// <summary>The papers of a build: the report, the installation sheet and the list, as the command line writes them.</summary>
internal sealed class Prints(Checker checker, string templates)
{
    public PageAnswer Of(PageState state, string? what, CancellationToken cancel)
    {
        var options = ReportOptions.Default with
        {
            TemplatesDirectory = templates,
            StyleAddress = what == "sheet" ? "sheet.css" : "report.css"
        };
        var source = new[] { BuildSource.Text(state.Name, state.Text) };
        using var page = new StringWriter { NewLine = "\n" };
        if (what == "list")
        {
            var list = checker.List(source, cancel: cancel);
            if (list.Result is null)
                return Wrong(list.Problems);
            new ListHtml().Write(list.Result, options, page);
            return new PageAnswer { Text = page.ToString() };
        }
        var check = checker.Check(source, cancel: cancel);
        if (check.Result is not { } result)
            return Wrong(check.Problems);
        if (what == "sheet")
            SheetReport.Write(result, options, page);
        else
            new HtmlReport().Write(result, options, page);
        return new PageAnswer { Text = page.ToString() };
    }

    private static PageAnswer Wrong(IReadOnlyList<Foundation.Problems.Problem> problems) => new()
    {
        Status = 400,
        ContentType = "text/plain; charset=utf-8",
        Text = $"There is nothing to print yet.\n{string.Join('\n', problems.Select(p => p.ToString()))}\n",
    };
}
