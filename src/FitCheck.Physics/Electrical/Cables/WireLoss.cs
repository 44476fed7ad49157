using FitCheck.Physics.Quantities;

namespace FitCheck.Physics.Electrical.Cables;

/// <summary>What a wire between an output and its load costs.</summary>
internal static class WireLoss
{
    /// <summary>Loss of level in dB, ≥ 0: 20·log10((Z + Rw)/Z), with a resistive load Z and a wire Rw (both conductors) in ohm.</summary>
    public static double Db(double load, double wireResistance) => Decibel.OfAmplitude((load + wireResistance) / load);

    /// <summary>Change of level in dB when something in series leaves Z/(Z + Rs) of the voltage: 20·log10, ≤ 0.</summary>
    public static double LevelChange(double load, double seriesResistance) => -Db(load, seriesResistance);
}
