namespace FitCheck.Drawings;

/// <summary>The load that one output sees, from 20 Hz to 20 kHz, and what the output allows.</summary>
public sealed record LoadCurve
{
    /// <summary>The output's id in the build.</summary>
    public required string Channel { get; init; }
    /// <summary>Its name for a person.</summary>
    public required string Name { get; init; }
    /// <summary>Frequency in Hz, |Z| in ohm, phase in degrees; log-spaced, ascending.</summary>
    public required IReadOnlyList<(double Hz, double Ohm, double PhaseDeg)> Points { get; init; }
    /// <summary>The least |Z|, ohm.</summary>
    public required double LowestOhm { get; init; }
    /// <summary>Where it is least, Hz.</summary>
    public required double LowestHz { get; init; }
    /// <summary>Lowest rated load of the output; null when its sheet does not say.</summary>
    public double? RatedLoad { get; init; }
    /// <summary>The least |Z| that the rated load allows: 80 % of it (IEC 60268-5).</summary>
    public double? AllowedOhm { get; init; }
    /// <summary>True when a driver's impedance was not known well enough to trust the curve.</summary>
    public bool Estimated { get; init; }
    /// <summary>Voltage at the output to start from when the gain is set; null for a source and where it is not known.</summary>
    public double? GainVolts { get; init; }
    /// <summary>The worst that a rule says of the load.</summary>
    public required Findings.Status Status { get; init; }
    /// <summary>Level at each tweeter against the output, dB at the same frequencies; empty without tweeters.</summary>
    public IReadOnlyList<TweeterCurve> Tweeters { get; init; } = [];
}

/// <summary>What reaches a tweeter's terminals, in dB re the output, at the points of its load curve.</summary>
public sealed record TweeterCurve(string Position, string Name, IReadOnlyList<double> Db, double? CornerHz, double? LowestAllowedHz);
