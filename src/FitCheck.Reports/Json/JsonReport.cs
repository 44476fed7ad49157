using System.Globalization;
using System.Text.Json;
using FitCheck.Builds;
using FitCheck.Catalog;
using FitCheck.Evaluation;
using FitCheck.Facts.Values;
using FitCheck.Findings;
using FitCheck.Foundation.Problems;
using FitCheck.Physics.Quantities;
using FitCheck.Reports.Format;

namespace FitCheck.Reports.Json;

/// <summary>
/// For programs. The shape is published in reports/schema/check.schema.json; a change that breaks a reader needs a new `format`.
/// </summary>
internal sealed class JsonReport : ILintReport
{
    /// <summary>The version of the shape.</summary>
    public const int Shape = 2;

    public string Format => "json";

    public void Write(CheckResult result, ReportOptions options, TextWriter output) =>
        JsonText.Write(json => WriteResult(json, result), output);

    public void Write(LintResult result, ReportOptions options, TextWriter output) =>
        JsonText.Write(json => JsonLint.Write(json, result, options), output);

    private static void WriteResult(Utf8JsonWriter json, CheckResult result)
    {
        json.WriteStartObject();
        JsonText.WriteOrigin(json, Shape, result.Program, result.CatalogDigest);
        json.WriteStartArray("builds");
        foreach (var build in result.Builds)
        {
            WriteBuild(json, build);
            // What was told of it is on its way.
            json.Flush();
        }
        json.WriteEndArray();
        json.WriteEndObject();
    }

    private static void WriteBuild(Utf8JsonWriter json, BuildResult build)
    {
        json.WriteStartObject();
        json.WriteString("file", build.File);
        json.WriteString("name", build.Name);
        json.WriteString("vehicle", build.VehicleName);
        if (build.StandIn is { } standIn)
            json.WriteString("stand_in", standIn);
        json.WriteString("verdict", build.Verdict.Word());
        WriteWaivers(json, build);
        json.WriteStartArray("findings");
        foreach (var finding in build.Findings)
            WriteFinding(json, finding);
        json.WriteEndArray();
        WriteNotJudged(json, build.NotJudged);
        WriteFacts(json, build.Facts);
        json.WriteStartArray("list");
        foreach (var line in build.List)
            WriteLine(json, line);
        json.WriteEndArray();
        json.WriteStartArray("total");
        foreach (var total in build.Totals)
        {
            json.WriteStartObject();
            json.WriteNumber("amount", total.Amount);
            json.WriteString("currency", total.Currency);
            json.WriteEndObject();
        }
        json.WriteEndArray();
        if (build.Budget is { } budget)
        {
            json.WriteStartObject("budget");
            json.WriteNumber("amount", budget.Amount);
            json.WriteString("currency", budget.Currency);
            json.WriteEndObject();
        }
        json.WriteStartArray("cautions");
        foreach (var caution in build.Cautions)
            json.WriteStringValue(caution);
        json.WriteEndArray();
        WriteRuleChanges(json, build.RuleChanges);
        json.WriteStartArray("remarks");
        foreach (var remark in build.Remarks)
            WritePlace(json, null, remark.At, "message", remark.Message);
        json.WriteEndArray();
        json.WriteEndObject();
    }

    private static void WriteNotJudged(Utf8JsonWriter json, IReadOnlyList<NotJudged> notJudged)
    {
        json.WriteStartArray("not_judged");
        foreach (var one in notJudged)
        {
            json.WriteStartObject();
            json.WriteString("rule", one.Rule);
            json.WriteString("position", one.Position);
            json.WriteString("reason", one.Reason);
            json.WriteEndObject();
        }
        json.WriteEndArray();
    }

    // Only where a shop has rules of its own.
    private static void WriteRuleChanges(Utf8JsonWriter json, IReadOnlyList<RuleChange> changes)
    {
        if (changes.Count == 0)
            return;
        json.WriteStartArray("rule_changes");
        foreach (var change in changes)
        {
            json.WriteStartObject();
            json.WriteString("rule", change.Rule);
            json.WriteString("title", change.Title);
            json.WriteBoolean("off", change.IsOff);
            json.WriteString("what", change.What);
            if (change.Reason is not null)
                json.WriteString("reason", change.Reason);
            WritePlace(json, "at", change.At);
            json.WriteEndObject();
        }
        json.WriteEndArray();
    }

    private static void WriteWaivers(Utf8JsonWriter json, BuildResult build)
    {
        if (build.RestingOn.Count == 0)
            return;
        json.WriteStartArray("rests_on_waivers");
        foreach (var rule in build.RestingOn.Select(f => f.Rule).Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal))
            json.WriteStringValue(rule);
        json.WriteEndArray();
    }

    private static void WriteFinding(Utf8JsonWriter json, Finding finding)
    {
        json.WriteStartObject();
        json.WriteString("rule", finding.Rule);
        json.WriteString("title", finding.Title);
        json.WriteString("status", finding.Status.Word());
        json.WriteString("position", finding.Position);
        json.WriteStartArray("parts");
        foreach (var part in finding.Parts)
            json.WriteStringValue(part);
        json.WriteEndArray();
        json.WriteString("fact", finding.Fact);
        if (finding.Value is null && IsWord(finding))
            json.WriteString("value", finding.ValueText);
        else
            json.WriteRounded("value", finding.Value?.Value);
        json.WriteString("unit", finding.Unit);
        json.WriteRounded("low", finding.Value?.Low);
        json.WriteRounded("high", finding.Value?.High);
        json.WriteRounded("limit", finding.Limit);
        json.WriteRounded("margin", finding.Margin);
        json.WriteString("message", finding.Message);
        json.WriteString("advice", finding.Advice);
        json.WriteString("source", finding.Source);
        WritePlace(json, "at", finding.At);
        json.WriteStartArray("related");
        foreach (var related in finding.Related)
            WritePlace(json, null, related.At, "what", related.What);
        json.WriteEndArray();
        json.WriteString("fingerprint", finding.Fingerprint);
        if (finding.Waived is not null)
            json.WriteString("waived", finding.Waived);
        if (finding.WaivedUntil is { } until)
            json.WriteString("waived_until", until.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture));
        if (finding.ToMeasure.Count > 0)
            WriteMeasure(json, finding.ToMeasure);
        json.WriteEndObject();
    }

    private static void WriteMeasure(Utf8JsonWriter json, IReadOnlyList<ToMeasure> items)
    {
        json.WriteStartArray("measure");
        foreach (var item in items)
        {
            json.WriteStartObject();
            json.WriteString("what", item.What);
            json.WriteString("how", item.How);
            json.WriteString("passing", item.Passing);
            if (item.ToFillIn is { } line)
                json.WriteString("to_fill_in", line);
            json.WriteEndObject();
        }
        json.WriteEndArray();
    }

    // A truth or a word is told as text; an unknown value of any type is null.
    private static bool IsWord(Finding finding) => finding.Unit.Length == 0 && finding.ValueText is not ("" or "unknown");

    internal static void WritePlace(Utf8JsonWriter json, string? name, Location at, string? textName = null, string? text = null)
    {
        if (name is null)
            json.WriteStartObject();
        else
            json.WriteStartObject(name);
        json.WriteString("file", at.File);
        json.WriteNumber("line", at.Line);
        json.WriteNumber("column", at.Column);
        if (textName is not null)
            json.WriteString(textName, text);
        json.WriteEndObject();
    }

    private static void WriteFacts(Utf8JsonWriter json, IReadOnlyList<FactTable> tables)
    {
        json.WriteStartObject("facts");
        foreach (var table in tables)
        {
            json.WriteStartObject(table.Key);
            foreach (var (name, fact) in table.Values.OrderBy(v => v.Key, StringComparer.Ordinal))
                WriteFact(json, name, fact, table.Currency);
            json.WriteEndObject();
        }
        json.WriteEndObject();
    }

    private static void WriteFact(Utf8JsonWriter json, string name, FactValue fact, string? currency)
    {
        json.WriteStartObject(name);
        switch (fact.Type.Kind)
        {
            case FactKind.Truth when fact.Truth is { } truth:
                json.WriteBoolean("value", truth);
                break;
            case FactKind.Word when fact.Word is { } word:
                json.WriteString("value", word);
                break;
            case FactKind.Number:
                var unit = Unit.DisplayFor(fact.Type.Dimension);
                json.WriteRounded("value", InUnit(fact.Number?.Value, unit));
                json.WriteRounded("low", InUnit(fact.Number?.Low, unit));
                json.WriteRounded("high", InUnit(fact.Number?.High, unit));
                json.WriteString("unit",
                    fact.Type.Dimension == Dimension.Currency ? currency ?? "money" : unit?.Symbol ?? fact.Type.Dimension.ToString());
                break;
            default:
                json.WriteNull("value");
                break;
        }
        json.WriteEndObject();
    }

    private static double? InUnit(double? si, Unit? unit) => si is { } value && unit is not null ? unit.FromSi(value) : si;

    private static void WriteLine(Utf8JsonWriter json, ListLine line)
    {
        json.WriteStartObject();
        json.WriteString("part", line.Part);
        json.WriteString("name", line.Name);
        json.WriteNumber("needed", line.Needed);
        json.WriteNumber("pack", line.Pack);
        json.WriteNumber("packs", line.Packs);
        json.WriteNumber("price", line.Price.Amount);
        json.WriteNumber("sum", line.Sum.Amount);
        json.WriteString("currency", line.Sum.Currency);
        json.WriteString("availability", line.Availability);
        JsonText.WritePrices(json, line);
        json.WriteEndObject();
    }
}
