using System.Diagnostics;
using FitCheck.Suggestions.Choices;
using FitCheck.Suggestions.Trials;

namespace FitCheck.Suggestions.Searching;

/// <summary>A set of changes with which the build passes, none of which it could do without.</summary>
internal sealed record Answer(IReadOnlyList<Change> Changes, ProposalVerdict Assessment)
{
    public int Voices => Changes.Sum(c => c.Slot.Voices);
    public int Rank => Changes.Sum(c => c.Option.Rank);
    /// <summary>What it changes to what, the same for the same changes.</summary>
    public string Words =>
        string.Join(' ', Changes.OrderBy(c => c.Slot.Key, StringComparer.Ordinal).Select(c => $"{c.Slot.Key}={c.Option.Value}"));
}

/// <summary>How far a search went.</summary>
/// <param name="Judged">Combinations judged by all rules.</param>
/// <param name="Foreseen">Combinations refused by a single finding: one seen before, or one looked at first.</param>
/// <param name="TooDear">Combinations that nothing could bring below the price of the answers at hand.</param>
/// <param name="Finished">False when time or patience ran out, so that nothing is proved.</param>
/// <param name="MetAdding">Whether it came upon changes with which the build passes and which add something to be looked at.</param>
internal sealed record Effort(int Judged, int Foreseen, int TooDear, bool Finished, bool MetAdding);

/// <summary>
/// Finds every irreducible set of changes with which a build passes, by the findings themselves: as long as a finding stands in the way, at
/// least one of the choices that it rests on has to change, so those are tried, each with each of its alternatives, and nothing else. A
/// branch ends where the build passes (more changes would be needless), where a finding has no choice left that could remove it, or where
/// it can't become one of the best answers any more. No passing set of changes without a needless one is missed: in a branch that is part
/// of it, the finding chosen next is still there, so the set changes something that this finding rests on.
/// </summary>
internal sealed class Search(ProposalEvaluator evaluator, IReadOnlyList<Slot> slots, Goal goal, int wanted, TimeSpan time)
{
    private const int Remembered = 4;

    private readonly Stopwatch _clock = Stopwatch.StartNew();
    private readonly AnswerOrder _order = new(goal);
    private readonly List<Answer> _answers = [];
    private readonly List<Change> _changes = [];
    private readonly HashSet<Slot> _settled = [];
    private readonly Dictionary<IReadOnlySet<string>, IReadOnlyList<Slot>> _touching = new(ReferenceEqualityComparer.Instance);
    // Findings that ended branches, the last first.
    private readonly List<RuleVerdict> _dead = [];
    private int _judgedBefore;
    private int _foreseen;
    private int _tooDear;
    private long _steps;
    private bool _late;
    private bool _metAdding;

    /// <summary>Told of each answer that is among the best so far.</summary>
    public Action<Answer>? Found { get; init; }

    /// <summary>Stop at the first answer, whatever it costs.</summary>
    public bool First { get; init; }

    /// <summary>After so many steps it gives up, on every machine at the same place.</summary>
    public long Patience { get; init; } = long.MaxValue;

    /// <summary>Changes that every answer makes; what they decide on stays as they say.</summary>
    public IReadOnlyList<Change> From { get; init; } = [];

    /// <summary>Answers that are known: only better ones are of use.</summary>
    public IReadOnlyList<Answer> Known { get; init; } = [];

    /// <summary>The best answers, best first, and what was done to be sure of them.</summary>
    public (IReadOnlyList<Answer> Answers, Effort Effort) Run()
    {
        _judgedBefore = evaluator.Judged;
        foreach (var answer in Known)
            Take(answer);
        _changes.AddRange(From);
        _settled.UnionWith(From.Select(c => c.Slot));
        Visit(From.Sum(c => c.Slot.Voices));
        return ([.. _answers], new Effort(evaluator.Judged - _judgedBefore, _foreseen, _tooDear, !_late, _metAdding));
    }

    // The cause is the finding because of which the last change was made.
    private void Visit(int voices, RuleVerdict? cause = null)
    {
        evaluator.Cancel.ThrowIfCancellationRequested();
        if ((First && _answers.Count > 0) || (_late |= _clock.Elapsed > time || ++_steps > Patience))
            return;
        var choices = evaluator.Foreseen(_changes).Where(goal.IsBad).Select(i => Choices(i, voices)).MinBy(c => c.Count);
        // Most changes do not even remove the finding that they are for, or bring one that ended other branches; when nothing is left that
        // could remove it, the rest need not be judged.
        if (choices is null
            && _dead.Prepend(cause).OfType<RuleVerdict>().Any(i => Choices(i, voices).Count == 0 && IsStillBad(i, _changes)))
        {
            _foreseen++;
            return;
        }
        if (choices is null)
        {
            var assessment = evaluator.Assess(_changes);
            if (!assessment.IsPossible)
                choices = new(Open(voices).Where(Contradicts));
            else if (assessment.Issues.Where(goal.IsBad).Select(i => Choices(i, voices)).MinBy(c => c.Count) is { } open)
                Note(choices = open);
            else
            {
                Take(new Answer([.. _changes], assessment));
                return;
            }
        }
        else
        {
            _foreseen++;
        }
        if (IsHopeless(voices))
            _tooDear++;
        else
            Branch(choices, voices);
    }

    private void Note(ChoiceList choices)
    {
        if (choices.Count > 0 || choices.Cause is not { } cause)
            return;
        _dead.RemoveAll(i => i.Id == cause.Id);
        _dead.Insert(0, cause);
        if (_dead.Count > Remembered)
            _dead.RemoveAt(Remembered);
    }

    // Below here at least one more change is made; and the price can't fall by more than what the choices that are still open cost now.
    private bool IsHopeless(int voices)
    {
        if (_answers.Count < wanted || _answers[^1] is not { } worst)
            return false;
        if (goal.Prefer == Preference.Changes)
            return _changes.Count + 1 > worst.Changes.Count;
        if (goal.Prefer != Preference.Price)
            return false;
        var open = Open(voices).Where(s => _changes.TrueForAll(c => c.Slot != s)).ToList();
        var saving = open.Where(s => !s.IsVoice).Sum(evaluator.SavingOf);
        if (goal.Voices > voices)
            saving += open.Where(s => s.IsVoice).Select(evaluator.SavingOf).OrderDescending().Take(goal.Voices - voices).Sum();
        var least = evaluator.PriceOf(_changes) - saving;
        return least > worst.Assessment.Price || (least == worst.Assessment.Price && _changes.Count + 1 > worst.Changes.Count);
    }

    // Options that remove the finding by themselves come first: few do, and the first answer is among them.
    private void Branch(ChoiceList choices, int voices)
    {
        if (choices.Cause is not { } cause)
        {
            Branch(choices, voices, _ => true);
            return;
        }
        Branch(choices, voices, c => !IsStillBad(cause, c), cause);
        Branch(choices, voices, c => IsStillBad(cause, c));
    }

    private bool IsStillBad(RuleVerdict cause, IReadOnlyList<Change> changes) =>
        evaluator.Again(cause, changes) is { } again && goal.IsBad(again);

    // A choice that is not changed here stays as it is in what follows; but where money has to be saved only some of its options were
    // tried, so it stays open.
    private void Branch(ChoiceList choices, int voices, Func<IReadOnlyList<Change>, bool> isWanted, RuleVerdict? unknown = null)
    {
        foreach (var slot in choices.Slots)
        {
            _settled.Add(slot);
            for (var choice = 0; choice < slot.Options.Count; choice++)
            {
                if ((choices.ToSave && !evaluator.Saves(slot, slot.Options[choice])) || (_late |= _clock.Elapsed > time))
                    continue;
                if (unknown is not null && choice % ProposalEvaluator.Ahead == 0)
                    evaluator.Prepare([unknown], _changes,
                        Enumerable.Range(choice, Math.Min(ProposalEvaluator.Ahead, slot.Options.Count - choice))
                            .Select(c => new Change(slot, c)));
                _changes.Add(new Change(slot, choice));
                if (isWanted(_changes))
                    Visit(voices + slot.Voices, choices.Cause);
                _changes.RemoveAt(_changes.Count - 1);
            }
            if (choices.ToSave)
                _settled.Remove(slot);
        }
        foreach (var slot in choices.Slots)
            _settled.Remove(slot);
    }

    private IEnumerable<Slot> Open(int voices) => Open(slots, voices);

    private IEnumerable<Slot> Open(IEnumerable<Slot> among, int voices) =>
        among.Where(
            s => !_settled.Contains(s) && (!s.IsVoice || (voices + s.Voices <= goal.Voices && !_changes.Exists(c => c.Slot.Excludes(s)))));

    // Many findings rest on the same.
    private IReadOnlyList<Slot> Touching(RuleVerdict issue)
    {
        if (!_touching.TryGetValue(issue.Atoms, out var touching))
            _touching[issue.Atoms] = touching = [.. slots.Where(issue.RestsOn)];
        return touching;
    }

    private ChoiceList Choices(RuleVerdict issue, int voices) => issue.IsOfPrice
        ? new(Open(voices).Where(s => evaluator.SavingOf(s) > 0).OrderByDescending(evaluator.SavingOf)) { ToSave = true }
        // Where nothing had to be ordered before, it came with a change, which stays.
        : issue.IsOfOrder && !evaluator.HasPartToOrder ? new([]) { Cause = issue }
        : new(Open(Touching(issue), voices)) { Cause = issue };

    // What a build's reader refuses lies in its outputs, devices, crossovers and their settings.
    private static bool Contradicts(Slot slot) =>
        slot.Atoms.Any(a => a.Split('@')[0] is "part" or "output" or "crossover" or "setting" or "from" or "fed" or "driver");

    private void Take(Answer answer)
    {
        _metAdding |= goal.IsAddedTo(answer.Assessment);
        if (_answers.Exists(a => a.Changes.All(c => answer.Changes.Contains(c))) || HasNeedless(answer))
            return;
        _answers.Add(answer);
        _answers.Sort(_order);
        if (_answers.Count > wanted)
            _answers.RemoveAt(wanted);
        Found?.Invoke(_answers[0]);
    }

    // Passing with some of the changes only: the others are needless.
    private bool HasNeedless(Answer answer)
    {
        var all = answer.Changes;
        for (var part = (1 << Math.Min(all.Count, 8)) - 2; part > 0 && all.Count > 1; part--)
        {
            var some = all.Where((_, i) => i >= 8 || (part >> i & 1) == 1).ToList();
            if (!evaluator.Foreseen(some).Any(goal.IsBad) && evaluator.Assess(some) is { IsPossible: true } less
                && !less.Issues.Any(goal.IsBad))
            {
                _metAdding |= goal.IsAddedTo(less);
                return true;
            }
        }
        return false;
    }

    private sealed class ChoiceList(IEnumerable<Slot> slots)
    {
        public IReadOnlyList<Slot> Slots { get; } = [.. slots];
        public bool ToSave { get; init; }
        public RuleVerdict? Cause { get; init; }
        public int Count => Slots.Sum(s => s.Options.Count);
    }
}
