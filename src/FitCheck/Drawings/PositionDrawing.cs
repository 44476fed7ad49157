namespace FitCheck.Drawings;

/// <summary>
/// The numbers of one position's cross-section, in millimetres and degrees; z runs from the mounting plane into the cavity, r from the
/// hole's centre. Null is unknown and is drawn dashed or left out, never guessed.
/// </summary>
public sealed record PositionDrawing
{
    /// <summary>The position's id.</summary>
    public required string Position { get; init; }
    /// <summary>Its name for a person.</summary>
    public required string Name { get; init; }
    /// <summary>`door`, `sail`, ... as in the vehicle.</summary>
    public string? Place { get; init; }
    /// <summary>Name of the driver; null without one.</summary>
    public string? DriverName { get; init; }
    /// <summary>Name of the spacer; null without one.</summary>
    public string? AdapterName { get; init; }
    /// <summary>Name of the tweeter cup; null without one.</summary>
    public string? CupName { get; init; }
    /// <summary>The driver's body behind its flange: (distance behind the flange, radius), front to back. Empty when unknown.</summary>
    public IReadOnlyList<(double Z, double R)> Body { get; init; } = [];
    /// <summary>True when the body is the usual cone-and-magnet guess from three sheet figures rather than a drawn profile.</summary>
    public bool BodyIsAssumed { get; init; }
    /// <summary>Of the driver, mm.</summary>
    public double? FlangeRadius { get; init; }
    /// <summary>Of the driver, mm.</summary>
    public double? FlangeThickness { get; init; }
    /// <summary>How far the driver stands in front of its flange, mm.</summary>
    public double? FrontHeight { get; init; }
    /// <summary>How far the cone moves to one side, mm.</summary>
    public double? Travel { get; init; }
    /// <summary>Spacer at its centre; 0 without one.</summary>
    public double AdapterThickness { get; init; }
    /// <summary>Of the spacer, degrees; 0 without one.</summary>
    public double TiltDeg { get; init; }
    /// <summary>Of the spacer, mm.</summary>
    public double? AdapterOuterRadius { get; init; }
    /// <summary>Of the spacer, mm.</summary>
    public double? AdapterOpeningRadius { get; init; }
    /// <summary>The hole in the panel (or in the cup).</summary>
    public double? HoleRadius { get; init; }
    /// <summary>In mm.</summary>
    public double? PanelThickness { get; init; }
    /// <summary>From the mounting plane to the grille, mm.</summary>
    public double? GrilleGap { get; init; }
    /// <summary>
    /// Where the sound is aimed; null when not known. The section is cut through this hour and the one opposite when the spacer is tilted.
    /// </summary>
    public double? AimHour { get; init; }
    /// <summary>The face with its screw holes; null when no pattern is known.</summary>
    public FaceDrawing? Face { get; init; }
    /// <summary>What stands behind the panel.</summary>
    public IReadOnlyList<DrawnObstruction> Obstructions { get; init; } = [];
    /// <summary>What is left on each side, mm.</summary>
    public IReadOnlyList<Clearance> Clearances { get; init; } = [];
}

/// <summary>Something behind the panel: from this depth on, and from this radius outward (0: everywhere).</summary>
public sealed record DrawnObstruction(string Name, double Depth, double FromRadius, bool Moving)
{
    /// <summary>The hours between which it stands, clockwise, seen from the listener; null: all around.</summary>
    public (double From, double To)? Hours { get; init; }
}

/// <summary>
/// A computed clearance with its worst case; null when unknown. <paramref name="Kind"/> is one of `back`, `glass`, `front`, `hole`,
/// `flange`.
/// </summary>
public sealed record Clearance(string Kind, string Label, double? Value, double? Low, double? High, Findings.Status Status);
