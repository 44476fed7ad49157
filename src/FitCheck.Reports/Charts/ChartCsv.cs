using FitCheck.Charts;
using FitCheck.Findings;
using FitCheck.Reports.Format;
using FitCheck.Reports.Json;
using FitCheck.Reports.Wording;
using nietras.SeparatedValues;

namespace FitCheck.Reports.Charts;

/// <summary>For a spreadsheet: a row for each driver at each position.</summary>
internal sealed class ChartCsv : IChartReport
{
    public string Format => "csv";

    public void Write(ChartResult result, ReportOptions options, TextWriter output)
    {
        using var text = new StringWriter();
        using (var csv = Sep.New(',').Writer(o => o with { Escape = true, WriteHeader = true }).To(text))
        {
            foreach (var row in result.Rows)
            {
                using var line = csv.NewRow();
                Set(line, "vehicle", row.Vehicle.Id);
                Set(line, "position", row.Position.Id);
                Set(line, "role", row.Position.Role);
                Set(line, "driver", row.Driver.Id);
                Set(line, "driver_name", row.Driver.Name);
                Set(line, "type", row.Driver.Type);
                Number(line, "size_mm", row.Driver.Size?.Si * 1e3);
                Set(line, "sets", string.Join(' ', row.Sets));
                Set(line, "mount", row.Mount?.Id ?? "");
                Set(line, "mount_name", row.Mount?.Name ?? "");
                Set(line, "status", row.Status.Word());
                Number(line, "margin_mm", row.Margin);
                var brief = row.InBrief;
                Set(line, "rule", brief.Rule);
                Set(line, "message", brief.Message);
                Set(line, "work", string.Join(" ", row.Work.Select(w => w.Message)));
                var price = row.Driver.HasPrice ? row.Driver.Price.Value : null;
                Set(line, "price", price is null ? "" : Figures.Bare((double)price.Amount, price.Currency));
                Set(line, "currency", price?.Currency ?? "");
            }
        }
        // RFC 4180 ends lines with CR LF; every other file of ours ends them with LF, and spreadsheets take both.
        output.Write(text.ToString().ReplaceLineEndings("\n"));
    }

    private static void Set(SepWriter.Row line, string column, string text) => line[column].Set(Harmless(text));

    private static void Number(SepWriter.Row line, string column, double? value) =>
        line[column]
            .Set(value is { } number && double.IsFinite(number)
            ? RoundedNumbers.Round(number).ToString(System.Globalization.CultureInfo.InvariantCulture) : "");

    /// <summary>A text that a spreadsheet would run as a formula gets an apostrophe before it, which the spreadsheet hides.</summary>
    internal static string Harmless(string text) =>
        text.Length > 0 && text[0] is '=' or '+' or '-' or '@' or '\t' or '\r' or '\n' ? "'" + text : text;
}
