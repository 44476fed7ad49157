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
    private readonly Dictionary<string, IReadOnlyList<ChoiceSlot>> _at = new(StringComparer.Ordinal);
    private readonly Dictionary<string, BuildChoices?> _of = new(StringComparer.Ordinal);

    public string Text => text;

    /// <summary>The build; null where the text is none, which <see cref="Problems"/> tell.</summary>
    public Build? Build => outcome.Build;

    /// <summary>What was found; null with the build.</summary>
    public BuildResult? Result => outcome.Result;

    public IReadOnlyList<Problem> Problems => outcome.Problems;

    /// <summary>What may be chosen at a position; null for what belongs to none. Empty where it can't be told.</summary>
    public IReadOnlyList<ChoiceSlot> At(string? position) => Known(_at, position ?? "", () => choices(new ChoiceOptions
    {
        At = where => position is null ? !where.Any(w => Build?.Vehicle.Find(w) is not null) : where.Contains(position),
    }).Result?.Slots ?? []);

    public BuildChoice? Choice(string id) => id.Length == 0 ? null : Of(SlotKey.OfChoice(id))?.Find(id);

    public ChoiceSlot? Slot(string key) => Of(key)?.Slots.FirstOrDefault(s => SlotKey.Of(s) == key);

    private BuildChoices? Of(string key) => Known(_of, key, () => choices(new ChoiceOptions
    {
        Only = [SlotKey.WhatOf(key)],
        At = where => where.SequenceEqual(SlotKey.WhereOf(key), StringComparer.Ordinal),
    }).Result);

    private static T Known<T>(Dictionary<string, T> known, string key, Func<T> make)
    {
        if (!known.TryGetValue(key, out var value))
            known[key] = value = make();
        return value;
    }
}
