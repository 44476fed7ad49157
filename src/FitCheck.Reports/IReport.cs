using FitCheck.Findings;

namespace FitCheck.Reports;

/// <summary>One way of telling a result. It decides nothing; it must give the same bytes for the same result on every machine.</summary>
public interface IReport
{
    /// <summary>The word after `--format`.</summary>
    string Format { get; }

    void Write(CheckResult result, ReportOptions options, TextWriter output);
}
