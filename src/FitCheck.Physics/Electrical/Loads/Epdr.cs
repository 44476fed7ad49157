namespace FitCheck.Physics.Electrical.Loads;

/// <summary>
/// Equivalent peak dissipation resistance: the resistor that would heat an ideal class B output stage at full swing,
/// at its worst instant, as much as the load does.
/// EPDR/|Z| = (1 − sin 150°)·sin 150° / [(1 − sin(150° + 2φ/3))·sin(150° − φ/3)], φ = |phase|
/// (derivation credited to J. Oclee-Brown; follows from p(θ) = (V − V·sin θ)·I·sin(θ − φ)).
/// </summary>
internal static class Epdr
{
    /// <summary>EPDR in ohm from |Z| in ohm and phase in degrees (−90 to 90, either sign).</summary>
    public static double Of(double impedanceMagnitude, double phaseDeg)
    {
        var phi = Math.Abs(phaseDeg) * Math.PI / 180;
        const double worst = 150 * Math.PI / 180;
        return impedanceMagnitude * 0.25 / ((1 - Math.Sin(worst + (2 * phi / 3))) * Math.Sin(worst - (phi / 3)));
    }
}
