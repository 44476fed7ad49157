namespace FitCheck.Physics.Numerics;

/// <summary>
/// Middle and spread of a class of numbers, neither moved by a few wrong ones among them: the median, and the median of the distances from
/// it (MAD; Hampel, JASA 1974) times 1.4826 = 1/Φ⁻¹(3/4), which is the standard deviation when the numbers are normally distributed.
/// </summary>
/// <param name="Median">The median, in the unit of the numbers.</param>
/// <param name="Spread">The scaled median distance, in the same unit, ≥ 0.</param>
/// <param name="Count">How many numbers, ≥ 1.</param>
internal readonly record struct Middle(double Median, double Spread, int Count)
{
    private const double OfNormal = 1.482602218505602;

    /// <summary>Of one number or more, in any order; throws when there is none.</summary>
    public static Middle Of(IEnumerable<double> numbers)
    {
        double[] sorted = [.. numbers];
        if (sorted.Length == 0)
            throw new ArgumentException("a class has at least one number", nameof(numbers));
        Array.Sort(sorted);
        var median = MedianOf(sorted);
        var distances = Array.ConvertAll(sorted, x => Math.Abs(x - median));
        Array.Sort(distances);
        return new Middle(median, OfNormal * MedianOf(distances), sorted.Length);
    }

    /// <summary>
    /// How many spreads a number lies from the median, without sign (Iglewicz and Hoaglin, How to Detect and Handle Outliers, 1993, call
    /// numbers beyond 3.5 outliers). Infinite for a number off the median of a class without spread.
    /// </summary>
    public double Score(double number)
    {
        var distance = Math.Abs(number - Median);
        return distance == 0 ? 0 : distance / Spread;
    }

    private static double MedianOf(double[] sorted) =>
        sorted.Length % 2 == 1 ? sorted[sorted.Length / 2] : (sorted[(sorted.Length / 2) - 1] + sorted[sorted.Length / 2]) / 2;
}
