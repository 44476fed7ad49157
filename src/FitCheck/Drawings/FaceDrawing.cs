namespace FitCheck.Drawings;

/// <summary>A position's face seen from the listener: circles in millimetres, holes at degrees clockwise from the top.</summary>
public sealed record FaceDrawing
{
    /// <summary>The hole in the panel.</summary>
    public double? CutoutRadius { get; init; }
    /// <summary>The panel's hole or the spacer is not round, and circles don't tell its shape.</summary>
    public bool IsOval { get; init; }
    /// <summary>Nor is the driver.</summary>
    public bool IsDriverOval { get; init; }
    /// <summary>Diameter of the screws in the panel; null when not recorded.</summary>
    public double? PanelScrew { get; init; }
    /// <summary>The spacer's rim; null without one.</summary>
    public double? SpacerRadius { get; init; }
    /// <summary>The driver's flange.</summary>
    public double? FlangeRadius { get; init; }
    /// <summary>The vehicle's screw holes.</summary>
    public IReadOnlyList<DrawnHole> Panel { get; init; } = [];
    /// <summary>The driver's screw holes as it is mounted; empty without a spacer, where the panel's holes are the driver's.</summary>
    public IReadOnlyList<DrawnHole> Driver { get; init; } = [];
    /// <summary>The hour toward which a tilted spacer looks; null when it is flat or nobody says where to aim.</summary>
    public double? AimHour { get; init; }
    /// <summary>Of the spacer, degrees.</summary>
    public double TiltDeg { get; init; }
}

/// <summary>A screw hole, and whether it meets one in the part it is screwed to.</summary>
public sealed record DrawnHole(double AngleDeg, double Radius, bool Meets);
