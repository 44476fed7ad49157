using FitCheck.Evaluation;

namespace FitCheck.Reports.Format;

/// <summary>A report whose text goes through <see cref="ShownText"/>, whoever asks for it.</summary>
internal class ShownReport(IReport report) : IReport
{
    public string Format => report.Format;

    public static IReport Of(IReport report) => report is ILintReport lint ? new ShownLintReport(lint) : new ShownReport(report);

    public void Write(CheckResult result, ReportOptions options, TextWriter output) =>
        ShownText.Tell(output, Format, shown => report.Write(result, options, shown));
}

/// <summary>The same of one that tells what `lint` found too.</summary>
internal sealed class ShownLintReport(ILintReport report) : ShownReport(report), ILintReport
{
    public void Write(LintResult result, ReportOptions options, TextWriter output) =>
        ShownText.Tell(output, Format, shown => report.Write(result, options, shown));
}
