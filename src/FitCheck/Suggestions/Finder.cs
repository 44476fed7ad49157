using System.Diagnostics;
using System.Globalization;
using FitCheck.Findings;

namespace FitCheck.Suggestions;

/// <summary>
/// Searches in steps, so that the better kind of answer comes first. What was chosen for its sound (drivers, sets, sources, converters, amplifiers) stays as
/// long as anything else helps, then one of these is exchanged, then two. Of equal answers of a step those come first that leave nothing to be measured
/// that was settled before.
/// </summary>
internal sealed class Finder(Bench bench, IReadOnlyList<Slot> slots, Goal goal, TimeSpan time, Action<string>? progress = null)
{
    private readonly Stopwatch _clock = Stopwatch.StartNew();

    public Proof Proof { get; private set; } = new(0, 0, 0, Complete: true);

    /// <summary>The goal of the step that brought the answers.</summary>
    public Goal Reached { get; private set; } = new();

    /// <summary>The best answers, best first.</summary>
    public IReadOnlyList<Answer> Best(int wanted)
    {
        var open = bench.Assess([]).Issues.Where(i => i.Status == Status.Measure).Select(i => i.Id).ToHashSet();
        var most = slots.Count(s => s.IsVoice);
        for (var voices = 0; voices <= most; voices++)
        {
            Reached = goal with { Voices = voices, OpenBefore = open };
            var (answers, effort) = new Search(bench, slots, Reached, wanted, time - _clock.Elapsed) { Found = Tell }.Run();
            Proof = new Proof(Proof.Judged + effort.Judged, Proof.Foreseen + effort.Foreseen, Proof.TooDear + effort.TooDear, Proof.Complete && effort.Finished);
            if (answers.Count > 0 || !Proof.Complete)
                return answers;
        }
        return [];
    }

    private void Tell(Answer best) =>
        progress?.Invoke(best.Changes.Count == 1 ? "one change is enough; looking for a better one" : string.Create(CultureInfo.InvariantCulture, $"{best.Changes.Count} changes are enough; looking for better ones"));
}
