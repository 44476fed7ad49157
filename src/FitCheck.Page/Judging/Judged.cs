using FitCheck.Builds;
using FitCheck.Evaluation;
using FitCheck.Foundation.Problems;

namespace FitCheck.Page.Judging;

/// <summary>
/// A text and what was found of it. One thread at a time may use it: its parts are worked out when they are first asked for.
/// </summary>
internal sealed class Judged(string text, DraftOutcome outcome, Func<ChoicesOutcome> choices)
{
    private readonly Lazy<ChoicesOutcome> _choices = new(choices);

    public string Text => text;

    /// <summary>The build; null where the text is none, which <see cref="Problems"/> tell.</summary>
    public Build? Build => outcome.Build;

    /// <summary>What was found; null with the build.</summary>
    public BuildResult? Result => outcome.Result;

    public IReadOnlyList<Problem> Problems => outcome.Problems;

    /// <summary>What may be chosen in it; empty where it can't be told.</summary>
    public IReadOnlyList<ChoiceSlot> Slots => _choices.Value.Result?.Slots ?? [];

    public BuildChoice? Choice(string id) => id.Length == 0 ? null : _choices.Value.Result?.Find(id);

    public ChoiceSlot? Slot(string key) => Slots.FirstOrDefault(s => SlotKey.Of(s) == key);
}
