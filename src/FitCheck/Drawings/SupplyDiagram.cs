namespace FitCheck.Drawings;

/// <summary>The supply as one line: battery, main fuse, cable, block, and a leg to each amplifier.</summary>
/// <param name="Main">The cable that several amplifiers share; null when each has its own from the battery.</param>
/// <param name="Distribution">Name of the block that splits the main cable.</param>
/// <param name="Legs">One for each amplifier.</param>
public sealed record SupplyDiagram(SupplyLeg? Main, string? Distribution, IReadOnlyList<SupplyLeg> Legs);

/// <summary>One cable of the supply, its fuse and what hangs on it. What is null is not planned or not known.</summary>
public sealed record SupplyLeg
{
    /// <summary>What it leads to, for a person.</summary>
    public required string Name { get; init; }
    /// <summary>Current at full power, A.</summary>
    public double? DemandA { get; init; }
    /// <summary>Gauge as written, `4 AWG`.</summary>
    public string? Gauge { get; init; }
    /// <summary>True for copper-clad aluminium.</summary>
    public bool CopperClad { get; init; }
    /// <summary>Of the cable, m.</summary>
    public double? LengthM { get; init; }
    /// <summary>Of its own fuse.</summary>
    public double? FuseA { get; init; }
    /// <summary>From the battery, in mm; null where the fuse is in a block.</summary>
    public double? FuseDistanceMm { get; init; }
    /// <summary>Whole way from the battery and back to the body, V.</summary>
    public double? DropV { get; init; }
    /// <summary>Gauge of the ground cable as written.</summary>
    public string? GroundGauge { get; init; }
    /// <summary>Of the ground cable, m.</summary>
    public double? GroundLengthM { get; init; }
    /// <summary>The worst that a rule of the supply says of it.</summary>
    public required Findings.Status Status { get; init; }
}
