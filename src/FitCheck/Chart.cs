using FitCheck.Charts;
using FitCheck.Evaluation;
using FitCheck.Foundation;
using FitCheck.Foundation.Problems;

namespace FitCheck;

/// <summary>What `chart` found: a result, or the reasons why there is none.</summary>
public sealed record ChartOutcome(ChartResult? Result, IReadOnlyList<Problem> Problems);

/// <summary>Which drivers fit which positions: every pair is judged on every mounting that the catalog has for it, by the rules that need no build.</summary>
internal static class Chart
{
    /// <summary>Works out the chart or a slice of it once: opens, charts and forgets. Who asks more than once keeps a <see cref="Checker"/> open.</summary>
    public static ChartOutcome Run(ChartSlice slice, Folders folders, ValidationCache cache, Action<string>? progress = null)
    {
        var told = Telling.By(progress);
        var opened = Checker.Open(CheckerOptions.Of(folders, cache, told));
        if (opened.Checker is not { } checker)
            return new ChartOutcome(null, opened.Problems);
        var outcome = checker.Chart(new ChartOptions { Slice = slice, Progress = told });
        return outcome with { Problems = outcome.Result is null ? outcome.Problems : opened.With(outcome.Problems) };
    }
}
