using FitCheck.Findings;
using FitCheck.Foundation.Problems;

namespace FitCheck.Reports.Wording;

/// <summary>Tells kinds of problems as rules are told.</summary>
internal static class KindHelp
{
    /// <summary>What is told of everything that a problem may be filed under.</summary>
    public static IReadOnlyList<RuleHelp> With(IEnumerable<RuleHelp> rules) => [.. rules, .. ProblemKind.All.Select(k => k.Help())];

    /// <summary>A kind has no source: it is this program's own demand.</summary>
    private static RuleHelp Help(this ProblemKind kind) =>
        new(kind.Id, kind.Title, kind.Why, kind.Advice, Source: null, Url: null,
            CanFail: kind != ProblemKind.IdleWaiver && kind != ProblemKind.EndedWaiver && kind != ProblemKind.NotRead);
}
