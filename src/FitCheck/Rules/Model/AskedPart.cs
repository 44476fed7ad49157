using FitCheck.Foundation.Problems;
using FitCheck.Schemas;

namespace FitCheck.Rules.Model;

/// <summary>
/// What sort of part would cure what a rule finds: `asks_for: { kind: sundry, type: heat-shrink }`. A list of parts to buy looks for one.
/// </summary>
/// <param name="Kind">A kind of the catalog.</param>
/// <param name="Types">Types of that kind, any of which will do; empty for every one.</param>
/// <param name="Goes">Where a build names it: a word of <see cref="Places"/>.</param>
/// <param name="Length">The shortest that will do, in metres; null for any.</param>
internal sealed record AskedPart(string Kind, IReadOnlyList<string> Types, string Goes, double? Length)
{
    /// <summary>Where a build can name a part that is missing.</summary>
    public static readonly IReadOnlyList<string> Places = ["with", "harness", "fuse", "power_cable", "ground_cable", "extras"];

    /// <summary>`heat-shrink`, `foam-tape or damping-sheet`, `harness`.</summary>
    public string Words => Types.Count == 0 ? Kind : string.Join(" or ", Types);

    /// <summary>Tells types that the kind does not have; they would be looked for in vain.</summary>
    internal static void Check(Rule rule, ProblemList problems)
    {
        if (rule.AsksFor is not { } asked || SchemaText.WordsOf(asked.Kind, "type") is not { } known)
            return;
        foreach (var type in asked.Types.Where(t => !known.Contains(t)))
            problems.Error(rule.PlaceOf("asks_for"), $"no {asked.Kind} has the type `{type}`{Nearest.Hint(type, known)}",
                ProblemKind.BrokenRule);
    }
}
