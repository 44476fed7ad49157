using FitCheck.Findings;
using FitCheck.Foundation.Problems;

namespace FitCheck.Tests.Reports;

/// <summary>What `lint` might find: form and plausibility, errors and warnings, a whole file and a place.</summary>
internal static class SampleLint
{
    public static LintResult Full => new(
    [
        new(new Location("builds/quote.yaml", 0, 0), Severity.Error, "no such file") { Kind = ProblemKind.Unreadable },
        new(new Location("catalog/drivers/heron-165.yaml", 7, 5), Severity.Error,
            "unknown key `drivr`; did you mean `driver`?") { Kind = ProblemKind.WrongShape },
        new(new Location("catalog/drivers/heron-165.yaml", 9, 3), Severity.Error,
            "the key `depth` appears twice; the first is in line 6") { Kind = ProblemKind.BrokenYaml },
        new(new Location("catalog/drivers/heron-165.yaml", 25, 7), Severity.Warning,
            "Heron 165: the voice coil measures 70 % of the rated impedance; 0.75 to 0.92 is usual.")
        {
            Rule = "data/resistance-implausible",
            Subject = "heron-165",
            Related = [new(new Location("catalog/drivers/heron-165.yaml", 24, 7), "rated impedance 4 ohm"),
                new(new Location("rules/data/resistance-implausible.yaml", 9, 16), "threshold of the rule")],
        },
    ], 12)
    {
        Rules = [new RuleHelp("data/resistance-implausible", "DC resistance against the rated impedance", "The two belong together.",
            "Look at the sheet again.", "common practice, no source", null, CanFail: false)],
    };

    /// <summary>The same problem with this text wherever a file may bring one.</summary>
    public static LintResult Everywhere(string text) => new(
    [
        new(new Location(text, 3, 4), Severity.Error, text) { Rule = text, Subject = text,
            Related = [new(new Location(text, 5, 6), text)] },
        new(new Location(text, 3, 4), Severity.Warning, text),
    ], 1)
    {
        Rules = [new RuleHelp(text, text, text, text, text, text, CanFail: true)],
    };
}
