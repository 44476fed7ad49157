using FitCheck.Charts;
using FitCheck.Findings;
using FitCheck.Reports.Format;
using FitCheck.Reports.Html;
using FitCheck.Reports.Markup;
using FitCheck.Reports.Wording;

namespace FitCheck.Reports.Charts;

internal sealed record ChartPageView(string Title, SafeHtml Style, SafeHtml Script, SafeHtml Shapes,
    IReadOnlyList<StatusView> Marks, string Bars, string Program, string Digest, string Counts,
    string Accepts, string NotJudged, string LastWord,
    IReadOnlyList<string> Roles, IReadOnlyList<string> Sizes, IReadOnlyList<string> Statuses, IReadOnlyList<ChartVehicleView> Vehicles);

internal sealed record ChartVehicleView(string Id, string Name, ChartPictureView Picture, ChartTableView Fits, string FitsSummary,
    ChartTableView Misfits, string MisfitsSummary, IReadOnlyList<ChartSetView> Sets);

/// <summary>Rows with all that is known of them; a column that none of them fills is left out.</summary>
internal sealed record ChartTableView(IReadOnlyList<ChartRowView> Rows)
{
    public bool HasMargin => Rows.Any(r => r.Margin.Length > 0);
    public bool HasPoints => Rows.Any(r => r.Points.Count > 0);
}

internal sealed record ChartRowView(string Id, string Where, string Role, string Driver, string Part, string Price, string Size,
    string Mount, StatusView Status, string Margin, IReadOnlyList<string> Points);

internal sealed record ChartSetView(StatusView Status, string Name, string Id, string Price, string Where, string Drivers);

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
            templates.Style(), templates.Script("chart"), FindingViews.Shapes(),
            [.. StatusWords.All.Select(w => FindingViews.Status(StatusWords.Parse(w)!.Value))], ChartWords.Bars, result.Program,
            result.CatalogDigest,
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
        var id = $"v-{rows.Key}";
        // The picture has all of them; below it those that fit are read first.
        List<(string Id, ChartLine Line)> told = [.. ChartLine.Of(rows.Where(r => r.Status != Status.Fail))
            .Concat(ChartLine.Of(rows.Where(r => r.Status == Status.Fail))).Select((l, i) => ($"{id}-{Figures.Whole(i + 1)}", l))];
        List<ChartRowView> fits = [.. told.Where(t => t.Line.First.Status != Status.Fail).Select(Row)];
        List<ChartRowView> misfits = [.. told.Where(t => t.Line.First.Status == Status.Fail).Select(Row)];
        return new(id, rows.First().Vehicle.Name, ChartPicture.Of(told), new(fits),
            Pairs(rows.Count(r => r.Status != Status.Fail), "fits", "fit"), new(misfits),
            Pairs(rows.Count(r => r.Status == Status.Fail), "does not fit", "do not fit"),
            [.. ChartLine.Sets(result.Sets.Where(s => s.Vehicle.Id == rows.Key && s.Status != Status.Fail)).Select(Set)]);
    }

    private static string Pairs(int count, string one, string many) =>
        $"{Sentences.Count(count, "pair", "pairs")} that {(count == 1 ? one : many)}, with the reasons";

    private static ChartRowView Row((string Id, ChartLine Line) told)
    {
        var (line, first) = (told.Line, told.Line.First);
        return new(told.Id, line.Where, line.Role, first.Driver.Name, first.Driver.Id, ChartWords.Price(first), line.Size, line.Mount,
            FindingViews.Status(first.Status), line.Margin, first.Status == Status.Pass ? []
                : [.. first.Findings.Where(f => f.Status == first.Status || first.Work.Contains(f)).Select(f => f.Message)
                    .Distinct(StringComparer.Ordinal)]);
    }

    private static ChartSetView Set(IReadOnlyList<SetRow> same) => new(
        FindingViews.Status(same[0].Status), same[0].Set.Name, same[0].Set.Id, ChartWords.Price(same[0].Set), ChartLine.Outputs(same),
        ChartLine.Drivers(same[0]));
}
