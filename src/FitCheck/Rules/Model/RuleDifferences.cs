using FitCheck.Findings;
using FitCheck.Foundation.Problems;

namespace FitCheck.Rules.Model;

/// <summary>Says in words what a later directory did to a rule.</summary>
internal static class RuleDifferences
{
    public static RuleChange Added(Rule rule) => new(rule.Id, rule.Title, "added", IsOff: false, null, rule.At);

    public static RuleChange Replaced(Rule before, Rule after) =>
        new(after.Id, after.Title,
            Limits(before, after) is { Length: > 0 } limits ? $"replaced: {limits}" : "replaced, with the same limits", IsOff: false, null,
            after.At);

    public static RuleChange Changed(Rule before, Rule after, string reason, Location at) =>
        new(after.Id, after.Title, Limits(before, after) is { Length: > 0 } limits ? limits : "other words, with the same limits",
            IsOff: false, reason, at);

    public static RuleChange SwitchedOff(Rule before, string reason, Location at) =>
        new(before.Id, before.Title, "switched off", IsOff: true, reason, at);

    private static string Limits(Rule before, Rule after) => string.Join("; ", Differences(before, after));

    private static IEnumerable<string> Differences(Rule before, Rule after)
    {
        if (Difference("warns", before.Warn, after.Warn) is { } warn)
            yield return warn;
        if (Difference("fails", before.Fail, after.Fail) is { } fail)
            yield return fail;
        if (before.CanBeWaived && !after.CanBeWaived)
            yield return "can't be waived any more";
        if (before.Fact.Text != after.Fact.Text)
            yield return $"judges `{after.Fact.Text}` instead of `{before.Fact.Text}`";
        if (before.When?.Text != after.When?.Text)
            yield return $"applies {(after.When is { } when ? $"when `{when.Text}`" : "always")}";
    }

    private static string? Difference(string verb, Threshold? before, Threshold? after)
    {
        var (was, now) = (before?.ToString() ?? "never", after?.ToString() ?? "never");
        return was == now ? null : $"{verb} {now} instead of {was}";
    }
}
