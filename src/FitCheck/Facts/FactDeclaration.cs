namespace FitCheck.Facts;

/// <summary>What a rule may be about.</summary>
public enum Subject
{
    /// <summary>One driver in one place of the vehicle.</summary>
    Position,
    /// <summary>One output and everything wired to it.</summary>
    Channel,
    /// <summary>The whole proposal.</summary>
    Build,
    /// <summary>One driver of the catalog, on its own.</summary>
    Driver,
    /// <summary>A source unit, line converter or amplifier with its supply, or the supply cable that several share.</summary>
    Device,
}

/// <summary>A fact that rules may name: its subject, name, type, and what it means in one sentence.</summary>
public sealed record FactDeclaration(Subject Subject, string Name, FactType Type, string Meaning);

/// <summary>A part that the build chose for a subject, and the line that chose it.</summary>
public sealed record Choice(string Part, Yaml.Location At);

/// <summary>The facts computed for one subject, by name. A name that is declared but not computed is unknown.</summary>
public sealed record FactTable(Subject Subject, string Key, string Name, IReadOnlyDictionary<string, FactValue> Values)
{
    /// <summary>Where findings point when none of the parts they are about was chosen.</summary>
    public required Yaml.Location At { get; init; }

    /// <summary>The parts chosen for this subject, by the word that rules use: `driver`, `adapter`, `cup`, `harness`, `crossover`, `output`, `vehicle`, `device`, `fuse`.</summary>
    public IReadOnlyDictionary<string, Choice> Choices { get; init; } = new Dictionary<string, Choice>(StringComparer.Ordinal);

    /// <summary>What `money` means here, `EUR` for one; null where no fact is an amount.</summary>
    public string? Currency { get; init; }
}
