using FitCheck.Evaluation;

namespace FitCheck.Reports.Wording;

/// <summary>Rules that did not apply for one reason, and where.</summary>
internal sealed record Unjudged(string Reason, string Where, IReadOnlyList<string> Rules)
{
    public const string Title = "Not judged";

    /// <summary>How many there are.</summary>
    public static string Lead(BuildResult build) =>
        $"{Sentences.Count(build.NotJudgedCount, "rule", "rules")} did not apply, counted position by position.";

    /// <summary>What is alike is told at once: the rules that have one reason at the same places.</summary>
    public static IReadOnlyList<Unjudged> Of(BuildResult build) =>
        [.. build.NotJudged.GroupBy(n => (n.Rule, n.Reason))
            .GroupBy(r => (r.Key.Reason, Where: Names.Joined(r.Select(n => n.PositionName))), r => r.Key.Rule)
            .OrderBy(g => g.Key.Reason, StringComparer.Ordinal).ThenBy(g => g.Key.Where, StringComparer.Ordinal)
            .Select(g => new Unjudged(g.Key.Reason, g.Key.Where, [.. g.Order(StringComparer.Ordinal)]))];
}
