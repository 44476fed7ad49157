using FitCheck.Findings;

namespace FitCheck.Reports.Telling;

/// <summary>One thing to measure before money is spent, and what it decides.</summary>
public sealed record MeasureTask(string What, string How, IReadOnlyList<MeasureOutcome> Outcomes);

/// <summary>The value that would pass (null when that can't be told), and the finding that waits for it.</summary>
public sealed record MeasureOutcome(string? Passing, Finding Finding);

/// <summary>The work sheet: one entry a datum, however many findings wait for it.</summary>
public static class MeasureFirst
{
    public static IReadOnlyList<MeasureTask> Of(BuildResult build)
    {
        var tasks = new List<MeasureTask>();
        foreach (var finding in build.Findings)
        {
            if (finding.Status != Status.Measure || finding.Waived is not null)
                continue;
            if (finding.ToMeasure.Count == 0)
                Add(finding.Title, finding.Advice, new(null, finding));
            foreach (var item in finding.ToMeasure)
                Add(item.What, item.How, new(item.Passing, finding));
        }
        return tasks;

        void Add(string what, string how, MeasureOutcome outcome)
        {
            var known = tasks.FindIndex(t => t.What == what && t.How == how);
            if (known < 0)
                tasks.Add(new(what, how, [outcome]));
            else
                tasks[known] = tasks[known] with { Outcomes = [.. tasks[known].Outcomes, outcome] };
        }
    }
}
