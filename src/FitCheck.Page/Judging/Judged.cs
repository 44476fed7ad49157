using FitCheck.Builds;
using FitCheck.Evaluation;
using FitCheck.Foundation.Problems;

namespace FitCheck.Page.Judging;

/// <summary>
/// A text and what was found of it. One thread at a time may use it: its parts are worked out when they are first asked for, and of what
/// may be chosen no more than is looked at.
/// </summary>
internal sealed class Judged(string text, DraftOutcome outcome, Func<ChoiceOptions, ChoicesOutcome> choices)
{
    // By place; none for what belongs to no position.
    private readonly Dictionary<string, BuildChoices?> _at = new(StringComparer.Ordinal);

    public string Text => text;

    /// <summary>The build; null where the text is none, which <see cref="Problems"/> tell.</summary>
    public Build? Build => outcome.Build;

    /// <summary>What was found; null with the build.</summary>
    public BuildResult? Result => outcome.Result;

    public IReadOnlyList<Problem> Problems => outcome.Problems;

    /// <summary>What may be chosen at a position; null for what belongs to none. Empty where it can't be told.</summary>
    public IReadOnlyList<ChoiceSlot> At(string? position) => ChoicesAt(position)?.Slots ?? [];

    public BuildChoice? Choice(string id) => id.Length == 0 ? null : ChoicesAt(PlaceOf(SlotKey.OfChoice(id)))?.Find(id);

    public ChoiceSlot? Slot(string key) => At(PlaceOf(key)).FirstOrDefault(s => SlotKey.Of(s) == key);

    private string? PlaceOf(string slot) => SlotKey.WhereOf(slot).FirstOrDefault(IsPosition);

    private bool IsPosition(string where) => Build?.Vehicle.Find(where) is not null;

    private BuildChoices? ChoicesAt(string? position)
    {
        if (!_at.TryGetValue(position ?? "", out var known))
        {
            _at[position ?? ""] = known = choices(new ChoiceOptions
            {
                At = where => position is null ? !where.Any(IsPosition) : where.Contains(position),
            }).Result;
        }
        return known;
    }
}
