using FitCheck.Charts;
using FitCheck.Evaluation;
using FitCheck.Foundation;
using FitCheck.Foundation.Problems;

namespace FitCheck;

/// <summary>What `chart` found: a result, or the reasons why there is none.</summary>
public sealed record ChartOutcome(ChartResult? Result, IReadOnlyList<Problem> Problems);

/// <summary>Which drivers fit which positions: every pair is judged on every mounting that the catalog has for it, by the rules that need no build.</summary>
public static class Chart
{
    /// <summary>Works out the chart or a slice of it. Bad input comes back as problems, never as an exception.</summary>
    public static ChartOutcome Run(ChartSlice slice, Folders folders, Remembered remembered, Action<string>? progress = null)
    {
        var problems = new ProblemList();
        if (Workshop.Open(folders, remembered, problems, progress) is not { } workshop)
            return new ChartOutcome(null, problems.Sorted());
        var result = PairChart.Of(workshop.Catalog, workshop.Rules, slice, problems);
        return problems.HasErrors ? new ChartOutcome(null, problems.All) : new ChartOutcome(result, problems.Sorted());
    }
}
