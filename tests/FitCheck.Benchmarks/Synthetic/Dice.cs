using System.Globalization;

namespace FitCheck.Benchmarks.Synthetic;

/// <summary>
/// Random choices that are the same on every machine and in every version of the framework (SplitMix64, Steele et al. 2014).
/// </summary>
internal sealed class Dice(ulong seed)
{
    private ulong _state = (seed * 0x9E3779B97F4A7C15) + 0x1234_5678_9ABC_DEF1;

    public bool Chance(double part) => Part() < part;

    public T Of<T>(params IReadOnlyList<T> choices) => choices[(int)(Next() % (ulong)choices.Count)];

    public int Whole(int from, int to) => from + (int)(Next() % (ulong)(to - from + 1));

    /// <summary>Mostly near the middle: the mean of three, so that no class has outliers.</summary>
    public double Around(double low, double high) => low + ((high - low) * (Part() + Part() + Part()) / 3);

    /// <summary>A number with its significant digits, as sheets print it.</summary>
    public static string Digits(double value, int significant)
    {
        var decimals = Math.Clamp(significant - 1 - (int)Math.Floor(Math.Log10(Math.Abs(value))), 0, 6);
        return Math.Round(value, decimals).ToString("0.######", CultureInfo.InvariantCulture);
    }

    /// <summary>The number that these digits give.</summary>
    public static double Rounded(double value, int significant) => double.Parse(Digits(value, significant), CultureInfo.InvariantCulture);

    private double Part() => (Next() >> 11) * (1.0 / (1UL << 53));

    private ulong Next()
    {
        var z = _state += 0x9E3779B97F4A7C15;
        z = (z ^ (z >> 30)) * 0xBF58476D1CE4E5B9;
        z = (z ^ (z >> 27)) * 0x94D049BB133111EB;
        return z ^ (z >> 31);
    }
}
