using FitCheck.Findings;
using FitCheck.Foundation.Problems;
using FitCheck.Rules.Model;
using FitCheck.Rules.Verdicts;

namespace FitCheck.Rules.Files;

/// <summary>
/// Holds a later directory to a rule that is never waived: it may say it in other words and more strictly, no more. A change loosens such a
/// rule when a value that fails now would warn or pass, or one that warns now would pass; when it is asked of something else or elsewhere;
/// and when it could be waived. What can't be compared counts as loosened.
/// </summary>
internal static class RuleStrictness
{
    /// <summary>Why a rule stays as it is, for a file that wants it otherwise.</summary>
    public static string Unmoved(Rule before, string what) =>
        $"`{before.Id}` is a rule that is never waived (`waive: never`), so no other directory of rules {what}: {before.Why}";

    /// <summary>Tells what a rule loosens of the one whose place it takes.</summary>
    public static void Check(Rule before, Rule after, ProblemList problems)
    {
        Same("subject", before.Subject == after.Subject, "can ask it of something else");
        Same("about", before.About.SequenceEqual(after.About, StringComparer.Ordinal), "can point it at something else");
        Same("when", Words(before.When?.Text) == Words(after.When?.Text),
            $"can change when it applies ({(before.When is { } when ? $"`when: {when.Text}`" : "always")})");
        Same("fact", Words(before.Fact.Text) == Words(after.Fact.Text), $"can have it judge something else than `{before.Fact.Text}`");
        Same("unit", before.Unit == after.Unit, "can change its unit");
        Same("caution", before.Caution is null || after.Caution is not null, "can take away its caution");
        Same("asks_for", before.AsksFor?.Words == after.AsksFor?.Words, "can ask for another part");
        Same("waive", !after.CanBeWaived, "can let it be waived; keep `waive: never`");
        foreach (var (status, side, bound) in Limit.AllOf(before))
        {
            if (!Limit.AllOf(after).Any(l => l.Status >= status && l.Side == side && Holds(side, l.Bound, bound)))
                Loosened(status, $"{side.ToString().ToLowerInvariant()} {bound.Text}");
        }

        void Same(string key, bool isSame, string what)
        {
            if (!isSame)
                problems.Error(after.PlaceOf(key), Unmoved(before, what), ProblemKind.BrokenRule);
        }

        void Loosened(Status status, string limit) =>
            problems.Error(after.PlaceOf(status.Word()), Unmoved(before, $"can loosen where it {status.Word()}s ({limit})"),
                ProblemKind.BrokenRule);
    }

    private static bool Holds(LimitSide side, Conditions.Expression now, Conditions.Expression before) =>
        Words(now.Text) == Words(before.Text) || side switch
        {
            LimitSide.Below => now.IsAtLeast(before),
            LimitSide.Above => before.IsAtLeast(now),
            _ => false,
        };

    private static string? Words(string? text) =>
        text is null ? null : string.Join(' ', text.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));
}
