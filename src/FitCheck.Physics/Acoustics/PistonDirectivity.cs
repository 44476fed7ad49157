using FitCheck.Physics.Quantities;

namespace FitCheck.Physics.Acoustics;

/// <summary>
/// Off-axis level of a rigid circular piston in a baffle: |2·J1(x)/x|, x = k·a·sin α (Kinsler and Frey, Fundamentals of Acoustics; Beranek,
/// Acoustics).
/// </summary>
internal static class PistonDirectivity
{
    /// <summary>
    /// Level against the axis in dB, ≤ 0: frequency in Hz, piston radius in m, angle from the axis in radians (0 to π/2).
    /// </summary>
    public static double Db(double hz, double radius, double angle, double soundSpeed = Air.SoundSpeed) =>
        Decibel.OfAmplitude(Ratio(2 * Math.PI * hz / soundSpeed * radius * Math.Sin(angle)));

    /// <summary>Pressure against the axis, 0 to 1, for x = k·a·sin α.</summary>
    public static double Ratio(double x) => Math.Abs(x) < 1e-4 ? 1 - (x * x / 8) : Math.Abs(2 * BesselJ1(x) / x);

    /// <summary>
    /// Bessel function of the first kind, order 1: (1/π)·∫ cos(τ − x·sin τ) dτ from 0 to π. The integrand is periodic,
    /// so the trapezoidal rule converges faster than any power once its points outnumber |x|. Near zero the ascending series is as exact
    /// and sooner done: Σ (−1)^m/(m!·(m + 1)!)·(x/2)^(2m+1) (Abramowitz and Stegun, 9.1.10).
    /// </summary>
    public static double BesselJ1(double x)
    {
        if (Math.Abs(x) < 4)
            return Series(x / 2);
        var steps = 32 + (int)Math.Ceiling(Math.Abs(x));
        double sum = 0; // the ends, cos 0 and cos π, cancel
        for (var i = 1; i < steps; i++)
        {
            var tau = Math.PI * i / steps;
            sum += Math.Cos(tau - (x * Math.Sin(tau)));
        }

        return sum / steps;
    }

    private static double Series(double half)
    {
        var (term, sum) = (half, half);
        for (var m = 1; Math.Abs(term) > 1e-17 * Math.Abs(sum); m++)
        {
            term *= -half * half / (m * (m + 1));
            sum += term;
        }
        return sum;
    }
}
