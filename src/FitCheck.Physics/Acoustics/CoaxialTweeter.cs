using System.Numerics;
using FitCheck.Physics.Electrical.Networks;

namespace FitCheck.Physics.Acoustics;

/// <summary>A tweeter behind its own capacitor on the frame of a coaxial driver: R + 1/(jωC) across the woofer's terminals.</summary>
/// <param name="Capacitance">Series capacitor, farad, &gt; 0.</param>
/// <param name="Resistance">Tweeter taken as a resistance, ohm, &gt; 0.</param>
internal sealed record CoaxialTweeter(double Capacitance, double Resistance)
{
    /// <summary>Capacitor and tweeter in series.</summary>
    public SeriesImpedance Branch => new SeriesImpedance(Resistance, Capacitance: Capacitance).Checked();

    /// <summary>Voltage across the tweeter over the voltage at the terminals, at a frequency in Hz (&gt; 0): R/(R + 1/jωC).</summary>
    public Complex Transfer(double hz) => Resistance * Branch.AdmittanceAt(hz);
}
