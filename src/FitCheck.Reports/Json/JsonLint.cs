using System.Text.Json;
using FitCheck.Foundation;
using FitCheck.Foundation.Problems;
using FitCheck.Reports.Format;
using FitCheck.Reports.Wording;

namespace FitCheck.Reports.Json;

/// <summary>What `lint` found, for programs. The shape is published in reports/schema/lint.schema.json.</summary>
internal static class JsonLint
{
    public const int Shape = 1;

    public static void Write(Utf8JsonWriter json, LintResult result, ReportOptions options)
    {
        var fingerprints = result.Fingerprints(f => FileNames.Alike(options.Root, f));
        json.WriteStartObject();
        json.WriteNumber("format", Shape);
        json.WriteString("program", ProgramName.WithVersion);
        json.WriteNumber("files", result.Files);
        json.WriteNumber("errors", result.Errors);
        json.WriteNumber("warnings", result.Warnings);
        json.WriteStartArray("problems");
        for (var i = 0; i < result.Problems.Count; i++)
            WriteProblem(json, result.Problems[i], fingerprints[i]);
        json.WriteEndArray();
        json.WriteEndObject();
    }

    private static void WriteProblem(Utf8JsonWriter json, Problem problem, string fingerprint)
    {
        json.WriteStartObject();
        json.WriteString("rule", problem.Code);
        json.WriteString("severity", problem.Severity == Severity.Error ? "error" : "warning");
        json.WriteString("message", problem.Message);
        JsonReport.WritePlace(json, "at", problem.At);
        json.WriteStartArray("related");
        foreach (var related in problem.Related)
            JsonReport.WritePlace(json, null, related.At, "what", related.What);
        json.WriteEndArray();
        json.WriteString("fingerprint", fingerprint);
        json.WriteEndObject();
    }
}
