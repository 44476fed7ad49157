using FitCheck.Foundation.Problems;

namespace FitCheck.Facts.Values;

/// <summary>A part that the build chose for a subject, and the line that chose it.</summary>
public sealed record Choice(string Part, Location At);

/// <summary>The facts computed for one subject, by name. A name that is declared but not computed is unknown.</summary>
public sealed record FactTable(Subject Subject, string Key, string Name, IReadOnlyDictionary<string, FactValue> Values)
{
    /// <summary>The value of a fact; null where none was computed.</summary>
    internal FactValue? Of(Fact fact) => Values.GetValueOrDefault(fact.Name);

    /// <summary>Which keys nobody wrote of those that a fact reads; null where that is not asked.</summary>
    internal Func<Fact, IReadOnlyList<UnwrittenKey>>? Lacking { get; init; }

    /// <summary>Where findings point when none of the parts they are about was chosen.</summary>
    public required Location At { get; init; }

    /// <summary>
    /// The parts chosen for this subject, by the word that rules use: `driver`, `adapter`, `cup`, `harness`, `crossover`, `output`,
    /// `vehicle`, `device`, `fuse`.
    /// </summary>
    public IReadOnlyDictionary<string, Choice> Choices { get; init; } = new Dictionary<string, Choice>(StringComparer.Ordinal);

    /// <summary>What `money` means here, `EUR` for one; null where no fact is an amount.</summary>
    public string? Currency { get; init; }
}
