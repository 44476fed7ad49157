using FitCheck.Evaluation;
using FitCheck.Findings;
using FitCheck.Reports.Wording;

namespace FitCheck.Reports.Sheet;

/// <summary>Makes steps of what is done at several places, and of what the rules ask for.</summary>
internal static class SheetSteps
{
    /// <summary>What is the same at several places is said once; a step without words is none.</summary>
    public static IReadOnlyList<StepView> Merged(IEnumerable<(string Where, string? Text)> steps) =>
        [.. steps.Where(s => s.Text is not null).GroupBy(s => s.Text!, StringComparer.Ordinal)
            .Select(g => new StepView(Names.Joined(g.Select(s => s.Where)), g.Key))];

    /// <summary>What fails: to be changed before anything is begun.</summary>
    public static IReadOnlyList<StepView> Stops(BuildResult build) => [.. Told.Of(build, Status.Fail).Select(Step)];

    /// <summary>What warns under one of these families of rules, as work that is planned.</summary>
    public static IReadOnlyList<StepView> Asked(BuildResult build, params string[] families) =>
        [.. Told.Of(build, Status.Warn).Where(t => families.Contains(Family(t.First))).Select(Step)];

    /// <summary>What warns under none of these families.</summary>
    public static IReadOnlyList<StepView> AskedElse(BuildResult build, params string[] families) =>
        [.. Told.Of(build, Status.Warn).Where(t => !families.Contains(Family(t.First))).Select(Step)];

    /// <summary>What the person who planned it accepted, so that whoever mounts it knows of it.</summary>
    public static IReadOnlyList<StepView> Agreed(BuildResult build) =>
        [.. Told.Of(build.Findings.Where(f => f.Waived is not null))
            .Select(t => new StepView(t.Where, $"{t.First.Title}. Agreed when it was planned: {Sentences.Waived(t.First)}"))];

    /// <summary>What has to be measured, with a line for the reading and which reading passes.</summary>
    public static IReadOnlyList<StepView> Measures(BuildResult build) => [.. MeasureFirst.Of(build).Select(Measure)];

    private static StepView Measure(MeasureTask task)
    {
        var passing = task.Outcomes.Select(o => o.Passing).OfType<string>().Distinct(StringComparer.Ordinal).ToList();
        var unit = passing.Count > 0 && passing.TrueForAll(p => p.Contains(" mm", StringComparison.Ordinal)) ? " mm" : "";
        return new StepView(char.ToUpperInvariant(task.What[0]) + task.What[1..], task.How,
            $"{SheetFacts.Blank}{unit}{(passing.Count == 0 ? "" : $"; passes with {string.Join(" and with ", passing)}")}");
    }

    private static StepView Step(Told told) =>
        new(told.Where, told.First.Advice.Length == 0 ? told.First.Message : $"{told.First.Message} {told.First.Advice}");

    private static string Family(Finding finding) => finding.Rule.Split('/')[0];
}
