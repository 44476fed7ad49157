using FitCheck.Evaluation;

namespace FitCheck.Reports.Format;

/// <summary>One way of telling a result. It decides nothing; it must give the same bytes for the same result on every machine.</summary>
public interface IReport
{
    /// <summary>The word after `--format`.</summary>
    string Format { get; }

    /// <exception cref="TemplateException">A template of this report is missing or wrong; nothing was written.</exception>
    void Write(CheckResult result, ReportOptions options, TextWriter output);
}
