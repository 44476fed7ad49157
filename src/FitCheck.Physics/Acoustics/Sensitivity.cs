using FitCheck.Physics.Quantities;

namespace FitCheck.Physics.Acoustics;

/// <summary>Sensitivity and reference efficiency of a driver. Levels in dB re 20 µPa at 1 m, half space.</summary>
internal static class Sensitivity
{
    /// <summary>
    /// Level of 100 % efficiency at 1 W, dB: 10·log10(ρ·c/(2π·p0²)). It is 112.0 to 112.2 depending on the air assumed
    /// (112.16 at 20 °C), so figures computed from it are good to 0.2 dB.
    /// </summary>
    public const double PerfectDb = 112.2;

    /// <summary>2.83 V is 1 W into 8 ohm: the voltage √8 V of the convention.</summary>
    public const double ReferenceLoad = 8;

    /// <summary>From dB at 2.83 V to dB at 1 W: subtract 10·log10(8/Z), Z the rated impedance in ohm (IEC 60268-5, cl. 20).</summary>
    public static double ToOneWatt(double levelAt2V83, double ratedImpedance) => levelAt2V83 - Excess(ratedImpedance);

    /// <summary>From dB at 1 W to dB at 2.83 V: add 10·log10(8/Z), Z the rated impedance in ohm.</summary>
    public static double To2V83(double levelAtOneWatt, double ratedImpedance) => levelAtOneWatt + Excess(ratedImpedance);

    /// <summary>Voltage that gives 1 W in the rated impedance: √(Z·1 W), volt (IEC 60268-5).</summary>
    public static double OneWattVolts(double ratedImpedance) => Math.Sqrt(ratedImpedance);

    /// <summary>Level at 1 m in dB for a power in watt (&gt; 0): + 10·log10 P.</summary>
    public static double AtPower(double levelAtOneWatt, double power) => levelAtOneWatt + Decibel.OfPower(power);

    /// <summary>
    /// Reference efficiency, 0 to 1: 9.64e-10·fs³·Vas/Qes with Vas in litres (Small, JAES 1972, c ≈ 345 m/s); here Vas is in m³.
    /// At 20 °C the constant is 9.77e-10, 0.06 dB more.
    /// </summary>
    public static double ReferenceEfficiency(double resonanceHz, double equivalentVolume, double electricalQ) =>
        9.64e-7 * resonanceHz * resonanceHz * resonanceHz * equivalentVolume / electricalQ;

    /// <summary>Sensitivity in dB at 1 W from the reference efficiency: 112.2 + 10·log10 η0.</summary>
    public static double OfEfficiency(double efficiency) => PerfectDb + Decibel.OfPower(efficiency);

    private static double Excess(double ratedImpedance) => Decibel.OfPower(ReferenceLoad / ratedImpedance);
}
