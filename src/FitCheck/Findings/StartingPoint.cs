namespace FitCheck.Findings;

/// <summary>
/// A setting from which the installer starts: where (names of positions), what is set, to which value. The ear decides the rest.
/// </summary>
public sealed record StartingPoint(IReadOnlyList<string> Where, string What, string Value)
{
    /// <summary>True for what is set by how a part is mounted, false for what is set when it plays.</summary>
    public bool WhileMounting { get; init; }
}
