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
