using System.Diagnostics;
using System.Globalization;
using FitCheck.Findings;
using FitCheck.Suggestions.Choices;
using FitCheck.Suggestions.Trials;

namespace FitCheck.Suggestions.Searching;

/// <summary>
/// Searches in steps, so that the better kind of answer comes first: one that adds nothing to be looked at, and only where there is none
/// one that does. What was chosen for its sound (drivers, sets, sources, converters, amplifiers) stays as long as anything else helps, then
/// one of these is exchanged, then two. Of equal answers of a step those come first that leave nothing to be measured that was settled
/// before.
/// </summary>
internal sealed class Finder(ProposalEvaluator evaluator, IReadOnlyList<Slot> slots, Goal goal, TimeSpan time,
    Action<string>? progress = null)
{
    // Options of a slot, and until when, in parts of the time and at most.
    private static readonly (int Options, double Part, double Seconds, bool VoicesToo)[] Looks = [(200, 0.3, 0.6, false),
        (1500, 0.5, 1.5, true)];

    // How many steps are worth looking for answers that add nothing: in units of what it took to find any answer, and besides; to mend an
    // answer; and for each further thing that was chosen for its sound.
    private const int PatienceByNeed = 1, Patience = 800, PatienceToMend = 40, PatienceBeyond = 500;

    private readonly Stopwatch _clock = Stopwatch.StartNew();

    /// <summary>
    /// The slots with at most so many options each, when the catalog is so large that an answer should be looked for among these first;
    /// else null.
    /// </summary>
    public Func<int, IReadOnlyList<Slot>>? Few { get; init; }

    public Proof Proof { get; private set; } = new(0, 0, 0, Complete: true);

    /// <summary>
    /// Whether an answer was found that adds nothing to be looked at; false when it is proved that there is none, null when that is open.
    /// </summary>
    public bool? AddsNothing { get; private set; }

    /// <summary>The goal of the step that brought the answers.</summary>
    public Goal Reached { get; private set; } = new();

    /// <summary>The best answers, best first.</summary>
    public IReadOnlyList<Answer> Best(int wanted)
    {
        var before = evaluator.Assess([]).Issues.Where(i => !i.IsWaived && i.Status != Status.Pass).DistinctBy(i => i.Id)
            .ToDictionary(i => i.Id, i => i.Status);
        var all = goal with
        {
            Before = before,
            OpenBefore = before.Where(b => b.Value == Status.Measure).Select(b => b.Key).ToHashSet(),
        };
        var (first, most) = (AmongFew(all), Slots.MostVoices(slots));
        for (var voices = 0; voices <= most; voices++)
        {
            Reached = all with { Voices = voices };
            var (answers, effort) = Searched(Reached, wanted, long.MaxValue);
            Proof = Proof with { Complete = effort.Finished };
            if (effort.Finished && answers.Count > 0 && !effort.MetAdding)
                return AllAddNothing(answers);
            if (effort.Finished && answers.Count > 0)
                return AddingNothing(all, wanted, most, answers) is { Count: > 0 } better ? better : Cleanest(answers, all, wanted);
            if (!effort.Finished)
                return Cleanest(first is null ? answers : [.. answers.Append(first).DistinctBy(a => a.Words)], all, wanted);
        }
        return [];
    }

    // An answer that adds nothing and could not do without any of its changes is one among all answers too, or there is a smaller set of
    // changes in it that passes and adds something: where the search came upon none of these, it knows the best of those that add nothing.
    private IReadOnlyList<Answer> AllAddNothing(IReadOnlyList<Answer> answers)
    {
        (Reached, AddsNothing) = (Reached with { AddsNothing = true }, true);
        return answers;
    }

    // Those that add nothing to be looked at, for which one thing more that was chosen for its sound may be exchanged at most: who asked
    // for it would rather read a warning than see the whole build replaced. To know all of them may take many times the work of finding one
    // that adds something: so the answers at hand are mended first, and where patience ends it stays open whether there is a better one.
    private IReadOnlyList<Answer> AddingNothing(Goal all, int wanted, int most, IReadOnlyList<Answer> adding)
    {
        var (least, open) = (Reached.Voices, false);
        var steps = (PatienceByNeed * (Proof.Judged + Proof.Foreseen + Proof.TooDear)) + Patience;
        for (var voices = least; voices <= Math.Min(most, least + 1); voices++)
        {
            var strict = all with { Voices = voices, AddsNothing = true };
            List<Answer> mended = [.. adding.SelectMany(a => Searched(strict, 1, PatienceToMend, a.Changes).Answers)];
            var (answers, effort) = Searched(strict, wanted, voices == least ? steps : PatienceBeyond, known: mended);
            open |= !effort.Finished;
            if (answers.Count == 0)
                continue;
            (Reached, AddsNothing, Proof) = (strict, true, Proof with { Complete = effort.Finished });
            return answers;
        }
        AddsNothing = open || least + 1 < most ? null : false;
        return [];
    }

    private (IReadOnlyList<Answer> Answers, Effort Effort) Searched(Goal wanting, int wanted, long steps,
        IReadOnlyList<Change>? from = null, IReadOnlyList<Answer>? known = null)
    {
        var (answers, effort) = new Search(evaluator, slots, wanting, wanted, time - _clock.Elapsed)
        {
            Found = Tell,
            Patience = steps,
            From = from ?? [],
            Known = known ?? [],
        }.Run();
        Proof = Proof with
        {
            Judged = Proof.Judged + effort.Judged,
            Foreseen = Proof.Foreseen + effort.Foreseen,
            TooDear = Proof.TooDear + effort.TooDear,
        };
        return (answers, effort);
    }

    // Where time or patience was short, answers of both sorts may have come up: those that add nothing stand for all then.
    private IReadOnlyList<Answer> Cleanest(IReadOnlyList<Answer> answers, Goal all, int wanted)
    {
        List<Answer> best = [.. answers.Order(new AnswerOrder(Reached))];
        if (best.Exists(a => !all.IsAddedTo(a.Assessment)))
            (AddsNothing, best) = (true, best.FindAll(a => !all.IsAddedTo(a.Assessment)));
        return [.. best.Take(wanted)];
    }

    // One that adds nothing is worth the rest of the time of a look.
    private Answer? AmongFew(Goal all)
    {
        if (Few is null)
            return null;
        foreach (var (options, part, seconds, voicesToo) in Looks)
        {
            var until = TimeSpan.FromSeconds(Math.Min(part * time.TotalSeconds, seconds));
            var few = Few(options);
            if (new Shortcut(evaluator, few, goal, until - _clock.Elapsed, voicesToo).Find() is not { } answer)
                continue;
            Tell(answer);
            return all.IsAddedTo(answer.Assessment) && until > _clock.Elapsed
                ? new Shortcut(evaluator, few, all with { AddsNothing = true }, until - _clock.Elapsed, voicesToo).Find() ?? answer
                : answer;
        }
        return null;
    }

    private void Tell(Answer best) =>
        progress?.Invoke(
            best.Changes.Count == 1 ? "one change is enough; looking for a better one"
                : string.Create(CultureInfo.InvariantCulture, $"{best.Changes.Count} changes are enough; looking for better ones"));
}
