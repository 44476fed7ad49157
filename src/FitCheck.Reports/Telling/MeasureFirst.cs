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
        var outcomes = new Dictionary<(string What, string How), List<MeasureOutcome>>();
        var order = new List<(string What, string How)>();
        foreach (var finding in build.Findings)
        {
            if (finding.Status != Status.Measure || finding.Waived is not null)
                continue;
            if (finding.ToMeasure.Count == 0)
                Add((finding.Title, finding.Advice), new(null, finding));
            foreach (var item in finding.ToMeasure)
                Add((item.What, item.How), new(item.Passing, finding));
        }
        var tasks = new List<MeasureTask>(order.Count);
        foreach (var key in order)
            tasks.Add(new(key.What, key.How, outcomes[key]));
        return tasks;

        void Add((string What, string How) key, MeasureOutcome outcome)
        {
            if (!outcomes.TryGetValue(key, out var list))
            {
                outcomes.Add(key, list = []);
                order.Add(key);
            }
            list.Add(outcome);
        }
    }
}
