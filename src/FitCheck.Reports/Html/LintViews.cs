using FitCheck.Findings;
using FitCheck.Foundation;
using FitCheck.Foundation.Problems;
using FitCheck.Reports.Markup;
using FitCheck.Reports.Wording;

namespace FitCheck.Reports.Html;

internal sealed record LintView(StatusView Verdict, string Sentence, string Files, IReadOnlyList<LintFileView> Groups, string Program,
    SafeHtml Style);

internal sealed record LintFileView(string File, IReadOnlyList<ProblemView> Problems);

internal sealed record ProblemView(string Id, StatusView Status, string Severity, string Title, string Message, string? Advice,
    string Rule, string At, IReadOnlyList<DatumView> Related);

/// <summary>Arranges what `lint` found for its page: by file, in file order.</summary>
internal static class LintViews
{
    public static LintView Of(LintResult result, SafeHtml style)
    {
        var help = KindHelp.With(result.Rules).ToDictionary(h => h.Id, StringComparer.Ordinal);
        var views =
            result.Problems.Select((p, i) => (p.At.File, View: Problem(p, $"p{Figures.Whole(i + 1)}", help.GetValueOrDefault(p.Code))));
        return new LintView(
            FindingViews.Status(result.Errors > 0 ? Status.Fail : result.Warnings > 0 ? Status.Warn : Status.Pass),
            Sentences.Lint(result),
            Sentences.Count(result.Files, "file", "files"),
            [.. views.GroupBy(v => v.File, StringComparer.Ordinal)
                .Select(g => new LintFileView(Figures.ShortFile(g.Key), [.. g.Select(v => v.View)]))],
            ProgramName.WithVersion,
            style);
    }

    private static ProblemView Problem(Problem problem, string id, RuleHelp? help) => new(
        id,
        FindingViews.Status(problem.Severity == Severity.Error ? Status.Fail : Status.Warn),
        problem.Severity == Severity.Error ? "error" : "warning",
        help?.Title ?? problem.Code,
        problem.Message,
        help?.Advice,
        problem.Code,
        Figures.ShortPlace(problem.At),
        [.. problem.Related.Select(r => new DatumView(r.What, Figures.ShortPlace(r.At)))]);
}
