using System.Text.Json;
using FitCheck.Catalog;
using FitCheck.Findings;
using FitCheck.Reports.Format;
using FitCheck.Reports.Json;
using FitCheck.Suggestions;

namespace FitCheck.Reports.Suggestions;

/// <summary>
/// For programs. The shape is published in reports/schema/suggest.schema.json; a change that breaks a reader needs a new `format`.
/// </summary>
internal sealed class SuggestionJson : ISuggestionReport
{
    private const int Shape = 2;

    public string Format => "json";

    public void Write(Suggestion suggestion, ReportOptions options, TextWriter output) =>
        JsonText.Write(json => Whole(json, suggestion), output);

    private static void Whole(Utf8JsonWriter json, Suggestion suggestion)
    {
        json.WriteStartObject();
        JsonText.WriteOrigin(json, Shape, suggestion.Program, suggestion.CatalogDigest);
        json.WriteString("file", suggestion.Before.File);
        json.WriteString("name", suggestion.Before.Name);
        json.WriteString("vehicle", suggestion.Before.VehicleName);
        if (suggestion.Before.StandIn is { } standIn)
            json.WriteString("stand_in", standIn);
        json.WriteString("verdict", suggestion.Before.Verdict.Word());
        json.WriteString("fail_on", suggestion.FailOn.Word());
        json.WriteString("prefer", suggestion.Preference.ToString().ToLowerInvariant());
        json.WriteBoolean("passes", suggestion.Passes);
        if (suggestion.Proposals.Count > 0 && suggestion.WithoutNewWarning is { } addsNothing)
            json.WriteBoolean("without_new_warning", addsNothing);
        json.WriteStartArray("proposals");
        foreach (var proposal in suggestion.Proposals)
            One(json, proposal);
        json.WriteEndArray();
        if (suggestion.Conflict is { } conflict)
            Why(json, conflict);
        json.WriteStartArray("readings");
        foreach (var reading in suggestion.Readings)
        {
            json.WriteStartObject();
            json.WriteString("what", reading.What);
            json.WriteString("how", reading.How);
            json.WriteNumber("settles", reading.Settles.Count);
            json.WriteNumber("helps_in", reading.HelpsIn);
            json.WriteString("passing", reading.Passing);
            json.WriteString("not_failing", reading.Bearable);
            json.WriteEndObject();
        }
        json.WriteEndArray();
        json.WriteStartObject("proof");
        json.WriteBoolean("complete", suggestion.Proof.Complete);
        json.WriteNumber("judged", suggestion.Proof.Judged);
        json.WriteNumber("ruled_out", suggestion.Proof.Foreseen);
        json.WriteNumber("bounded", suggestion.Proof.TooDear);
        json.WriteStartArray("tried");
        foreach (var tried in suggestion.Coverage.Tried)
        {
            json.WriteStartObject();
            json.WriteString("what", tried.What);
            Texts(json, "where", tried.Where);
            json.WriteString("choices", tried.Choices);
            json.WriteEndObject();
        }
        json.WriteEndArray();
        Texts(json, "not_tried", suggestion.Coverage.NotTried);
        json.WriteEndObject();
        json.WriteEndObject();
    }

    private static void One(Utf8JsonWriter json, Proposal proposal)
    {
        json.WriteStartObject();
        json.WriteString("verdict", proposal.After.Verdict.Word());
        json.WriteStartArray("changes");
        foreach (var change in proposal.Changes)
        {
            json.WriteStartObject();
            json.WriteString("what", change.What);
            Texts(json, "where", change.Where);
            json.WriteString("from", change.From);
            json.WriteString("to", change.To);
            json.WriteStartArray("because");
            foreach (var reason in change.Because)
            {
                json.WriteStartObject();
                json.WriteString("rule", reason.Without.Rule);
                json.WriteString("position", reason.Without.Position);
                json.WriteString("unit", reason.Without.Unit);
                Margin(json, "margin_without", reason.Without.Margin);
                Margin(json, "margin_with", reason.With?.Margin);
                json.WriteEndObject();
            }
            json.WriteEndArray();
            json.WriteEndObject();
        }
        json.WriteEndArray();
        Moneys(json, "total", proposal.After.Totals);
        Moneys(json, "difference", proposal.Difference);
        json.WriteNumber("work", proposal.Work);
        Margin(json, "least_clearance_mm", proposal.LeastClearance * 1000);
        json.WriteStartArray("new");
        foreach (var finding in proposal.New)
        {
            json.WriteStartObject();
            json.WriteString("rule", finding.Rule);
            json.WriteString("position", finding.Position);
            json.WriteString("status", finding.Status.Word());
            json.WriteString("message", finding.Message);
            json.WriteEndObject();
        }
        json.WriteEndArray();
        json.WriteString("yaml", proposal.Yaml);
        json.WriteEndObject();
    }

    private static void Why(Utf8JsonWriter json, Conflict conflict)
    {
        json.WriteStartObject("conflict");
        json.WriteStartArray("rules");
        foreach (var obstacle in conflict.Obstacles)
        {
            json.WriteStartObject();
            json.WriteString("rule", obstacle.Rule);
            Texts(json, "positions", [.. obstacle.Findings.Select(f => f.Position)]);
            Margin(json, "nearest_margin", obstacle.Nearest?.Margin);
            json.WriteString("unit", obstacle.Nearest?.Unit ?? "");
            json.WriteEndObject();
        }
        json.WriteEndArray();
        Texts(json, "wishes", conflict.Wishes);
        json.WriteEndObject();
    }

    private static void Moneys(Utf8JsonWriter json, string name, IReadOnlyList<Money> moneys)
    {
        json.WriteStartArray(name);
        foreach (var money in moneys)
        {
            json.WriteStartObject();
            json.WriteNumber("amount", money.Amount);
            json.WriteString("currency", money.Currency);
            json.WriteEndObject();
        }
        json.WriteEndArray();
    }

    private static void Texts(Utf8JsonWriter json, string name, IReadOnlyList<string> texts)
    {
        json.WriteStartArray(name);
        foreach (var text in texts)
            json.WriteStringValue(text);
        json.WriteEndArray();
    }

    private static void Margin(Utf8JsonWriter json, string name, double? value)
    {
        if (value is { } number && double.IsFinite(number))
            json.WriteNumber(name, Math.Round(number, 6));
        else
            json.WriteNull(name);
    }
}
