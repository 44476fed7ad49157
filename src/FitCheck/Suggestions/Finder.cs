using System.Diagnostics;
using FitCheck.Findings;

namespace FitCheck.Suggestions;

/// <summary>
/// Searches in steps, so that the better kind of answer comes first. What was chosen for its sound (drivers, sets, sources, converters, amplifiers) stays as
/// long as anything else helps, then one of these is exchanged, then two; and each time an answer that leaves nothing open is looked for before one that
/// still has to be measured.
/// </summary>
internal sealed class Finder(Bench bench, IReadOnlyList<Slot> slots, Goal goal, TimeSpan time)
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
            foreach (var strict in goal.FailOn == Status.Fail ? new[] { true, false } : [false])
            {
                Reached = goal with { Voices = voices, OpenBefore = strict ? open : null };
                var (answers, effort) = new Search(bench, slots, Reached, wanted, time - _clock.Elapsed).Run();
                Proof = new Proof(Proof.Judged + effort.Judged, Proof.Foreseen + effort.Foreseen, Proof.TooDear + effort.TooDear, Proof.Complete && effort.Finished);
                if (answers.Count > 0 || !Proof.Complete)
                    return answers;
            }
        }
        return [];
    }
}
