using System.Diagnostics;
using System.Globalization;
using FitCheck.Findings;
using FitCheck.Suggestions.Choices;
using FitCheck.Suggestions.Trials;

namespace FitCheck.Suggestions.Searching;

/// <summary>
/// Searches in steps, so that the better kind of answer comes first. What was chosen for its sound (drivers, sets, sources, converters,
/// amplifiers) stays as long as anything else helps, then one of these is exchanged, then two. Of equal answers of a step those come first
/// that leave nothing to be measured that was settled before.
/// </summary>
internal sealed class Finder(ProposalEvaluator evaluator, IReadOnlyList<Slot> slots, Goal goal, TimeSpan time,
    Action<string>? progress = null)
{
    // Options of a slot, and until when, in parts of the time and at most.
    private static readonly (int Options, double Part, double Seconds, bool VoicesToo)[] Looks = [(200, 0.3, 0.6, false),
        (1500, 0.5, 1.5, true)];

    private readonly Stopwatch _clock = Stopwatch.StartNew();

    /// <summary>
    /// The slots with at most so many options each, when the catalog is so large that an answer should be looked for among these first;
    /// else null.
    /// </summary>
    public Func<int, IReadOnlyList<Slot>>? Few { get; init; }

    public Proof Proof { get; private set; } = new(0, 0, 0, Complete: true);

    /// <summary>The goal of the step that brought the answers.</summary>
    public Goal Reached { get; private set; } = new();

    /// <summary>The best answers, best first.</summary>
    public IReadOnlyList<Answer> Best(int wanted)
    {
        var open = evaluator.Assess([]).Issues.Where(i => i.Status == Status.Measure).Select(i => i.Id).ToHashSet();
        var most = Slots.MostVoices(slots);
        var first = AmongFew();
        for (var voices = 0; voices <= most; voices++)
        {
            Reached = goal with { Voices = voices, OpenBefore = open };
            var (answers, effort) = new Search(evaluator, slots, Reached, wanted, time - _clock.Elapsed) { Found = Tell }.Run();
            Proof = new Proof(Proof.Judged + effort.Judged, Proof.Foreseen + effort.Foreseen, Proof.TooDear + effort.TooDear,
                Proof.Complete && effort.Finished);
            if (!Proof.Complete && first is not null)
                return [.. answers.Append(first).DistinctBy(a => a.Words).Order(new AnswerOrder(Reached)).Take(wanted)];
            if (answers.Count > 0 || !Proof.Complete)
                return answers;
        }
        return [];
    }

    private Answer? AmongFew()
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
            return answer;
        }
        return null;
    }

    private void Tell(Answer best) =>
        progress?.Invoke(
            best.Changes.Count == 1 ? "one change is enough; looking for a better one"
                : string.Create(CultureInfo.InvariantCulture, $"{best.Changes.Count} changes are enough; looking for better ones"));
}
