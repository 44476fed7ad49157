using FitCheck.Evaluation;
using FitCheck.Findings;

namespace FitCheck.Reports.Wording;

/// <summary>
/// The first sentence of a build: the verdict, and before it whether that holds only because somebody waived what is worse.
/// </summary>
internal static class Headline
{
    private const int MostNamed = 3;

    /// <summary>
    /// `On the strength of 2 waivers (Grille near the driver; Gasket too high), this build goes together: all 51 checks pass.`
    /// </summary>
    public static string Of(BuildResult build)
    {
        var points = Tally.OfPoints(build.Findings);
        var sentence = Sentences.Verdict(points);
        if (Strength(build) is not { } strength || points.Checks == 0)
            return sentence;
        // What is waived is said here, and need not be said again.
        sentence = Sentences.Verdict(points with { Waived = 0 });
        return $"{strength} {char.ToLowerInvariant(sentence[0])}{sentence[1..]}";
    }

    /// <summary>`On the strength of 1 waiver (Grille near the driver),`; null when the verdict would be the same without any.</summary>
    public static string? Strength(BuildResult build)
    {
        if (build.RestingOn.Count == 0)
            return null;
        var named = build.RestingOn.Select(f => f.Title).Distinct(StringComparer.Ordinal).ToList();
        var more = named.Count > MostNamed ? $"; and {Figures.Whole(named.Count - MostNamed)} more" : "";
        return $"{(build.Verdict < Status.Measure ? "On the strength of" : "Even with")} {Count(build)} ("
            + $"{string.Join("; ", named.Take(MostNamed))}{more}),";
    }

    /// <summary>`2 waivers`.</summary>
    public static string Count(BuildResult build) => Sentences.Count(build.WaiversRestedOn, "waiver", "waivers");
}
