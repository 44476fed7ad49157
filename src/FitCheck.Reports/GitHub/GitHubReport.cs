using System.Globalization;
using FitCheck.Evaluation;
using FitCheck.Findings;
using FitCheck.Foundation;
using FitCheck.Foundation.Problems;
using FitCheck.Reports.Format;
using FitCheck.Reports.Wording;

namespace FitCheck.Reports.GitHub;

/// <summary>
/// For the log of a GitHub workflow: one command a line, which the site shows beside the line of the file. Worst first, because it shows
/// ten of a kind for each step. Passes and waived findings are left out.
/// </summary>
internal sealed class GitHubReport : ILintReport
{
    public string Format => "github";

    public void Write(CheckResult result, ReportOptions options, TextWriter output)
    {
        if (QuickProgram.IsThis)
            throw new HandOverException();
        var builds = result.Builds;
        if (options.AsExpected)
        {
            var meant = Meant.Of(result, options);
            Tell(new LintResult([.. meant.SelectMany(m => m.Unmet)], 0), options, output);
            builds = [.. meant.Select(m => m.Build with { Findings = m.Told })];
        }
        foreach (var status in new[] { Status.Fail, Status.Measure, Status.Warn })
        {
            foreach (var build in builds)
            {
                foreach (var told in Told.Of(build, status))
                    Tell(told, options, output);
            }
        }
        // Waived findings are left out, and nobody would see what the verdict rests on.
        foreach (var build in result.Builds.Where(b => b.RestingOn.Count > 0))
            Command("notice", new Location(build.File, 1, 1),
                $"{build.Name}: {build.Verdict.Word()} on the strength of {Headline.Count(build)}", Headline.Of(build), options, output);
        foreach (var change in result.Builds.SelectMany(b => b.RuleChanges).Distinct())
            Command("notice", change.At, Sentences.RulesOfThisShop, Sentences.Changed(change), options, output);
        Tell(new LintResult([.. result.Builds.SelectMany(b => b.Remarks)], 0), options, output);
    }

    public void Write(LintResult result, ReportOptions options, TextWriter output)
    {
        if (QuickProgram.IsThis)
            throw new HandOverException();
        Tell(result, options, output);
    }

    private static void Tell(LintResult lint, ReportOptions options, TextWriter output)
    {
        var titles = KindHelp.With(lint.Rules).ToDictionary(h => h.Id, h => $"{h.Title} ({h.Id})", StringComparer.Ordinal);
        foreach (var problem in lint.Problems.OrderByDescending(p => p.Severity))
            Command(problem.Severity == Severity.Error ? "error" : "warning", problem.At,
                titles.GetValueOrDefault(problem.Code, problem.Code), problem.Message, options, output);
    }

    private static void Tell(Told told, ReportOptions options, TextWriter output)
    {
        var finding = told.First;
        var command = finding.Status switch { Status.Fail => "error", Status.Measure => "notice", _ => "warning" };
        var message = $"{told.Where}: {finding.Message}";
        if (Figures.Row(finding) is { Length: > 0 } row)
            message += $"\n{row}";
        if (finding.Advice.Length > 0)
            message += $"\n{finding.Advice}";
        foreach (var at in told.Places)
            Command(command, at, $"{finding.Title} ({finding.Status.Word()}, {finding.Rule})", message, options, output);
    }

    internal static void Command(string command, Location at, string title, string message, ReportOptions options, TextWriter output)
    {
        var place = $"file={Property(FileNames.In(options.Root, at.File))}";
        if (at.Line > 0)
            place += string.Create(CultureInfo.InvariantCulture, $",line={at.Line},col={Math.Max(1, at.Column)}");
        output.Write($"::{command} {place},title={Property(PlainText.Line(title))}::{Data(PlainText.Lines(message))}\n");
    }

    private static string Data(string text) =>
        text.Replace("%", "%25", StringComparison.Ordinal).Replace("\r", "%0D", StringComparison.Ordinal)
            .Replace("\n", "%0A", StringComparison.Ordinal);

    private static string Property(string text) =>
        Data(text).Replace(":", "%3A", StringComparison.Ordinal).Replace(",", "%2C", StringComparison.Ordinal);
}
