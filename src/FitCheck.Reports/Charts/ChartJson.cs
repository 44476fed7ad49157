using System.Text.Json;
using FitCheck.Charts;
using FitCheck.Charts.Pairs;
using FitCheck.Findings;
using FitCheck.Reports.Format;
using FitCheck.Reports.Json;

namespace FitCheck.Reports.Charts;

/// <summary>
/// For programs. The shape is published in reports/schema/chart.schema.json; a change that breaks a reader needs a new `format`.
/// </summary>
internal sealed class ChartJson : IChartReport
{
    /// <summary>The version of the shape.</summary>
    public const int Shape = 1;

    public string Format => "json";

    public void Write(ChartResult result, ReportOptions options, TextWriter output) => JsonText.Write(json => Whole(json, result), output);

    private static void Whole(Utf8JsonWriter json, ChartResult result)
    {
        json.WriteStartObject();
        JsonText.WriteOrigin(json, Shape, result.Program, result.CatalogDigest);
        Words(json, "accepts", result.Accepts);
        Words(json, "rules", result.Rules);
        json.WriteStartArray("left_out");
        foreach (var rule in result.LeftOut)
        {
            json.WriteStartObject();
            json.WriteString("rule", rule.Rule);
            Words(json, "needs", rule.Needs);
            json.WriteEndObject();
        }
        json.WriteEndArray();
        json.WriteStartObject("counts");
        for (var i = 0; i < result.Counts.Count; i++)
            json.WriteNumber(StatusWords.All[i], result.Counts[i]);
        json.WriteEndObject();
        json.WriteNumber("of_another_type", result.OfAnotherType);
        json.WriteStartArray("pairs");
        foreach (var row in result.Rows)
            Pair(json, row);
        json.WriteEndArray();
        json.WriteStartArray("sets");
        foreach (var row in result.Sets)
            Set(json, row);
        json.WriteEndArray();
        json.WriteEndObject();
    }

    private static void Pair(Utf8JsonWriter json, ChartRow row)
    {
        json.WriteStartObject();
        json.WriteString("vehicle", row.Vehicle.Id);
        json.WriteString("position", row.Position.Id);
        json.WriteString("driver", row.Driver.Id);
        json.WriteRounded("size_mm", row.Driver.Size?.Si * 1e3);
        Words(json, "sets", row.Sets);
        json.WriteString("mount", row.Mount?.Id);
        json.WriteString("status", row.Status.Word());
        json.WriteRounded("margin_mm", row.Margin);
        json.WriteStartArray("findings");
        foreach (var finding in row.Findings.Where(f => f.Status != Status.Pass))
        {
            json.WriteStartObject();
            json.WriteString("rule", finding.Rule);
            json.WriteString("status", finding.Status.Word());
            json.WriteBoolean("work", row.Work.Contains(finding));
            json.WriteRounded("value", finding.Value?.Value);
            json.WriteRounded("limit", finding.Limit);
            json.WriteRounded("margin", finding.Margin);
            json.WriteString("unit", finding.Unit);
            json.WriteString("message", finding.Message);
            json.WriteEndObject();
        }
        json.WriteEndArray();
        json.WriteEndObject();
    }

    private static void Set(Utf8JsonWriter json, SetRow row)
    {
        json.WriteStartObject();
        json.WriteString("set", row.Set.Id);
        json.WriteString("vehicle", row.Vehicle.Id);
        json.WriteString("output", row.Channel);
        json.WriteString("status", row.Status.Word());
        json.WriteStartArray("places");
        foreach (var place in row.Places)
        {
            json.WriteStartObject();
            json.WriteString("position", place.Position.Id);
            json.WriteString("driver", place.Driver.Id);
            json.WriteString("status", place.Status.Word());
            json.WriteEndObject();
        }
        json.WriteEndArray();
        json.WriteEndObject();
    }

    private static void Words(Utf8JsonWriter json, string name, IReadOnlyList<string> words)
    {
        json.WriteStartArray(name);
        foreach (var word in words)
            json.WriteStringValue(word);
        json.WriteEndArray();
    }
}
