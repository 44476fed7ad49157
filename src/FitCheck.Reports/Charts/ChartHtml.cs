using FitCheck.Charts;
using FitCheck.Findings;
using FitCheck.Reports.Format;
using FitCheck.Reports.Html;
using FitCheck.Reports.Markup;
using FitCheck.Reports.Wording;

namespace FitCheck.Reports.Charts;

internal sealed record ChartPageView(string Title, SafeHtml Style, SafeHtml Script, string Program, string Digest, string Counts,
    string Accepts, string NotJudged, string LastWord,
    IReadOnlyList<string> Roles, IReadOnlyList<string> Sizes, IReadOnlyList<string> Statuses, IReadOnlyList<ChartVehicleView> Vehicles);

internal sealed record ChartVehicleView(string Id, string Name, IReadOnlyList<ChartRowView> Fits, IReadOnlyList<ChartRowView> Misfits,
    string MisfitsSummary, IReadOnlyList<ChartSetView> Sets);

internal sealed record ChartRowView(string Where, string Role, string Driver, string Size, string Mount, StatusView Status, string Margin,
    IReadOnlyList<string> Points);

internal sealed record ChartSetView(StatusView Status, string Name, string Where, string Drivers);

/// <summary>A page of its own that can be filtered where scripts run, and read whole where they don't.</summary>
internal sealed class ChartHtml : IChartReport
{
    public string Format => "html";

    public void Write(ChartResult result, ReportOptions options, TextWriter output)
    {
        var templates = new HtmlTemplates(Path.Combine(options.TemplatesDirectory, "html"));
        var vehicles = result.Rows.GroupBy(r => r.Vehicle.Id, StringComparer.Ordinal).ToList();
        var page = new ChartPageView(
            vehicles.Count == 1 ? $"What fits in {vehicles[0].First().Vehicle.Name}" : "Which drivers fit which positions",
            templates.Style(), templates.Script("chart"), result.Program, result.CatalogDigest,
            ChartWords.Counts(result), ChartWords.Accepts(result), ChartWords.NotJudged(result), Sentences.LastWord,
            [.. result.Rows.Select(r => r.Position.Role).Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal)],
            [.. result.Rows.OrderBy(r => r.Driver.Size?.Si).Select(r => r.Driver.Size?.ToString()).OfType<string>()
                .Distinct(StringComparer.Ordinal)],
            [.. result.Rows.Select(r => r.Status).Distinct().Order().Select(s => s.Word())],
            [.. vehicles.Select(v => Vehicle(v, result))]);
        output.Write(templates.Render("chart", page).ToString());
    }

    private static ChartVehicleView Vehicle(IGrouping<string, ChartRow> rows, ChartResult result)
    {
        var misfits = ChartLine.Of(rows.Where(r => r.Status == Status.Fail));
        return new(
            $"v-{rows.Key}", rows.First().Vehicle.Name,
            [.. ChartLine.Of(rows.Where(r => r.Status != Status.Fail)).Select(Row)], [.. misfits.Select(Row)],
            $"{Sentences.Count(misfits.Sum(m => m.Rows.Count), "pair does", "pairs do")} not fit",
            [.. ChartLine.Sets(result.Sets.Where(s => s.Vehicle.Id == rows.Key && s.Status != Status.Fail)).Select(Set)]);
    }

    private static ChartRowView Row(ChartLine line) => new(
        line.Where, line.Role, line.First.Driver.Name, line.Size, line.Mount, FindingViews.Status(line.First.Status), line.Margin,
        line.First.Status == Status.Pass ? []
            : [.. line.First.Findings.Where(f => f.Status == line.First.Status || line.First.Work.Contains(f)).Select(f => f.Message)
            .Distinct(StringComparer.Ordinal)]);

    private static ChartSetView Set(IReadOnlyList<SetRow> same) => new(
        FindingViews.Status(same[0].Status), same[0].Set.Name, ChartLine.Outputs(same), ChartLine.Drivers(same[0]));
}
