using FitCheck.Catalog;
using FitCheck.Facts;
using FitCheck.Rules;
using FitCheck.Suggestions.Searching;
using FitCheck.Suggestions.Trials;
using FitCheck.Yaml;

namespace FitCheck.Suggestions;

/// <summary>
/// What a build, or the person who asks, holds fast: each in words, and whether anything passes when this alone is given up.
/// </summary>
internal sealed class Wishes(ProposalEvaluator evaluator, PartsCatalog catalog, RuleSet rules, Goal goal, bool currentOnly,
    IReadOnlyList<string> keep, TimeSpan time)
{
    private static readonly (string Word, string Told)[] Works =
    [
        ("cut-wires", "cutting factory wires is not accepted"), ("drill", "drilling is not accepted"),
        ("enlarge-holes", "enlarging holes is not accepted"), ("trim-parts", "trimming parts is not accepted"),
    ];

    public IEnumerable<(string Words, Func<bool> PassesWithout)> All()
    {
        foreach (var kept in keep.Distinct(StringComparer.Ordinal))
            yield return ($"{kept} is to be kept", () => Passes(evaluator, goal, [.. keep.Where(k => k != kept)], currentOnly));
        if (evaluator.Build.Budget is { } budget)
            yield return ($"the budget is {budget.Value}",
                () => Passes(evaluator,
                    goal with
                    {
                        Rules =
                        rules.Rules.Where(r => !r.Names.Contains(BuildFacts.TotalCost.Name, StringComparer.Ordinal)).Select(r => r.Id)
                            .ToHashSet(StringComparer.Ordinal)
                    }, keep, currentOnly));
        foreach (var (word, told) in Works.Where(w => !evaluator.Build.Accepted(w.Word)))
            yield return (told, () => Accepting(word) is { } other && Passes(other, goal, keep, currentOnly));
        if (currentOnly)
            yield return ("parts that must be ordered are left out", () => Passes(evaluator, goal, keep, false));
    }

    private bool Passes(ProposalEvaluator on, Goal after, IReadOnlyList<string> kept, bool onlyCurrent)
    {
        var slots = Slots.Of(on, catalog, onlyCurrent, kept);
        return new Search(on, slots, after with { Voices = Slots.MostVoices(slots) }, 1, time) { First = true }.Run().Answers.Count > 0;
    }

    private ProposalEvaluator? Accepting(string work)
    {
        var editor = new YamlEditor(evaluator.Text);
        var edit = evaluator.Root["accepts"] is YamlList list ? editor.AddItem(list, work)
            : editor.AddKey(evaluator.Root, "accepts", $"[{work}]");
        return TextEdit.Apply(evaluator.Text, [edit]) is { } text && evaluator.ReadText(text) is not null
            ? new ProposalEvaluator(evaluator.Build.File, text, catalog, rules, evaluator.Build.Today, evaluator.Cancel) : null;
    }
}
