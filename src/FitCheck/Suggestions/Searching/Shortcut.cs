using System.Diagnostics;
using FitCheck.Suggestions.Choices;
using FitCheck.Suggestions.Trials;

namespace FitCheck.Suggestions.Searching;

/// <summary>
/// One passing set of changes soon, from few parts of a large catalog, by always going on with the combination in which the least stands in
/// the way. It proves nothing and need not be a good answer; it is what there is when the time of the exact search is short.
/// </summary>
/// <param name="evaluator">Judges what is tried.</param>
/// <param name="slots">What may be chosen otherwise.</param>
/// <param name="goal">What has to go.</param>
/// <param name="time">How long to look.</param>
/// <param name="voicesToo">True to try at once what was chosen for its sound, and not only where nothing else of a combination
/// helps.</param>
internal sealed class Shortcut(ProposalEvaluator evaluator, IReadOnlyList<Slot> slots, Goal goal, TimeSpan time, bool voicesToo = false)
{
    // So many options of a slot that remove a finding are judged in full; the others wait for the exact search.
    private const int Width = 100;
    // Where money is to be saved, so many of the cheapest do.
    private const int Cheapest = 4;

    private readonly Stopwatch _clock = Stopwatch.StartNew();
    private readonly PriorityQueue<State, (double Bad, decimal Price)> _open = new();
    private readonly HashSet<ChangeKey> _seen = [];
    private readonly HashSet<string> _fruitless = new(StringComparer.Ordinal);

    /// <summary>The answer, with no change that it could do without; null when none was found in time.</summary>
    public Answer? Find()
    {
        if (Add([]) is { } answer)
            return answer;
        while (_open.TryDequeue(out var state, out var rank) && _clock.Elapsed < time)
        {
            if (!state.Voices && !voicesToo && !state.IsPutOff && state.Rest.Count == 0)
                _open.Enqueue(state with { Voices = true }, (rank.Bad + 0.5, rank.Price));
            if ((state.Rest.Count > 0 ? Any(state.Rest) : Expand(state, rank)) is { } found)
                return found;
        }
        return null;
    }

    // Judges a combination and keeps it to go on from; an answer when nothing stands in its way.
    private Answer? Add(IReadOnlyList<Change> changes)
    {
        if (!_seen.Add(ChangeKey.Of(changes)) || evaluator.Assess(changes) is not { IsPossible: true } assessment)
            return null;
        var bad = assessment.Issues.Count(goal.IsBad);
        if (bad == 0)
            return Needed(new Answer(changes, assessment));
        _open.Enqueue(new State(changes), (bad + changes.Sum(c => c.Slot.Voices), assessment.Price));
        return null;
    }

    private Answer? Any(IReadOnlyList<IReadOnlyList<Change>> combinations)
    {
        foreach (var changes in combinations)
        {
            if (_clock.Elapsed > time)
                return null;
            if (Add(changes) is { } answer)
                return answer;
        }
        return null;
    }

    private Answer? Expand(State state, (double Bad, decimal Price) rank)
    {
        var (changes, voices) = (state.Changes, state.Voices);
        var open = slots.Where(s => changes.All(c => c.Slot != s && !c.Slot.Excludes(s))).ToList();
        var (cause, choices) = evaluator.Assess(changes).Issues.Where(goal.IsBad)
            .Select(i => (Cause: i, Choices: open.Where(i.IsOfPrice ? s => evaluator.SavingOf(s) > 0 : i.RestsOn).ToList()))
            // Counting options would have the parts read of every slot that has a say.
            .MinBy(c => c.Choices.Count + c.Choices.Count(s => s.IsVoice));
        var tried = choices.Where(s => s.IsVoice == voices || voicesToo || cause.IsOfPrice).Select(s => new Trial(s, Order(s, cause)))
            .ToList();
        // What nothing of these slots removed is hardly removed by them after another change.
        var attempt = $"{cause.Id} {string.Join(' ', tried.Select(t => t.Slot.Key))}";
        if (!state.IsPutOff && _fruitless.Contains(attempt))
        {
            _open.Enqueue(state with { IsPutOff = true }, (rank.Bad + 2, rank.Price));
            return null;
        }
        var obstacles = new Obstacles(evaluator, goal, cause, changes);
        // The slots in turn: that the first one is no help at all is known only after its last option.
        for (var turn = 0; tried.Exists(t => turn < t.Choices.Count && t.Judged < Width); turn++)
        {
            if (turn % ProposalEvaluator.Ahead == 0)
                obstacles.Prepare(
                    tried.Where(t => t.Judged < Width)
                        .SelectMany(t => t.Choices.Skip(turn).Take(ProposalEvaluator.Ahead).Select(c => new Change(t.Slot, c))));
            foreach (var trial in tried.Where(t => turn < t.Choices.Count && t.Judged < Width))
            {
                IReadOnlyList<Change> next = [.. changes, new Change(trial.Slot, trial.Choices[turn])];
                if (_clock.Elapsed > time)
                    return null;
                if (obstacles.IsNoHelp(next))
                    continue;
                if (obstacles.IsMet(next))
                {
                    trial.Later.Add(next);
                    continue;
                }
                trial.Judged++;
                if (Add(next) is { } answer)
                    return answer;
                obstacles.Learn(next);
            }
        }
        if (tried.TrueForAll(t => t.Judged + t.Later.Count == 0))
            _fruitless.Add(attempt);
        List<IReadOnlyList<Change>> rest = [.. tried.SelectMany(t => t.Later.Take(Width - t.Judged))];
        // Where something has helped, the way goes on from there first.
        if (!_open.TryPeek(out _, out var best) || best.Bad >= rank.Bad)
            return Any(rest);
        if (rest.Count > 0)
            _open.Enqueue(state with { Rest = rest }, (rank.Bad + 0.25, rank.Price));
        return null;
    }

    // Where money is to be saved, what saves and is cheap comes first.
    private IReadOnlyList<int> Order(Slot slot, RuleVerdict cause)
    {
        var choices = Enumerable.Range(0, slot.Options.Count);
        return cause.IsOfPrice
            ? [.. choices.Where(c => evaluator.Saves(slot, slot.Options[c]))
            .OrderBy(c => slot.Options[c].Parts.Sum(p => p.Price.Value.Amount)).Take(slot.IsVoice ? Width : Cheapest)]
            : [.. choices];
    }

    /// <summary>A combination to go on from.</summary>
    private sealed record State(IReadOnlyList<Change> Changes)
    {
        /// <summary>Whether what was chosen for its sound is tried.</summary>
        public bool Voices { get; init; }

        /// <summary>Whether it had to wait once, as what it would try was fruitless elsewhere.</summary>
        public bool IsPutOff { get; init; }

        /// <summary>What was put off when it was gone through; nothing as long as it was not.</summary>
        public IReadOnlyList<IReadOnlyList<Change>> Rest { get; init; } = [];
    }

    private sealed record Trial(Slot Slot, IReadOnlyList<int> Choices)
    {
        public int Judged { get; set; }

        /// <summary>What removes the finding and brings another that was met before: to be judged when nothing better is left.</summary>
        public List<IReadOnlyList<Change>> Later { get; } = [];
    }

    private Answer Needed(Answer answer)
    {
        foreach (var change in answer.Changes)
        {
            IReadOnlyList<Change> less = [.. answer.Changes.Where(c => c != change)];
            if (evaluator.Assess(less) is { IsPossible: true } assessment && !assessment.Issues.Any(goal.IsBad))
                return Needed(new Answer(less, assessment));
        }
        return answer;
    }
}
