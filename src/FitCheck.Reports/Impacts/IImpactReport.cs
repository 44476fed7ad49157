using FitCheck.Impacts;
using FitCheck.Reports.Format;

namespace FitCheck.Reports.Impacts;

/// <summary>
/// One way of telling what a change does. It decides nothing; it must give the same bytes for the same result on every machine.
/// </summary>
internal interface IImpactReport
{
    /// <summary>The word after `--format`.</summary>
    string Format { get; }

    void Write(ImpactResult result, ReportOptions options, TextWriter output);
}

/// <summary>Every format of an impact.</summary>
internal static class ImpactReports
{
    public static IReadOnlyList<IImpactReport> All { get; } = [new ImpactText(), new ImpactMarkdown(), new ImpactJson(),
        new ImpactGitHub()];

    public static string[] Formats => [.. All.Select(r => r.Format)];

    public static IImpactReport? Find(string format) => All.FirstOrDefault(r => r.Format == format);
}
