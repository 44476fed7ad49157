using System.Text.Json;
using FitCheck.Builds;
using FitCheck.Catalog;
using FitCheck.Findings;
using FitCheck.Lists;
using FitCheck.Reports.Format;
using FitCheck.Reports.Json;

namespace FitCheck.Reports.Lists;

/// <summary>
/// For programs. The shape is published in reports/schema/list.schema.json; a change that breaks a reader needs a new `format`.
/// </summary>
internal sealed class ListJson : IListReport
{
    /// <summary>The version of the shape.</summary>
    public const int Shape = 1;

    public string Format => "json";

    public void Write(ListResult result, ReportOptions options, TextWriter output) => JsonText.Write(json => Whole(json, result), output);

    private static void Whole(Utf8JsonWriter json, ListResult result)
    {
        json.WriteStartObject();
        JsonText.WriteOrigin(json, Shape, result.Program, result.CatalogDigest);
        if (result.Tax.Percent is { } percent)
            json.WriteNumber("tax_percent", percent);
        else
            json.WriteNull("tax_percent");
        json.WriteBoolean("tax_is_added", result.Tax.IsAdded);
        Each(json, "builds", result.Builds, list => Write(json, list, result.Tax));
        json.WriteEndObject();
    }

    private static void Write(Utf8JsonWriter json, PartsList list, Tax tax)
    {
        json.WriteString("file", list.File);
        json.WriteString("name", list.Name);
        json.WriteString("vehicle", list.VehicleName);
        if (list.StandIn is { } standIn)
            json.WriteString("stand_in", standIn);
        Each(json, "lines", list.Lines, line => Write(json, line));
        Each(json, "asked", list.Asked, asked =>
        {
            Write(json, asked.Line);
            Each(json, "by", asked.By, ask => Write(json, ask));
        });
        Each(json, "unanswered", list.Unanswered, ask => Write(json, ask));
        Each(json, "totals", list.Totals, total => Write(json, total, tax));
        Each(json, "asked_totals", list.AskedTotals, total => Write(json, total, tax));
        Each(json, "all_totals", list.AllTotals, total => Write(json, total, tax));
        if (list.Budget is not { } budget)
        {
            json.WriteNull("budget");
            return;
        }
        json.WriteStartObject("budget");
        json.WriteNumber("amount", budget.Amount);
        json.WriteString("currency", budget.Currency);
        json.WriteEndObject();
    }

    private static void Write(Utf8JsonWriter json, ListLine line)
    {
        json.WriteString("part", line.Part);
        json.WriteString("name", line.Name);
        json.WriteNumber("needed", line.Needed);
        json.WriteNumber("pack", line.Pack);
        json.WriteNumber("packs", line.Packs);
        if (line.LeftPieces is { } pieces)
            json.WriteNumber("left_pieces", pieces);
        else
            json.WriteNull("left_pieces");
        if (line.LeftMetres is { } metres)
            json.WriteNumber("left_metres", metres);
        else
            json.WriteNull("left_metres");
        json.WriteNumber("price", line.Price.Amount);
        json.WriteNumber("sum", line.Sum.Amount);
        json.WriteString("currency", line.Sum.Currency);
        json.WriteString("availability", line.Availability);
        JsonText.WritePrices(json, line);
    }

    private static void Write(Utf8JsonWriter json, Ask ask)
    {
        json.WriteString("rule", ask.Rule);
        json.WriteString("title", ask.Title);
        json.WriteString("status", ask.Status.Word());
        json.WriteString("position", ask.Position);
        json.WriteString("wanted", ask.Wanted);
    }

    private static void Write(Utf8JsonWriter json, Money prices, Tax tax)
    {
        var sum = tax.Of(prices);
        json.WriteNumber("net", sum.Net.Amount);
        if (sum.Tax is { } part)
            json.WriteNumber("tax", part.Amount);
        else
            json.WriteNull("tax");
        json.WriteNumber("paid", sum.Paid.Amount);
        json.WriteString("currency", prices.Currency);
    }

    private static void Each<T>(Utf8JsonWriter json, string name, IEnumerable<T> items, Action<T> write)
    {
        json.WriteStartArray(name);
        foreach (var item in items)
        {
            json.WriteStartObject();
            write(item);
            json.WriteEndObject();
        }
        json.WriteEndArray();
    }
}
