using System.Numerics;

namespace FitCheck.Physics.Acoustics;

/// <summary>
/// How far a cone travels, small-signal, closed box, free air or infinite baffle: x = √2·Bl·I/|k − ω²·m + jω·R| with I = V/Z
/// (Small, JAES 1972; the square root turns rms into peak). Needs fs, Qms, Qes and the moving mass.
/// </summary>
internal static class Excursion
{
    /// <summary>
    /// Peak travel to one side in m: voltage in volt rms at the driver, frequency in Hz, moving mass in kg. Null when the driver's
    /// parameters are not known.
    /// </summary>
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
}
