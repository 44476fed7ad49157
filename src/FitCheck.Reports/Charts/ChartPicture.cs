using System.Globalization;
using System.Text.RegularExpressions;
using FitCheck.Charts;
using FitCheck.Reports.Html;
using FitCheck.Reports.Markup;
using FitCheck.Reports.Wording;

namespace FitCheck.Reports.Charts;

internal sealed record ChartPictureView(IReadOnlyList<string> Places, IReadOnlyList<ChartDriverView> Drivers);

internal sealed record ChartDriverView(string Name, string Id, string Price, string Size, IReadOnlyList<ChartCellView> Cells);

internal sealed record ChartCellView(string Place, IReadOnlyList<ChartMarkView> Marks);

/// <summary>A verdict with its least margin; the bar's length is 1 for the most that it shows on its side, null for none.</summary>
internal sealed record ChartMarkView(string Href, SafeHtml Icon, string Status, string? Side, string Margin, string? Bar, bool IsShort);

/// <summary>A vehicle's chart to look at: a line for each driver, a column for each place or both sides, in each cell a mark.</summary>
internal static partial class ChartPicture
{
    /// <summary>The millimetres to spare and short of at which a bar ends; the space on each side of the line is as their ratio.</summary>
    public const double MostSpare = 10, MostShort = 5;

    /// <summary>The picture of these lines, each told in full under its id.</summary>
    public static ChartPictureView Of(IReadOnlyList<(string Id, ChartLine Line)> told)
    {
        var rows = told.SelectMany(t => t.Line.Rows.Select(r => (t.Id, Row: r))).ToList();
        var columns = rows.Select(r => r.Row.Position).DistinctBy(p => p.Id, StringComparer.Ordinal)
            .GroupBy(p => Alike.SideLess(p.Name), StringComparer.Ordinal)
            .Select(g => (Name: Names.Joined(g.Select(p => p.Name)), Ids: g.Select(p => p.Id).ToList())).ToList();
        return new ChartPictureView([.. columns.Select(c => c.Name)],
            [.. rows.GroupBy(r => r.Row.Driver.Id, StringComparer.Ordinal)
                // What fits anywhere stands above what fits nowhere.
                .OrderBy(d => d.Min(r => r.Row.Status)).ThenBy(d => d.First().Row.Driver.Size?.Si ?? 0)
                .ThenBy(d => d.Key, StringComparer.Ordinal)
                .Select(d => Driver([.. d], columns))]);
    }

    private static ChartDriverView Driver(List<(string Id, ChartRow Row)> rows, List<(string Name, List<string> Ids)> columns)
    {
        var driver = rows[0].Row.Driver;
        return new(driver.Name, driver.Id, ChartWords.Price(rows[0].Row), driver.Size?.ToString() ?? "",
            [.. columns.Select(c => new ChartCellView(c.Name,
                Marks([.. c.Ids.SelectMany(p => rows.Where(r => r.Row.Position.Id == p))])))]);
    }

    // One for both sides where they are alike.
    private static List<ChartMarkView> Marks(List<(string Id, ChartRow Row)> rows)
    {
        var marks = rows.GroupBy(r => r.Id, StringComparer.Ordinal).ToList();
        return [.. marks.Select(m => Mark(m.Key, m.First().Row, marks.Count == 1 ? null : Sides(m.Select(r => r.Row.Position.Name))))];
    }

    private static ChartMarkView Mark(string id, ChartRow row, string? side)
    {
        var margin = row.Margin;
        double? length = margin is not { } mm || !double.IsFinite(mm) ? null
            : Math.Min(1, Math.Abs(mm) / (mm < 0 ? MostShort : MostSpare));
        return new($"#{id}", FindingViews.Mark(row.Status), Findings.StatusWords.Word(row.Status), side,
            margin is { } told ? Figures.Show(told, "mm") : "", length?.ToString("0.###", CultureInfo.InvariantCulture), margin < 0);
    }

    private static string Sides(IEnumerable<string> names) => Names.Listed([.. names.Select(n =>
        Side().Match(n) is { Success: true } side ? side.Value.ToLowerInvariant() : n).Distinct(StringComparer.Ordinal)]);

    [GeneratedRegex(@"\b(?:left|right)\b", RegexOptions.IgnoreCase | RegexOptions.CultureInvariant | RegexOptions.NonBacktracking)]
    private static partial Regex Side();
}
