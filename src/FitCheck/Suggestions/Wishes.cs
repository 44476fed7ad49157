using FitCheck.Catalog;
using FitCheck.Facts;
using FitCheck.Rules;
using FitCheck.Suggestions.Searching;
using FitCheck.Suggestions.Trials;
using FitCheck.Yaml;

namespace FitCheck.Suggestions;

/// <summary>What a build, or the person who asks, holds fast: each in words, and whether anything passes when this alone is given up.</summary>
internal sealed class Wishes(ProposalEvaluator bench, PartsCatalog catalog, RuleSet rules, Goal goal, bool currentOnly, IReadOnlyList<string> keep, TimeSpan time)
{
    private static readonly (string Word, string Told)[] Works =
    [
        ("cut-wires", "cutting factory wires is not accepted"), ("drill", "drilling is not accepted"),
        ("enlarge-holes", "enlarging holes is not accepted"), ("trim-parts", "trimming parts is not accepted"),
    ];

    public IEnumerable<(string Words, Func<bool> PassesWithout)> All()
    {
        foreach (var kept in keep.Distinct(StringComparer.Ordinal))
            yield return ($"{kept} is to be kept", () => Passes(bench, goal, [.. keep.Where(k => k != kept)], currentOnly));
        if (bench.Build.Budget is { } budget)
            yield return ($"the budget is {budget.Value}", () => Passes(bench, goal with { Rules = rules.Rules.Where(r => !r.Names.Contains(BuildFacts.TotalCost.Name, StringComparer.Ordinal)).Select(r => r.Id).ToHashSet(StringComparer.Ordinal) }, keep, currentOnly));
        foreach (var (word, told) in Works.Where(w => !bench.Build.Accepted(w.Word)))
            yield return (told, () => Accepting(word) is { } other && Passes(other, goal, keep, currentOnly));
        if (currentOnly)
            yield return ("parts that must be ordered are left out", () => Passes(bench, goal, keep, false));
    }

    private bool Passes(ProposalEvaluator on, Goal after, IReadOnlyList<string> kept, bool onlyCurrent)
    {
        var slots = Slots.Of(on, catalog, onlyCurrent, kept);
        return new Search(on, slots, after with { Voices = Slots.MostVoices(slots) }, 1, time) { First = true }.Run().Answers.Count > 0;
    }

    private ProposalEvaluator? Accepting(string work)
    {
        var editor = new YamlEditor(bench.Text);
        var edit = bench.Root["accepts"] is YamlList list ? editor.AddItem(list, work) : editor.AddKey(bench.Root, "accepts", $"[{work}]");
        return TextEdit.Apply(bench.Text, [edit]) is { } text && bench.ReadText(text) is not null ? new ProposalEvaluator(bench.Build.File, text, catalog, rules, bench.Cancel) : null;
    }
}
