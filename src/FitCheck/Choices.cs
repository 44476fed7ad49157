using FitCheck.Catalog;
using FitCheck.Foundation.Problems;
using FitCheck.Suggestions.Choices;
using FitCheck.Yaml;

namespace FitCheck;

/// <summary>What a build may be given or be given instead, or the reasons why that can't be told.</summary>
public sealed record ChoicesOutcome(BuildChoices? Result, IReadOnlyList<Problem> Problems);

/// <summary>Everything in a build that may be chosen, or chosen otherwise. Several threads may use one.</summary>
public sealed class BuildChoices
{
    private readonly Dictionary<string, BuildChoice> _byId = new(StringComparer.Ordinal);

    internal BuildChoices(string name, string text, IReadOnlyList<ChoiceSlot> slots)
    {
        (Name, Text, Slots) = (name, text, slots);
        foreach (var choice in slots.SelectMany(s => s.Choices))
            _byId.TryAdd(choice.Id, choice);
    }

    /// <summary>What the build is called in places and reports.</summary>
    public string Name { get; }

    /// <summary>The text of the build, to which the edits of every choice apply; without a byte order mark.</summary>
    public string Text { get; }

    /// <summary>What may be chosen, what the build does not have yet first.</summary>
    public IReadOnlyList<ChoiceSlot> Slots { get; }

    /// <summary>The choice of this id; null when the build, as it is written now, has no such choice.</summary>
    /// <param name="id">As in <see cref="BuildChoice.Id"/>.</param>
    /// <exception cref="ArgumentException"><paramref name="id"/> is null or empty.</exception>
    public BuildChoice? Find(string id)
    {
        ArgumentException.ThrowIfNullOrEmpty(id);
        return _byId.GetValueOrDefault(id);
    }
}

/// <summary>One thing of a build that may be chosen: both sides of a vehicle are one.</summary>
/// <param name="What">As a person calls it: `driver`, `spacer`, `high-pass`.</param>
/// <param name="Where">Ids of the positions, outputs or devices.</param>
/// <param name="WhereNames">Their names, of a position as the vehicle's entry has it.</param>
/// <param name="Now">What the build has there, a part's id or a setting; null for nothing.</param>
/// <param name="NowName">The part's name, where it is a part.</param>
public sealed record ChoiceSlot(string What, IReadOnlyList<string> Where, IReadOnlyList<string> WhereNames, string? Now, string? NowName)
{
    /// <summary>What could be there instead, parts mostly cheapest first; it may be empty.</summary>
    public IReadOnlyList<BuildChoice> Choices { get; internal init; } = [];
}

/// <summary>A part that comes with a choice.</summary>
/// <param name="Id">Its id in the catalog.</param>
/// <param name="Kind">`driver`, `adapter` and so on.</param>
/// <param name="Name">Its name.</param>
/// <param name="Price">The price of one pack; null when the catalog has none.</param>
/// <param name="Pack">Pieces in a pack.</param>
/// <param name="Availability">`current`, `to-order` or what else the catalog says.</param>
public sealed record ChosenPart(string Id, string Kind, string Name, Money? Price, int Pack, string Availability);

/// <summary>One thing that could be there: an edit of the build's text that was not made yet. Several threads may use one.</summary>
public sealed class BuildChoice
{
    private readonly Lazy<string> _text;
    private readonly Lazy<IReadOnlyList<TextEdit>> _edits;

    internal BuildChoice(string slot, Option option, string name, string before, Func<string> after)
    {
        (Id, Value, Name, Before) = ($"{slot}={option.Value}", option.Value, name, before);
        Parts = [.. option.Parts.Select(
            p => new ChosenPart(p.Id, p.Kind, p.Name, p.HasPrice ? p.Price.Value : null, p.Pack, p.Availability.Value))];
        (_text, _edits) = (new(after), new(() => LineEdits.Between(before, Text)));
    }

    /// <summary>
    /// Names it among the choices of the build: what, where and value. It stays as long as the build has this choice, so a page may send it
    /// and get it back.
    /// </summary>
    public string Id { get; }

    /// <summary>A part's id or a setting; null when nothing is to be there.</summary>
    public string? Value { get; }

    /// <summary>The parts that it brings, each once; none for settings.</summary>
    public IReadOnlyList<ChosenPart> Parts { get; }

    /// <summary>
    /// The text of the build with the choice; a seller's list in it is brought up to date. Worked out when first asked for.
    /// </summary>
    public string Text => _text.Value;

    /// <summary>
    /// The edits that make <see cref="Text"/> of <see cref="BuildChoices.Text"/>: whole lines, in the order of the text, none overlapping;
    /// offsets and lengths in UTF-16 code units.
    /// </summary>
    public IReadOnlyList<TextEdit> Edits => _edits.Value;

    internal string Name { get; }

    internal string Before { get; }
}
