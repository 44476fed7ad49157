using FitCheck.Findings;

namespace FitCheck.Charts;

/// <summary>The few words of a row that are kept where there are very many.</summary>
/// <param name="Driver">The driver's id.</param>
/// <param name="Margin">The smallest distance of a length to its limit in millimetres; null when none is known.</param>
/// <param name="Alike">What does not pass, by rule, value and limit: rows of which this is the same are told as one.</param>
/// <param name="Rule">The rule that decides; empty where none said anything.</param>
/// <param name="Message">What it says.</param>
/// <param name="OtherWork">The work that is needed beside that.</param>
internal sealed record RowInBrief(string Driver, double? Margin, string Alike, string Rule, string Message,
    IReadOnlyList<(string Title, string Message)> OtherWork)
{
    public static RowInBrief Of(string driver, IReadOnlyList<Finding> findings, IReadOnlyList<Finding> work) =>
        new(driver, Least(findings),
            string.Join('\0', findings.Where(f => f.Status != Status.Pass).Select(f => $"{f.Rule} {f.ValueText} {f.Limit}")),
            findings.Count > 0 ? findings[0].Rule : "", findings.Count > 0 ? findings[0].Message : "",
            [.. work.Where(w => w != findings[0]).Select(w => (w.Title, w.Message))]);

    /// <summary>The smallest distance of a length to its limit in millimetres; null when none is known.</summary>
    public static double? Least(IReadOnlyList<Finding> findings)
    {
        double? least = null;
        foreach (var finding in findings)
        {
            if (finding is { Unit: "mm", Margin: { } margin } && !(margin >= least))
                least = margin;
        }
        return least;
    }
}
