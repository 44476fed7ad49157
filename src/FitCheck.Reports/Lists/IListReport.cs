using FitCheck.Lists;
using FitCheck.Reports.Format;

namespace FitCheck.Reports.Lists;

/// <summary>One way of telling what to buy. It decides nothing; it must give the same bytes for the same result on every machine.</summary>
public interface IListReport
{
    /// <summary>The word after `--format`.</summary>
    string Format { get; }

    /// <exception cref="TemplateException">A template of this report is missing or wrong; nothing was written.</exception>
    void Write(ListResult result, ReportOptions options, TextWriter output);
}
