namespace FitCheck.Facts.Values;

/// <summary>
/// Figures that facts are reckoned with though no sheet states them: what is usual in the trade, and the bounds between which a datum lies
/// that nobody wrote. They stand in `practice.yaml` beside the rules, each with its source; SI.
/// </summary>
internal sealed record Practice
{
    /// <summary>Supply at an amplifier with the engine running, V.</summary>
    public double RunningVoltage { get; init; }
    /// <summary>Part of full power that amplifiers take with music.</summary>
    public double MusicAverage { get; init; }
    /// <summary>Of a class D stage at full power, where none is stated.</summary>
    public double EfficiencyClassD { get; init; }
    /// <summary>Of a stage of any other class.</summary>
    public double EfficiencyOtherClasses { get; init; }
    /// <summary>What a stage without a supply converter gives into 4 ohm, W.</summary>
    public Between OutputStagePower { get; init; }
    /// <summary>A rating holds for loads up to so many times its own.</summary>
    public double RatingReach { get; init; }
    /// <summary>Part of a stated power that is left at 1 % distortion.</summary>
    public Between RatingAtLowDistortion { get; init; }
    /// <summary>Part of a stated power that is left with all channels driven.</summary>
    public Between RatingWithAllChannels { get; init; }
    /// <summary>Load into which most ratings are stated, ohm.</summary>
    public double UsualRatedLoad { get; init; }
    /// <summary>DC resistance over rated impedance.</summary>
    public Between DcResistanceShare { get; init; }
    /// <summary>Least inductance of a voice coil, H for each ohm of rated impedance.</summary>
    public double LeastInductance { get; init; }
    /// <summary>DC resistance of a coaxial's own tweeter over its rated impedance.</summary>
    public double CoaxialTweeterShare { get; init; }
    /// <summary>Radius of a woofer's cone over the size of its class.</summary>
    public Between ConeRadiusShare { get; init; }
    /// <summary>Of a subwoofer.</summary>
    public ResonanceBounds Subwoofer { get; init; }
    /// <summary>Of a woofer, a coaxial or a full-range driver.</summary>
    public ResonanceBounds Woofer { get; init; }
    /// <summary>Of a tweeter.</summary>
    public ResonanceBounds Tweeter { get; init; }
    /// <summary>Part of the power that is left behind a speaker wire that nobody wrote.</summary>
    public double FactoryWireShare { get; init; }
    /// <summary>Slope of a high-pass that is proposed, dB/octave.</summary>
    public double FilterSlope { get; init; }
    /// <summary>What the insulation of a power cable stands, °C.</summary>
    public Between CableInsulation { get; init; }
    /// <summary>Of a power cable under load, °C.</summary>
    public double ConductorTemperature { get; init; }
    /// <summary>Of a ground cable that nobody measured, m.</summary>
    public double GroundLength { get; init; }
    /// <summary>Of a panel that nobody measured, m.</summary>
    public double PanelThickness { get; init; }
    /// <summary>Of a speaker screw of no known size, m.</summary>
    public double ScrewSize { get; init; }
    /// <summary>How far apart two holes may be and still take one screw, m.</summary>
    public double ScrewHoleClearance { get; init; }
    /// <summary>Room beside a crossover module for its cables, m.</summary>
    public double CableBend { get; init; }
    /// <summary>Of the head at the wheel from the point between the seats, m.</summary>
    public double SeatOffset { get; init; }

    /// <summary>Resonance and Q of a driver by its type.</summary>
    public ResonanceBounds ResonanceOf(string driverType) => driverType switch
    {
        "subwoofer" => Subwoofer,
        "tweeter" => Tweeter,
        _ => Woofer,
    };
}

/// <summary>Between which bounds resonance and Q of a kind of driver lie where no sheet gives them.</summary>
internal readonly record struct ResonanceBounds(Between Fs, Between Qes, Between Qms);

/// <summary>The least and the most that a datum can be, SI.</summary>
internal readonly record struct Between(double Low, double High);
