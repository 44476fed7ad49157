using System.Text.Json;
using FitCheck.Evaluation;
using FitCheck.Findings;
using FitCheck.Foundation;
using FitCheck.Foundation.Problems;
using FitCheck.Reports.Format;
using FitCheck.Reports.Json;
using FitCheck.Reports.Wording;

namespace FitCheck.Reports.Sarif;

/// <summary>For code scanning: SARIF 2.1.0. Passes are left out; a waived finding is suppressed with its reason.</summary>
internal sealed class SarifReport : ILintReport
{
    public string Format => "sarif";

    public void Write(CheckResult result, ReportOptions options, TextWriter output)
    {
        if (QuickProgram.IsThis)
            throw new HandOverException();
        List<SarifResult> results = [];
        foreach (var build in result.Builds)
        {
            results.AddRange(build.Findings.Where(f => f.Status != Status.Pass).Select(Result));
            results.AddRange(Results(new LintResult(build.Remarks, 1), options));
        }
        string[] changes = [.. result.Builds.SelectMany(b => b.RuleChanges).Distinct().Select(Sentences.Changed)];
        string[] headlines = [.. result.Builds.Where(b => b.RestingOn.Count > 0).Select(b => $"{b.Name}: {Headline.Of(b)}")];
        Log("fitcheck-check", result.Rules, results, options, output, changes, headlines);
    }

    public void Write(LintResult result, ReportOptions options, TextWriter output)
    {
        if (QuickProgram.IsThis)
            throw new HandOverException();
        Log("fitcheck-lint", result.Rules, [.. Results(result, options)], options, output, [], []);
    }

    private static void Log(string category, IReadOnlyList<RuleHelp> rules, IReadOnlyList<SarifResult> results, ReportOptions options,
        TextWriter output, IReadOnlyList<string> changes, IReadOnlyList<string> headlines) =>
        new SarifLog(category, [.. KindHelp.With(rules).Select(h => new SarifRule(h))], results,
            options.Root)
        { RuleChanges = changes, Headlines = headlines }.Write(output);

    private static SarifResult Result(Finding finding) =>
        new(finding.Rule, finding.Status == Status.Fail ? "error" : "warning", Sentence(finding), finding.At)
        {
            Related = finding.Related,
            Fingerprint = finding.Fingerprint,
            Subject = finding.PositionName,
            Accepted = finding.Waived is null ? null : Sentences.Waived(finding),
            Properties = json => WriteProperties(json, finding),
        };

    private static string Sentence(Finding finding) =>
        $"{finding.PositionName}: {finding.Message}{(finding.Advice.Length > 0 ? " " + finding.Advice : "")}";

    private static void WriteProperties(Utf8JsonWriter json, Finding finding)
    {
        json.WriteString("status", finding.Status.Word());
        json.WriteString("position", finding.Position);
        if (!Figures.Tell(finding))
            return;
        json.WriteString("unit", finding.Unit);
        json.WriteRounded("value", finding.Value?.Value);
        json.WriteRounded("limit", finding.Limit);
        json.WriteRounded("margin", finding.Margin);
    }

    private static IEnumerable<SarifResult> Results(LintResult lint, ReportOptions options)
    {
        var fingerprints = lint.Fingerprints(f => FileNames.Alike(options.Root, f));
        return lint.Problems.Select((p, i) => new SarifResult(p.Code, p.Severity == Severity.Error ? "error" : "warning", p.Message, p.At)
        {
            Related = p.Related,
            Fingerprint = fingerprints[i],
            Subject = p.Subject,
        });
    }
}
