using System.Globalization;
using FitCheck.Builds;
using FitCheck.Lists;
using FitCheck.Reports.Charts;
using FitCheck.Reports.Format;
using nietras.SeparatedValues;

namespace FitCheck.Reports.Lists;

/// <summary>For a till or a spreadsheet: a row for each part, without sums, which whoever reads it makes itself.</summary>
internal sealed class ListCsv : IListReport
{
    public string Format => "csv";

    public void Write(ListResult result, ReportOptions options, TextWriter output)
    {
        using var text = new StringWriter();
        using (var csv = Sep.New(',').Writer(o => o with { Escape = true, WriteHeader = true }).To(text))
        {
            foreach (var list in result.Builds)
            {
                foreach (var line in list.Lines)
                    Row(csv, list, line, "build", []);
                foreach (var asked in list.Asked)
                    Row(csv, list, asked.Line, "asked", asked.By);
            }
            // A list with nothing on it still says what its columns would be.
            if (result.Builds.All(b => b.Lines.Count == 0 && b.Asked.Count == 0))
                csv.Header.Add(Columns);
        }
        // RFC 4180 ends lines with CR LF; every other file of ours ends them with LF, and spreadsheets take both.
        output.Write(text.ToString().ReplaceLineEndings("\n"));
    }

    private static readonly string[] Columns =
        ["build", "listed_by", "part", "name", "needed", "pack", "packs", "left_pieces", "left_metres", "price", "sum", "currency",
            "availability", "rules"];

    private static void Row(SepWriter csv, PartsList list, ListLine line, string by, IReadOnlyList<Ask> asks)
    {
        using var row = csv.NewRow();
        var values = new[]
        {
            ChartCsv.Harmless(list.Name), by, ChartCsv.Harmless(line.Part), ChartCsv.Harmless(line.Name), Number(line.Needed),
            Number(line.Pack), Number(line.Packs),
            line.LeftPieces is { } left ? Number(left) : "", line.LeftMetres?.ToString("0.###", CultureInfo.InvariantCulture) ?? "",
            Amount(line.Price.Amount), Amount(line.Sum.Amount), ChartCsv.Harmless(line.Sum.Currency), line.Availability,
            string.Join(' ', asks.Select(a => a.Rule).Distinct(StringComparer.Ordinal)),
        };
        for (var i = 0; i < Columns.Length; i++)
            row[Columns[i]].Set(values[i]);
    }

    private static string Number(int number) => number.ToString(CultureInfo.InvariantCulture);

    private static string Amount(decimal amount) => amount.ToString("0.00", CultureInfo.InvariantCulture);
}
