using FitCheck.Suggestions.Choices;

namespace FitCheck.Suggestions.Trials;

/// <summary>
/// What findings rest on, for all that rest on the same: which changes can move them, and those that are no pass, by these changes.
/// </summary>
internal sealed class InputSet(IReadOnlySet<string> atoms)
{
    private readonly bool _isTouchedByAll = atoms.Contains(Suggestions.Choices.BuildInputs.All);
    private readonly Dictionary<Slot, bool> _touched = [];
    private readonly Dictionary<ChangeKey, List<RuleVerdict>> _troubles = [];

    public IReadOnlySet<string> Atoms => atoms;

    public bool HasTroubles => _troubles.Count > 0;

    /// <summary>Those of the changes that can move the findings.</summary>
    public ChangeKey KeyOf(IReadOnlyList<Change> changes) => ChangeKey.Of(changes, this);

    public IReadOnlyList<RuleVerdict> Troubles(ChangeKey key) => _troubles.TryGetValue(key, out var issues) ? issues : [];

    public void Add(ChangeKey key, RuleVerdict issue)
    {
        if (!_troubles.TryGetValue(key, out var issues))
            _troubles[key] = issues = [];
        issues.Add(issue);
    }

    public bool IsTouchedBy(Slot slot)
    {
        if (_isTouchedByAll)
            return true;
        if (!_touched.TryGetValue(slot, out var touched))
            _touched[slot] = touched = slot.Atoms.Overlaps(atoms);
        return touched;
    }
}
