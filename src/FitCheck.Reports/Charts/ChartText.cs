using FitCheck.Charts;
using FitCheck.Findings;
using FitCheck.Reports.Format;
using FitCheck.Reports.Text;

namespace FitCheck.Reports.Charts;

/// <summary>
/// For a terminal: what fits, vehicle by vehicle and place by place. What does not fit is counted unless it is asked for.
/// </summary>
internal sealed class ChartText : IChartReport
{
    private const int Indent = 9;

    public string Format => "text";

    public void Write(ChartResult result, ReportOptions options, TextWriter output)
    {
        var page = new TextPage(output, options.Columns, options.Color);
        foreach (var vehicle in result.Rows.GroupBy(r => r.Vehicle.Id, StringComparer.Ordinal))
        {
            page.Heading(vehicle.First().Vehicle.Name);
            foreach (var place in ChartLine.Of(vehicle).GroupBy(l => l.Where, StringComparer.Ordinal))
            {
                page.Gap();
                page.Line(0, $"{place.Key} ({place.First().Role})", TextStyle.Strong);
                foreach (var line in place)
                    WriteLine(page, line, options.Verbose);
            }
            page.Gap();
            WriteSets(page, [.. result.Sets.Where(s => s.Vehicle.Id == vehicle.Key)]);
        }
        WriteEnd(page, result);
    }

    private static void WriteLine(TextPage page, ChartLine line, bool verbose)
    {
        var row = line.First;
        var text = $"{row.Driver.Name} ({Known(line)}), {(row.Mount is null ? "" : "on ")}{line.Mount}";
        page.Marked(row.Status, Indent, line.Margin.Length > 0 ? $"{text}: margin {line.Margin}" : text);
        if (row.Status == Status.Pass)
            return;
        page.Line(Indent, line.Message, TextStyle.Faint);
        foreach (var (title, message) in row.InBrief.OtherWork)
            page.Hanging(Indent, "work: ", verbose ? message : title);
    }

    // `orrin-w165-4, 165 mm, 119.00 EUR`
    private static string Known(ChartLine line) => string.Join(", ",
        new[] { line.First.Driver.Id, line.Size, ChartWords.Price(line.First) }.Where(w => w.Length > 0));

    private static void WriteSets(TextPage page, IReadOnlyList<SetRow> sets)
    {
        if (sets.Count == 0)
            return;
        page.Line(0, "Component sets, with a driver for every place on the output", TextStyle.Strong);
        foreach (var same in ChartLine.Sets(sets))
            page.Marked(same[0].Status, Indent, $"{same[0].Set.Name} ({same[0].Set.Id}, {ChartWords.Price(same[0].Set)}), "
                + $"{ChartLine.Outputs(same)}: {ChartLine.Drivers(same[0])}");
        page.Gap();
    }

    private static void WriteEnd(TextPage page, ChartResult result)
    {
        var untold = result.Counts[(int)Status.Fail] > 0 && result.Rows.All(r => r.Status != Status.Fail);
        page.Line(0, ChartWords.Counts(result) + (untold ? " `--status fail` tells what does not fit, and why." : ""));
        page.Line(0, ChartWords.Accepts(result));
        page.Line(0, ChartWords.NotJudged(result), TextStyle.Faint);
    }
}
