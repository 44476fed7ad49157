using FitCheck.Charts;
using FitCheck.Reports.Format;

namespace FitCheck.Reports.Charts;

/// <summary>One way of telling a chart. It decides nothing; it must give the same bytes for the same result on every machine.</summary>
public interface IChartReport
{
    /// <summary>The word after `--format`.</summary>
    string Format { get; }

    /// <exception cref="TemplateException">A template of this report is missing or wrong; nothing was written.</exception>
    void Write(ChartResult result, ReportOptions options, TextWriter output);
}
