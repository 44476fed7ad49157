using FitCheck.Evaluation;
using FitCheck.Findings;
using FitCheck.Foundation.Problems;
using FitCheck.Reports.Format;

namespace FitCheck.Reports.Wording;

/// <summary>
/// A build held to what it is meant to give, for the reports of a run with `--as-expected`: what is as meant is counted, all else is told.
/// </summary>
/// <param name="Build">What was found.</param>
/// <param name="Unmet">Each difference to what it says that it is meant to give; empty where it says nothing.</param>
/// <param name="FailOn">What a build must stay below that says nothing.</param>
internal sealed record Meant(BuildResult Build, IReadOnlyList<Problem> Unmet, Status FailOn)
{
    public static IReadOnlyList<Meant> Of(CheckResult result, ReportOptions options)
    {
        List<string> rules = [.. result.Rules.Select(r => r.Id)];
        return [.. result.Builds.Select(b => new Meant(b, Expectations.Unmet(b, rules), options.FailOn))];
    }

    public bool IsMet => Build.Expected is not null ? Unmet.Count == 0
        : Build.Verdict < FailOn && !(FailOn <= Status.Warn && Build.Remarks.Count > 0);

    /// <summary>What is told one by one: of a build that says nothing, what fails the run and what waits for a measurement.</summary>
    public IReadOnlyList<Finding> Told => Build.Expected is not null ? [] : [.. Build.Findings.Where(Tells)];

    /// <summary>`as meant: fail`, and how many checks are behind that.</summary>
    public string Rest
    {
        get
        {
            var rest = Told.Count == 0 ? Build.Findings : [.. Build.Findings.Where(f => !Tells(f))];
            return $"{(IsMet ? "as meant" : "not as meant")}: {Build.Verdict.Word()}; "
                + $"{(Told.Count == 0 ? "" : "beside what is told here, ")}{Tally.OfPoints(rest)}";
        }
    }

    /// <summary>`all 61 builds are as meant`.</summary>
    public static string Headline(IReadOnlyList<Meant> builds)
    {
        var unmet = builds.Count(b => !b.IsMet);
        return builds.Count == 0 ? "no build was checked"
            : builds.Count == 1 ? $"the build is {(unmet == 0 ? "" : "not ")}as meant"
            : unmet == 0 ? $"all {Figures.Whole(builds.Count)} builds are as meant"
            : $"{Figures.Whole(unmet)} of {Figures.Whole(builds.Count)} builds {(unmet == 1 ? "is" : "are")} not as meant";
    }

    private bool Tells(Finding finding) => finding.Waived is null && (finding.Status >= FailOn || finding.Status == Status.Measure);
}
