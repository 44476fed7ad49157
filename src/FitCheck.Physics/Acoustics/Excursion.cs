using System.Numerics;
using FitCheck.Physics.Electrical.Filters;

namespace FitCheck.Physics.Acoustics;

/// <summary>
/// How far a cone travels, small-signal, closed box, free air or infinite baffle: x = √2·Bl·I/|k − ω²·m + jω·R| with I = V/Z
/// (Small, JAES 1972; the square root turns rms into peak). Needs fs, Qms, Qes and the moving mass.
/// </summary>
public static class Excursion
{
    /// <summary>Peak travel to one side in m: voltage in volt rms at the driver, frequency in Hz, moving mass in kg. Null when the driver's parameters are not known.</summary>
    public static double? Peak(DriverModel driver, double movingMass, double volts, double hz)
    {
        ArgumentNullException.ThrowIfNull(driver);
        if (!driver.HasMotionalPart)
            return null;
        var (fs, qms, qes) = (driver.Fs!.Value, driver.Qms!.Value, driver.Qes!.Value);
        double omega = 2 * Math.PI * hz, omegaS = 2 * Math.PI * fs;
        var forceFactor = ThieleSmall.ForceFactor(fs, movingMass, driver.Re, qes);
        var current = volts / Complex.Abs(driver.VoiceCoilImpedance(hz));
        var mechanical = new Complex(movingMass * ((omegaS * omegaS) - (omega * omega)), omega * omegaS * movingMass / qms);
        return Math.Sqrt(2) * forceFactor * current / Complex.Abs(mechanical);
    }

    /// <summary>Largest peak travel in m over frequencies in Hz, with a gain (voltage ratio by frequency) in front of the driver.</summary>
    public static double? Largest(DriverModel driver, double movingMass, double volts, IReadOnlyList<double> frequencies, Func<double, double>? gain = null)
    {
        ArgumentNullException.ThrowIfNull(driver);
        ArgumentNullException.ThrowIfNull(frequencies);
        return driver.HasMotionalPart ? frequencies.Max(hz => Peak(driver, movingMass, volts * (gain?.Invoke(hz) ?? 1), hz)) : null;
    }

    /// <summary>
    /// Lowest corner in Hz of a Butterworth high-pass of an order that keeps travel within a limit in m; the lowest frequency when none is needed;
    /// null when parameters are missing or no corner up to the highest frequency is enough. Good to 0.1 %.
    /// </summary>
    public static double? LowestHighPass(DriverModel driver, double movingMass, double volts, double limit, int order, IReadOnlyList<double> frequencies)
    {
        ArgumentNullException.ThrowIfNull(frequencies);
        if (Largest(driver, movingMass, volts, frequencies) is not { } open)
            return null;
        double low = frequencies[0], high = frequencies[^1];
        if (open <= limit)
            return low;
        if (!Keeps(high))
            return null;
        while (high / low > 1.001)
        {
            var middle = Math.Sqrt(low * high);
            if (Keeps(middle))
                high = middle;
            else
                low = middle;
        }

        return high;

        bool Keeps(double corner) =>
            Largest(driver, movingMass, volts, frequencies, hz => ActiveFilter.ButterworthHighPass(hz, corner, order)) <= limit;
    }
}
