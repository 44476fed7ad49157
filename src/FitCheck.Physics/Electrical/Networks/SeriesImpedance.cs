using System.Numerics;

namespace FitCheck.Physics.Electrical.Networks;

/// <summary>
/// A resistance, an inductance and a capacitance in series, each optional: Z = R + jωL + 1/(jωC).
/// A single resistor, coil or capacitor is the case with one of them.
/// </summary>
/// <param name="Resistance">Ohm, ≥ 0; null when absent.</param>
/// <param name="Inductance">Henry, ≥ 0; null when absent.</param>
/// <param name="Capacitance">Farad, &gt; 0; null when absent.</param>
internal readonly record struct SeriesImpedance(double? Resistance = null, double? Inductance = null, double? Capacitance = null)
{
    /// <summary>Stands for 0 ohm in a network, in ohm: a micro-ohm, far below any joint in a vehicle, keeps admittances finite.</summary>
    public const double Least = 1e-6;

    /// <summary>Impedance in ohm at a frequency in Hz (&gt; 0). May be zero: without parts, or at a lossless resonance.</summary>
    public Complex At(double hz)
    {
        var omega = 2 * Math.PI * hz;
        var reactance = omega * (Inductance ?? 0);
        if (Capacitance is { } farad)
            reactance -= 1 / (omega * farad);
        return new Complex(Resistance ?? 0, reactance);
    }

    /// <summary>Admittance in siemens at a frequency in Hz (&gt; 0), with |Z| held at <see cref="Least"/> or more.</summary>
    public Complex AdmittanceAt(double hz)
    {
        var z = At(hz);
        return Complex.Abs(z) < Least ? 1 / Least : 1 / z;
    }

    /// <summary>True when no part is given.</summary>
    public bool IsEmpty => Resistance is null && Inductance is null && Capacitance is null;

    /// <summary>Refuses negative, infinite or undefined values, and a capacitance of zero; returns itself.</summary>
    /// <exception cref="ArgumentOutOfRangeException">A value is outside its range.</exception>
    public SeriesImpedance Checked()
    {
        Require(Resistance is null or >= 0, Resistance, "A resistance is a finite number of ohms, not negative.");
        Require(Inductance is null or >= 0, Inductance, "An inductance is a finite number of henries, not negative.");
        Require(Capacitance is null or > 0, Capacitance, "A capacitance is a finite number of farads above zero.");
        return this;
    }

    private static void Require(bool inRange, double? value, string message)
    {
        if (!inRange || (value is { } number && !double.IsFinite(number)))
            throw new ArgumentOutOfRangeException(nameof(value), value, message);
    }
}
