namespace FitCheck.Facts.Values;

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
    /// <summary>One entry of the catalog, of whatever kind, on its own.</summary>
    Entry,
    /// <summary>One figure of an entry against the same figure of the other entries of its class.</summary>
    Figure,
    /// <summary>One stated power rating of a source unit or an amplifier.</summary>
    Rating,
    /// <summary>One datum of a position in a vehicle against that of the position on the other side.</summary>
    Mirror,
    /// <summary>One place of an entry that names another entry.</summary>
    Reference,
}

/// <summary>
/// What a fact of a position is computed from, where a spacer or a cup carries the driver; without one, what rests on the mounting part rests on the
/// place instead. A chart of what fits where judges by the facts that need no build.
/// </summary>
[Flags]
public enum RestsOn
{
    /// <summary>Settled before any part is looked at: that there is a driver, whether it is a tweeter, on what kind of mounting, and which work is accepted.</summary>
    Nothing = 0,
    Driver = 1,
    /// <summary>The spacer or the cup.</summary>
    Mount = 2,
    /// <summary>The position and its vehicle.</summary>
    Place = 4,
    /// <summary>All three, and nothing else.</summary>
    Pair = Driver | Mount | Place,
    /// <summary>Something else of a build: what feeds it, what lies beside it, what was measured. Every fact, unless its declaration says otherwise.</summary>
    Build = 8,
}

/// <summary>A fact that rules may name: its subject, name, type, and what it means in one sentence.</summary>
public sealed record FactDeclaration(Subject Subject, string Name, FactType Type, string Meaning)
{
    /// <summary>What it is computed from.</summary>
    public RestsOn RestsOn { get; init; } = RestsOn.Build;

    internal FactDeclaration On(RestsOn restsOn) => this with { RestsOn = restsOn };
}

/// <summary>A part that the build chose for a subject, and the line that chose it.</summary>
public sealed record Choice(string Part, Foundation.Problems.Location At);

/// <summary>The facts computed for one subject, by name. A name that is declared but not computed is unknown.</summary>
public sealed record FactTable(Subject Subject, string Key, string Name, IReadOnlyDictionary<string, FactValue> Values)
{
    /// <summary>Where findings point when none of the parts they are about was chosen.</summary>
    public required Foundation.Problems.Location At { get; init; }

    /// <summary>The parts chosen for this subject, by the word that rules use: `driver`, `adapter`, `cup`, `harness`, `crossover`, `output`, `vehicle`, `device`, `fuse`.</summary>
    public IReadOnlyDictionary<string, Choice> Choices { get; init; } = new Dictionary<string, Choice>(StringComparer.Ordinal);

    /// <summary>What `money` means here, `EUR` for one; null where no fact is an amount.</summary>
    public string? Currency { get; init; }
}
