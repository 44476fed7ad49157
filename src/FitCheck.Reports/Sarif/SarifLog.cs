using System.Text.Json;
using FitCheck.Foundation;
using FitCheck.Foundation.Problems;
using FitCheck.Reports.Json;
using FitCheck.Reports.Wording;

namespace FitCheck.Reports.Sarif;

/// <summary>Writes a log of one run in SARIF 2.1.0 (OASIS, 2020).</summary>
internal sealed class SarifLog(string category, IReadOnlyList<SarifRule> known, IReadOnlyList<SarifResult> results, string? root)
{
    private const string Base = "%SRCROOT%";

    private readonly List<SarifRule> _rules = Used(known, results);
    private readonly bool _someAccepted = results.Any(r => r.Accepted is not null);

    /// <summary>What a shop changed of the rules, in sentences.</summary>
    public IReadOnlyList<string> RuleChanges { get; init; } = [];

    /// <summary>The headlines of builds whose verdict rests on waivers.</summary>
    public IReadOnlyList<string> Headlines { get; init; } = [];

    public void Write(TextWriter output) => JsonText.Write(WriteLog, output);

    // Rules that say nothing here would only make the log longer.
    private static List<SarifRule> Used(IReadOnlyList<SarifRule> known, IReadOnlyList<SarifResult> results)
    {
        var named = results.Select(r => r.Rule).ToHashSet(StringComparer.Ordinal);
        return [.. known.Where(r => named.Contains(r.Help.Id)).OrderBy(r => r.Help.Id, StringComparer.Ordinal)];
    }

    private void WriteLog(Utf8JsonWriter json)
    {
        json.WriteStartObject();
        json.WriteString("$schema", "https://docs.oasis-open.org/sarif/sarif/v2.1.0/errata01/os/schemas/sarif-schema-2.1.0.json");
        json.WriteString("version", "2.1.0");
        json.WriteStartArray("runs");
        json.WriteStartObject();
        WriteTool(json);
        json.WriteStartObject("automationDetails");
        json.WriteString("id", category + "/");
        json.WriteEndObject();
        json.WriteString("columnKind", "utf16CodeUnits");
        json.WriteStartObject("originalUriBaseIds");
        json.WriteStartObject(Base);
        WriteText(json, "description", "The folder in which the program was run.");
        json.WriteEndObject();
        json.WriteEndObject();
        json.WriteStartArray("results");
        foreach (var result in results)
            WriteResult(json, result);
        json.WriteEndArray();
        WriteProperties(json);
        json.WriteEndObject();
        json.WriteEndArray();
        json.WriteEndObject();
    }

    private void WriteProperties(Utf8JsonWriter json)
    {
        if (RuleChanges.Count + Headlines.Count == 0)
            return;
        json.WriteStartObject("properties");
        WriteTexts(json, "ruleChanges", RuleChanges);
        WriteTexts(json, "restingOnWaivers", Headlines);
        json.WriteEndObject();
    }

    private static void WriteTexts(Utf8JsonWriter json, string name, IReadOnlyList<string> texts)
    {
        if (texts.Count == 0)
            return;
        json.WriteStartArray(name);
        foreach (var text in texts)
            json.WriteStringValue(PlainText.Lines(text));
        json.WriteEndArray();
    }

    private void WriteTool(Utf8JsonWriter json)
    {
        json.WriteStartObject("tool");
        json.WriteStartObject("driver");
        json.WriteString("name", "FitCheck");
        json.WriteString("version", ProgramName.Version);
        json.WriteString("semanticVersion", ProgramName.Version);
        json.WriteStartArray("rules");
        foreach (var rule in _rules)
            WriteRule(json, rule);
        json.WriteEndArray();
        json.WriteEndObject();
        json.WriteEndObject();
    }

    private static void WriteRule(Utf8JsonWriter json, SarifRule rule)
    {
        json.WriteStartObject();
        json.WriteString("id", rule.Help.Id);
        WriteText(json, "shortDescription", rule.Help.Title);
        WriteText(json, "fullDescription", rule.Help.Why);
        WriteText(json, "help", rule.Text);
        if (System.Uri.TryCreate(rule.Help.Url, UriKind.Absolute, out var url))
            json.WriteString("helpUri", url.AbsoluteUri);
        json.WriteStartObject("defaultConfiguration");
        json.WriteString("level", rule.Level);
        json.WriteEndObject();
        json.WriteStartObject("properties");
        json.WriteStartArray("tags");
        json.WriteStringValue(rule.Help.Id.Split('/')[0]);
        json.WriteEndArray();
        if (!rule.Help.CanBeWaived)
            json.WriteString("waive", "never");
        json.WriteEndObject();
        json.WriteEndObject();
    }

    private void WriteResult(Utf8JsonWriter json, SarifResult result)
    {
        json.WriteStartObject();
        json.WriteString("ruleId", result.Rule);
        if (_rules.FindIndex(r => r.Help.Id == result.Rule) is >= 0 and var index)
            json.WriteNumber("ruleIndex", index);
        json.WriteString("level", result.Level);
        WriteText(json, "message", Literal(result.Message));
        json.WriteStartArray("locations");
        WriteLocation(json, result.At, id: null, message: null, result.Subject);
        json.WriteEndArray();
        if (result.Related.Count > 0)
        {
            json.WriteStartArray("relatedLocations");
            for (var i = 0; i < result.Related.Count; i++)
                WriteLocation(json, result.Related[i].At, i + 1, result.Related[i].What, subject: null);
            json.WriteEndArray();
        }
        json.WriteStartObject("partialFingerprints");
        json.WriteString("fitcheck/v1", result.Fingerprint);
        json.WriteEndObject();
        WriteSuppressions(json, result);
        if (result.Properties is { } write)
        {
            json.WriteStartObject("properties");
            write(json);
            json.WriteEndObject();
        }
        json.WriteEndObject();
    }

    // The standard wants them on all results of a run or on none.
    private void WriteSuppressions(Utf8JsonWriter json, SarifResult result)
    {
        if (!_someAccepted)
            return;
        json.WriteStartArray("suppressions");
        if (result.Accepted is { } reason)
        {
            json.WriteStartObject();
            json.WriteString("kind", "inSource");
            json.WriteString("status", "accepted");
            json.WriteString("justification", reason);
            json.WriteEndObject();
        }
        json.WriteEndArray();
    }

    private void WriteLocation(Utf8JsonWriter json, Location at, int? id, string? message, string? subject)
    {
        var uri = FileNames.Uri(root, at.File);
        json.WriteStartObject();
        if (id is { } number)
            json.WriteNumber("id", number);
        json.WriteStartObject("physicalLocation");
        json.WriteStartObject("artifactLocation");
        json.WriteString("uri", uri);
        if (!uri.StartsWith("file:", StringComparison.Ordinal))
            json.WriteString("uriBaseId", Base);
        json.WriteEndObject();
        if (at.Line > 0)
        {
            json.WriteStartObject("region");
            json.WriteNumber("startLine", at.Line);
            json.WriteNumber("startColumn", Math.Max(1, at.Column));
            json.WriteEndObject();
        }
        json.WriteEndObject();
        if (subject is not null)
        {
            json.WriteStartArray("logicalLocations");
            json.WriteStartObject();
            json.WriteString("name", subject);
            json.WriteEndObject();
            json.WriteEndArray();
        }
        if (message is not null)
            WriteText(json, "message", Literal(message));
        json.WriteEndObject();
    }

    private static void WriteText(Utf8JsonWriter json, string name, string text)
    {
        json.WriteStartObject(name);
        json.WriteString("text", PlainText.Lines(text));
        json.WriteEndObject();
    }

    // In a message, braces stand for arguments (section 3.11.5) and `[text](1)` for a link (3.11.6).
    private static string Literal(string text)
    {
        var literal = text.Replace("{", "{{", StringComparison.Ordinal).Replace("}", "}}", StringComparison.Ordinal);
        return !literal.Contains("](", StringComparison.Ordinal) ? literal
            : literal.Replace("[", "\\[", StringComparison.Ordinal).Replace("]", "\\]", StringComparison.Ordinal);
    }
}
