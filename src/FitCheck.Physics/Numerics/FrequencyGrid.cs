namespace FitCheck.Physics.Numerics;

/// <summary>Frequencies at which a load is computed.</summary>
internal static class FrequencyGrid
{
    /// <summary>The lowest frequency that is looked at, Hz.</summary>
    public const double Lowest = 20;

    /// <summary>The highest frequency that is looked at, Hz.</summary>
    public const double Highest = 20_000;

    /// <summary>20 Hz to 20 kHz in 240 equal ratios (80 to the decade), both ends included.</summary>
    public static readonly IReadOnlyList<double> Audio = Log(Lowest, Highest, 241);

    /// <summary>A number of frequencies (≥ 2) at equal ratios, both ends included, Hz.</summary>
    public static double[] Log(double lowestHz, double highestHz, int count)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(count, 2);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(lowestHz);
        ArgumentOutOfRangeException.ThrowIfLessThanOrEqual(highestHz, lowestHz);
        var grid = new double[count];
        for (var i = 0; i < count; i++)
            grid[i] = lowestHz * Math.Pow(highestHz / lowestHz, i / (count - 1.0));
        grid[^1] = highestHz;
        return grid;
    }
}
