using System.Diagnostics;
using FitCheck.Catalog;
using FitCheck.Evaluation;
using FitCheck.Findings;
using FitCheck.Rules;
using FitCheck.Suggestions.Choices;
using FitCheck.Suggestions.Searching;
using FitCheck.Suggestions.Trials;
using FitCheck.Yaml;

namespace FitCheck.Suggestions;

/// <summary>
/// What is tried once nothing nearer is left: something that the build has nothing of yet, such as an amplifier, or a set where one driver
/// is and the tweeter's place is open. Each is put into the build first, and what else has to change is looked for in that build.
/// </summary>
/// <param name="evaluator">The build as it was given.</param>
/// <param name="catalog">What there is.</param>
/// <param name="rules">What judges.</param>
/// <param name="before">What was found of the build.</param>
/// <param name="goal">What has to go.</param>
/// <param name="currentOnly">Only parts that need not be ordered.</param>
/// <param name="keep">What stays.</param>
internal sealed class Beyond(ProposalEvaluator evaluator, PartsCatalog catalog, RuleSet rules, BuildResult before, Goal goal,
    bool currentOnly, IReadOnlyList<string> keep)
{
    // Beside what is added one thing may be exchanged that was chosen for its sound.
    private const int Voices = 1;

    private readonly Dictionary<(string Rule, string Key), Status> _found = before.Findings
        .Where(f => f.Waived is null && f.Status != Status.Pass).DistinctBy(f => (f.Rule, f.Position))
        .ToDictionary(f => (f.Rule, f.Position), f => f.Status);

    /// <summary>What was tried, in words, after <see cref="Find"/>.</summary>
    public IReadOnlyList<TriedChoice> Tried { get; private set; } = [];

    /// <summary>What it took; it is complete where time allowed to look at everything.</summary>
    public Proof Proof { get; private set; } = new(0, 0, 0, Complete: true);

    /// <summary>What can be put into the build that it has nothing of.</summary>
    public IReadOnlyList<Slot> Slots()
    {
        var context = new SlotContext(evaluator.Build, evaluator.Root, new YamlEditor(evaluator.Text), new Stock(catalog, currentOnly));
        return [.. OpenSlots.Amplifiers(context).Concat(SetSlots.OverOpen(context))
            .Where(s => !s.Parts.Concat(s.Where).Any(w => keep.Contains(w, StringComparer.Ordinal)))];
    }

    /// <summary>The best builds: those that add least to look at first, then the cheapest.</summary>
    /// <param name="wanted">So many at most.</param>
    /// <param name="time">How long to look.</param>
    public IReadOnlyList<Proposal> Find(int wanted, TimeSpan time)
    {
        var (clock, found) = (Stopwatch.StartNew(), new List<Proposal>());
        var slots = Slots();
        Tried = [.. slots.Select(s => new TriedChoice(s.What, [.. s.Where.Select(evaluator.NameOf)],
            s.What == "amplifier" ? "an amplifier added behind the source, with all of these"
                : "component sets that bring the tweeters too"))];
        foreach (var (slot, option) in slots.SelectMany(s => s.Options.Select(o => (s, o))))
        {
            evaluator.Cancel.ThrowIfCancellationRequested();
            if (clock.Elapsed > time)
            {
                Proof = Proof with { Complete = false };
                break;
            }
            if (TextEdit.Apply(evaluator.Text, option.Edits) is { } text && evaluator.ReadText(text) is not null
                && Proposed(slot, option, text, time - clock.Elapsed) is { } proposal)
                found.Add(proposal);
        }
        return [.. found.OrderBy(p => p.Changes.Count(c => c.To is not null && catalog.Find(c.To) is Driver or ComponentSet))
            .ThenBy(p => p.New.Count).ThenBy(p => p.After.Totals.Sum(m => m.Amount)).Take(wanted)];
    }

    private Proposal? Proposed(Slot slot, Option option, string text, TimeSpan time)
    {
        var with = new ProposalEvaluator(evaluator.Build.File, text, catalog, rules, evaluator.Build.Today, evaluator.Cancel);
        var further = Trials.Slots.Of(with, catalog, currentOnly, keep);
        var reached = goal with { Before = _found };
        for (var voices = 0; voices <= Math.Min(Voices, Trials.Slots.MostVoices(further)); voices++)
        {
            reached = reached with { Voices = voices };
            var (answers, effort) = new Search(with, further, reached, 1, time).Run();
            Proof = Proof.With(new Proof(effort.Judged, effort.Foreseen, effort.TooDear, effort.Finished));
            if (answers is [var best, ..])
                return Told(slot, option, with, new ProposalTeller(with, rules, before, reached).Tell(best));
        }
        return null;
    }

    private Proposal Told(Slot slot, Option option, ProposalEvaluator with, Proposal proposal)
    {
        var added = new ProposedChange(slot.What, [.. slot.Where.Select(evaluator.NameOf)], slot.Now, option.Value)
        {
            FromName = slot.Now is null ? null : (catalog.Find(slot.Now) as Part)?.Name,
            ToName = string.Join(" and ", option.Parts.Select(p => p.Name)),
            Because = [.. before.Findings.Where(f => f.Waived is null && f.Status >= goal.FailOn)
                .Select(f => new Reason(f, proposal.After.Findings.FirstOrDefault(a => a.Rule == f.Rule && a.Position == f.Position)))
                .Where(r => r.With is null || r.With.Status < r.Without.Status)],
            Difference = proposal.After.Totals is [var total]
                ? total with { Amount = with.PriceOf([]) - evaluator.PriceOf([]) } : null,
        };
        return proposal with { Changes = [added, .. proposal.Changes] };
    }
}
