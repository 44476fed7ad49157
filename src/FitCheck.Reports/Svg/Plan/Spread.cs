namespace FitCheck.Reports.Svg.Plan;

/// <summary>
/// Moves things in a row apart, in their order, each as little from where it would like to be as all of them together allow.
/// </summary>
internal static class Spread
{
    /// <param name="wanted">The middles that are wished for, in order.</param>
    /// <param name="sizes">The length of each.</param>
    /// <param name="gap">The least that stays between two.</param>
    /// <param name="from">Where the row may begin.</param>
    /// <param name="to">Where it should end; it goes further where there is not room enough.</param>
    /// <returns>Their middles.</returns>
    public static double[] Apart(IReadOnlyList<double> wanted, IReadOnlyList<double> sizes, double gap, double from, double to)
    {
        if (wanted.Count == 0)
            return [];
        var offsets = new double[wanted.Count];
        for (var i = 1; i < offsets.Length; i++)
            offsets[i] = offsets[i - 1] + ((sizes[i - 1] + sizes[i]) / 2) + gap;
        var lowest = from + (sizes[0] / 2);
        var highest = Math.Max(lowest, to - (sizes[^1] / 2) - offsets[^1]);
        return [.. Rising([.. wanted.Select((w, i) => w - offsets[i])]).Select((p, i) => Math.Clamp(p, lowest, highest) + offsets[i])];
    }

    /// <summary>As long as they are together.</summary>
    public static double Length(IReadOnlyList<double> sizes, double gap) => sizes.Sum() + (gap * Math.Max(0, sizes.Count - 1));

    // The nearest rising row by least squares: neighbours that would change places are pooled at their mean (isotonic regression).
    private static IEnumerable<double> Rising(double[] values)
    {
        var pools = new List<(double Mean, int Count)>();
        foreach (var value in values)
        {
            var pool = (Mean: value, Count: 1);
            while (pools.Count > 0 && pools[^1].Mean > pool.Mean)
            {
                var (mean, count) = pools[^1];
                pool = (((pool.Mean * pool.Count) + (mean * count)) / (pool.Count + count), pool.Count + count);
                pools.RemoveAt(pools.Count - 1);
            }
            pools.Add(pool);
        }
        return pools.SelectMany(p => Enumerable.Repeat(p.Mean, p.Count));
    }
}
