namespace FitCheck.Physics.Quantities;

/// <summary>Ratios as levels: 20·log10 of voltages or pressures, 10·log10 of powers.</summary>
internal static class Decibel
{
    /// <summary>Level in dB of a voltage or pressure ratio (≥ 0); minus infinity for 0.</summary>
    public static double OfAmplitude(double ratio) => 20 * Math.Log10(ratio);

    /// <summary>Level in dB of a power ratio (≥ 0); minus infinity for 0.</summary>
    public static double OfPower(double ratio) => 10 * Math.Log10(ratio);

    /// <summary>Voltage or pressure ratio of a level in dB.</summary>
    public static double ToAmplitude(double level) => Math.Pow(10, level / 20);

    /// <summary>Power ratio of a level in dB.</summary>
    public static double ToPower(double level) => Math.Pow(10, level / 10);
}
