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
}

/// <summary>A fact that rules may name: its subject, name, type, and what it means in one sentence.</summary>
public sealed record FactDeclaration(Subject Subject, string Name, FactType Type, string Meaning);

/// <summary>The facts computed for one subject, by name. A name that is declared but not computed is unknown.</summary>
public sealed record FactTable(Subject Subject, string Key, string Name, IReadOnlyDictionary<string, FactValue> Values);
