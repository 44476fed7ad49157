using FitCheck.Catalog;
using FitCheck.Yaml;

namespace FitCheck.Suggestions.Choices;

/// <summary>One thing of a build that could be chosen otherwise.</summary>
internal sealed class Slot
{
    private readonly Lazy<IReadOnlyList<Option>> _options;

    public Slot(string what, IReadOnlyList<string> where, string? now, IEnumerable<string> atoms, Func<IEnumerable<Option>> options)
    {
        (What, Where, Now) = (what, where, now);
        Atoms = atoms.ToHashSet(StringComparer.Ordinal);
        _options = new(() => [.. options()]);
    }

    /// <summary>As a person calls it: `spacer`, `high-pass`, `fuse`.</summary>
    public string What { get; }
    /// <summary>Positions, outputs or devices, by their names in the build.</summary>
    public IReadOnlyList<string> Where { get; }
    /// <summary>What the build has there: a part's id or a setting; null for nothing.</summary>
    public string? Now { get; }
    /// <summary>Names of the things that a change of it touches, by which the findings are known that may change with it.</summary>
    public IReadOnlySet<string> Atoms { get; }
    /// <summary>What else could be there.</summary>
    public IReadOnlyList<Option> Options => _options.Value;
    /// <summary>How many things that were chosen for their sound it exchanges: they stay as long as changing anything else helps.</summary>
    public int Voices { get; init; }
    public bool IsVoice => Voices > 0;
    /// <summary>Ids of the parts that go with a change of it.</summary>
    public IReadOnlyList<string> Parts { get => field ?? (Now is null ? [] : [Now]); init; }
    /// <summary>Ids of further parts that may become superfluous, as something like them comes with an option.</summary>
    public IReadOnlyList<string> Spares { get; init; } = [];
    /// <summary>The types of its options, where it is a driver.</summary>
    public IReadOnlyList<string> Sorts { get; init; } = [];
    /// <summary>Place among the slots.</summary>
    public int Index { get; set; }

    /// <summary>Whether both would decide on the same drivers, so that one of them is changed at most.</summary>
    public bool Excludes(Slot other) => IsVoice && other.IsVoice && other != this && Atoms.Overlaps(other.Atoms);

    public string Key => $"{What}@{string.Join('+', Where)}";
}

/// <summary>Another choice for a slot.</summary>
/// <param name="Value">A part's id or a setting; null when nothing is to be there.</param>
/// <param name="Edits">What it changes in the build's text.</param>
internal sealed record Option(string? Value, IReadOnlyList<TextEdit> Edits)
{
    /// <summary>The parts that it brings; none for settings.</summary>
    public IReadOnlyList<Part> Parts { get; init; } = [];

    /// <summary>How far it is from what the build has, for settings that cost nothing.</summary>
    public int Rank { get; init; }
}

/// <summary>A slot and what is chosen for it instead.</summary>
internal readonly record struct Change(Slot Slot, int Choice)
{
    public Option Option => Slot.Options[Choice];
}
