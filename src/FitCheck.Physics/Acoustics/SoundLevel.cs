using FitCheck.Physics.Quantities;

namespace FitCheck.Physics.Acoustics;

/// <summary>Sums and distances of sound levels, dB.</summary>
internal static class SoundLevel
{
    /// <summary>Level of independent sounds together: 10·log10 Σ 10^(L/10).</summary>
    public static double Incoherent(params IReadOnlyList<double> levels) => Decibel.OfPower(levels.Sum(Decibel.ToPower));

    /// <summary>Level of the same sound from several places, in phase: 20·log10 Σ 10^(L/20).</summary>
    public static double Coherent(params IReadOnlyList<double> levels) => Decibel.OfAmplitude(levels.Sum(Decibel.ToAmplitude));

    /// <summary>Change of level from one distance to another in a free field, distances in m above zero: −20·log10(to/from).</summary>
    public static double DistanceChange(double from, double to) => -Decibel.OfAmplitude(to / from);
}
