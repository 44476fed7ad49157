namespace FitCheck.Physics.Electrical.Loads;

/// <summary>
/// Two equal voice coils on one former, both in use, as one: factors on what is stated of each. In series they are a coil of twice the
/// wire, in parallel one of twice the cross-section (derived: V = Re·I + Bl·v for each coil, F = Bl·I of both together; they share
/// nearly all of their flux, so that inductance goes with the square of the turns). Resonance and all Q stay as they are with both.
/// </summary>
internal static class VoiceCoils
{
    /// <summary>On the resistance, and on the rated impedance.</summary>
    public static double Resistance(bool inSeries) => inSeries ? 2 : 0.5;

    /// <summary>On the inductance.</summary>
    public static double Inductance(bool inSeries) => inSeries ? 4 : 1;

    /// <summary>On the force factor: force over the current that enters at the terminals.</summary>
    public static double ForceFactor(bool inSeries) => inSeries ? 2 : 1;
}
