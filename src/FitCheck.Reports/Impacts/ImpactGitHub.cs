using FitCheck.Foundation.Problems;
using FitCheck.Impacts;
using FitCheck.Reports.Format;
using FitCheck.Reports.GitHub;
using FitCheck.Reports.Wording;

namespace FitCheck.Reports.Impacts;

/// <summary>
/// For the log of a GitHub workflow: a mark on the line that makes a build worse, or on the build where no line is known.
/// </summary>
internal sealed class ImpactGitHub : IImpactReport
{
    public string Format => "github";

    public void Write(ImpactResult result, ReportOptions options, TextWriter output)
    {
        foreach (var build in result.Builds.Where(b => b.IsWorse))
        {
            var command = build.Accepted ? "notice" : "error";
            if (build.Fate == BuildFate.Gone)
                GitHubReport.Command(command, build.At, build.Name, $"{build.Name} {ImpactWords.Fate(build)}.", options, output);
            foreach (var problem in build.Problems)
                GitHubReport.Command(command, problem.At, $"{build.Name} {ImpactWords.Fate(build)}", problem.Message, options, output);
            foreach (var (change, where) in ImpactWords.Findings(build).Where(f => f.First.IsWorse))
            {
                var at = change.Causes.Count > 0 ? change.Causes[0].At : build.At;
                var because = change.Causes.Count > 0 ? $"\nBecause {Names.Listed([.. change.Causes.Select(c => c.What)])}." : "";
                GitHubReport.Command(command, at, $"{build.Name} {ImpactWords.Fate(build)}",
                    $"{where}: {ImpactWords.Step(change)}. {change.Finding.Message}{because}", options, output);
            }
        }
    }
}
