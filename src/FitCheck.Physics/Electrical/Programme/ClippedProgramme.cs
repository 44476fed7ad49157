namespace FitCheck.Physics.Electrical.Programme;

/// <summary>
/// Programme noise that is turned up twofold (6 dB) beyond an output's continuous voltage V and cut off hard at its rails, ±√2·V: what a
/// source does that is played too loud. Cutting off adds harmonics, so that power in the treble grows more than in the bass.
/// </summary>
/// <remarks>
/// Derived for Gaussian noise of the spectrum of <see cref="ProgrammeNoise"/> with an rms voltage σ = 2·V, cut at a·σ with a = 1/√2. Its
/// autocorrelation is Σ bₙ²·ρⁿ over odd n, where b₁ = erf(a/√2) and bₙ = −2·φ(a)·Heₙ₋₂(a)/√n! (Price's theorem; Bussgang 1952); its
/// spectrum is the transform of that. Altogether 4·[erf(a/√2) − 2a·φ(a) + a²·erfc(a/√2)] = 1.283 of V² remain, of which 0.002 lie beyond 20
/// kHz. A test clips noise and looks at its spectrum.
/// </remarks>
internal static class ClippedProgramme
{
    /// <summary>Power of each of the 31 bands, 20 Hz to 20 kHz, against V², dB.</summary>
    public static readonly IReadOnlyList<double> BandDb =
    [
        -25.30, -22.04, -19.38, -17.30, -15.56, -14.38, -13.48, -12.96, -12.54, -12.21, // 20 to 160 Hz
        -12.07, -11.92, -11.85, -11.78, -11.69, -11.61, -11.51, -11.50, -11.57, -11.73, // 200 Hz to 1.6 kHz
        -11.98, -12.39, -13.06, -13.98, -15.10, -16.63, -18.58, -20.75, -23.32, -26.34, -29.60, // 2 to 20 kHz
    ];

    private static readonly double[] Powers = ProgrammeNoise.PowersOf(BandDb);

    /// <summary>
    /// Sum of a function of frequency (Hz) over the clipped noise: with watts per volt squared it is watts per volt squared of the output's
    /// continuous voltage.
    /// </summary>
    public static double Sum(Func<double, double> function) => ProgrammeNoise.Weighted(Powers, function);
}
