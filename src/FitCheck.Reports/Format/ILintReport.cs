namespace FitCheck.Reports.Format;

/// <summary>A report that can also tell what `lint` found.</summary>
public interface ILintReport : IReport
{
    /// <exception cref="TemplateException">A template of this report is missing or wrong; nothing was written.</exception>
    void Write(LintResult result, ReportOptions options, TextWriter output);
}
