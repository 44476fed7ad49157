using FitCheck.Physics.Quantities;

namespace FitCheck.Physics.Acoustics;

/// <summary>Frequency weighting A of sound level meters.</summary>
internal static class AWeighting
{
    /// <summary>Weighting in dB at a frequency in Hz (&gt; 0); 0 at 1 kHz (IEC 61672-1, annex E, analytical form).</summary>
    public static double Db(double hz)
    {
        var f = hz * hz;
        const double a = 20.6 * 20.6, b = 107.7 * 107.7, c = 737.9 * 737.9, d = 12194.0 * 12194.0;
        return Decibel.OfAmplitude(d * f * f / ((f + a) * Math.Sqrt((f + b) * (f + c)) * (f + d))) + 2.00;
    }
}
