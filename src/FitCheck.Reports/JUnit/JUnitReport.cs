using FitCheck.Evaluation;
using FitCheck.Findings;
using FitCheck.Foundation;
using FitCheck.Foundation.Problems;
using FitCheck.Reports.Format;
using FitCheck.Reports.Wording;

namespace FitCheck.Reports.JUnit;

/// <summary>
/// For servers that show tests: a build is a suite, a rule at a position is a case. It fails from the status up from which the run fails.
/// </summary>
internal sealed class JUnitReport : ILintReport
{
    public string Format => "junit";

    public void Write(CheckResult result, ReportOptions options, TextWriter output)
    {
        if (QuickProgram.IsThis)
            throw new HandOverException();
        JUnitFile.Write("fitcheck check", options.AsExpected ? Meant.Of(result, options).Select(m => Suite(m, options))
            : result.Builds.Select(b => Suite(b, b.Findings, [], options)), output);
    }

    public void Write(LintResult result, ReportOptions options, TextWriter output)
    {
        if (QuickProgram.IsThis)
            throw new HandOverException();
        List<JUnitCase> cases = [.. result.Problems.Select(p => Case(p, options))];
        // A server takes a suite without a case for a run that broke off.
        if (cases.Count == 0)
            cases.Add(new JUnitCase("lint", "nothing wrong", "", 0, JUnitOutcome.Passed, $"{Figures.Whole(result.Files)} files read.", ""));
        JUnitFile.Write("fitcheck lint", [new JUnitSuite("catalog, rules and builds", [("files", Figures.Whole(result.Files))], cases)],
            output);
    }

    // What is as meant is one case; what is not, and what waits for a measurement, is told.
    private static JUnitSuite Suite(Meant meant, ReportOptions options)
    {
        var file = FileNames.In(options.Root, meant.Build.File);
        List<JUnitCase> cases = [.. meant.Unmet.Select(p => Case(p, options))];
        if (cases.Count == 0)
            cases.Add(new JUnitCase(file, meant.IsMet ? "as meant" : "the rest", file, 0, JUnitOutcome.Passed, meant.Rest, ""));
        return Suite(meant.Build, meant.Told, cases, options);
    }

    private static JUnitSuite Suite(BuildResult build, IReadOnlyList<Finding> findings, List<JUnitCase> first, ReportOptions options)
    {
        var file = FileNames.In(options.Root, build.File);
        return new JUnitSuite(build.Name, [("file", file), ("vehicle", build.VehicleName), ("verdict", build.Verdict.Word()),
                .. VehicleWords.Note(build.StandIn) is { } note ? new[] { ("stand-in", note) } : [],
                .. Headline.Strength(build) is null ? [] : new[] { ("headline", Headline.Of(build)) },
                .. build.RuleChanges.Select(c => ("rule of this shop", Sentences.Changed(c)))],
            [.. first, .. findings.Select(f => Case(f, file, options)), .. build.Remarks.Select(r => Case(r, options))]);
    }

    private static JUnitCase Case(Finding finding, string file, ReportOptions options)
    {
        var outcome = finding.Waived is not null ? JUnitOutcome.Skipped
            : finding.Status >= options.FailOn ? JUnitOutcome.Failed
            : finding.Status == Status.Measure ? JUnitOutcome.Skipped
            : JUnitOutcome.Passed;
        var message = $"{finding.PositionName}: {finding.Message}";
        var brief = finding.Waived is not null ? $"waived ({finding.Status.Word()}): {Sentences.Waived(finding)}"
            : outcome == JUnitOutcome.Skipped ? ToMeasure(finding)
            : message;
        return new JUnitCase(file, $"{finding.Rule} {finding.Position}", FileNames.In(options.Root, finding.At.File), finding.At.Line,
            outcome, brief, Detail(finding, message, options))
        {
            Type = finding.Status.Word(),
        };
    }

    private static JUnitCase Case(Problem problem, ReportOptions options)
    {
        var isFailed = problem.Severity == Severity.Error || options.FailOn <= Status.Warn;
        var at = problem.At with { File = FileNames.In(options.Root, problem.At.File) };
        return new JUnitCase(at.File, $"{problem.Code} {problem.Subject ?? problem.Message}", at.File, at.Line,
            isFailed ? JUnitOutcome.Failed : JUnitOutcome.Passed, problem.Message,
            string.Join('\n', problem.Related.Select(r => $"{Place(r.At, options)}: {r.What}").Prepend($"{at}: {problem.Message}")))
        {
            Type = problem.Severity == Severity.Error ? "error" : "warning",
        };
    }

    private static string ToMeasure(Finding finding) => finding.ToMeasure.Count == 0 ? $"{finding.Message} {finding.Advice}"
        : string.Join(" ",
        finding.ToMeasure.Select(m => $"Measure {m.What}: {m.How}{(m.Passing is null ? "" : $" Passes with {m.Passing}.")}"));

    private static string Detail(Finding finding, string message, ReportOptions options)
    {
        List<string> lines = [$"{finding.Status.Word()}: {message}"];
        if (Figures.Row(finding) is { Length: > 0 } row)
            lines.Add(row);
        if (finding.Status == Status.Pass)
            return string.Join('\n', lines);
        if (finding.Advice.Length > 0)
            lines.Add(finding.Advice);
        if (finding.Status == Status.Measure)
            lines.Add(ToMeasure(finding));
        lines.Add($"{Place(finding.At, options)}: {finding.Title}");
        lines.AddRange(finding.Related.Select(r => $"{Place(r.At, options)}: {r.What}"));
        return string.Join('\n', lines);
    }

    private static string Place(Location at, ReportOptions options) => (at with { File = FileNames.In(options.Root, at.File) }).ToString();
}
