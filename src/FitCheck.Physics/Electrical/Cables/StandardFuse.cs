namespace FitCheck.Physics.Electrical.Cables;

/// <summary>The ratings in which fuses of each pattern are made, ampere.</summary>
internal static class StandardFuse
{
    private static readonly Dictionary<string, double[]> Ratings = new(StringComparer.Ordinal)
    {
        // ISO 8820-3 medium current and SAE J1284 (from memory).
        ["blade"] = [1, 2, 3, 5, 7.5, 10, 15, 20, 25, 30, 35, 40],
        // ISO 8820-3 miniature and SAE J2077 (from memory).
        ["mini"] = [2, 3, 4, 5, 7.5, 10, 15, 20, 25, 30],
        // ISO 8820-3 high current and SAE J1888 (20 to 80 A by their colour table, the rest from memory).
        ["maxi"] = [20, 25, 30, 35, 40, 50, 60, 70, 80, 100],
        // ISO 8820-5, bolted (from memory).
        ["midi"] = [30, 40, 50, 60, 70, 80, 100, 125, 150, 175, 200],
        ["mega"] = [60, 80, 100, 125, 150, 175, 200, 225, 250, 300, 350, 400, 450, 500],
        // Common practice, no source.
        ["anl"] = [35, 40, 50, 60, 80, 100, 125, 130, 150, 175, 200, 225, 250, 275, 300, 325, 350, 400, 500, 600, 750],
    };

    /// <summary>The largest rating of a pattern; null when it is not known.</summary>
    public static double? Largest(string pattern) => Ratings.TryGetValue(pattern, out var ratings) ? ratings[^1] : null;

    /// <summary>
    /// The smallest rating of a pattern that carries a current, within a limit; null when none does or the pattern is not known.
    /// </summary>
    public static double? Between(string pattern, double atLeast, double atMost)
    {
        foreach (var rating in Ratings.GetValueOrDefault(pattern, []))
        {
            if (rating >= atLeast)
                return rating <= atMost ? rating : null;
        }
        return null;
    }
}
