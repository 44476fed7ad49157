namespace FitCheck.Physics.Numerics;

/// <summary>Values in which resistors and capacitors are sold (IEC 60063).</summary>
internal static class PreferredNumbers
{
    /// <summary>The decade of E12.</summary>
    public static IReadOnlyList<double> E12 => Twelve;

    /// <summary>The decade of E24.</summary>
    public static IReadOnlyList<double> E24 => TwentyFour;

    private static readonly double[] Twelve = [1.0, 1.2, 1.5, 1.8, 2.2, 2.7, 3.3, 3.9, 4.7, 5.6, 6.8, 8.2];

    private static readonly double[] TwentyFour =
    [
        1.0, 1.1, 1.2, 1.3, 1.5, 1.6, 1.8, 2.0, 2.2, 2.4, 2.7, 3.0, 3.3, 3.6, 3.9, 4.3, 4.7, 5.1, 5.6, 6.2, 6.8, 7.5, 8.2, 9.1,
    ];

    /// <summary>The nearest value of E12 in any unit, by ratio. The value is above zero.</summary>
    public static double NearestE12(double value) => Nearest(value, Twelve);

    /// <summary>The nearest value of E24 in any unit, by ratio. The value is above zero.</summary>
    public static double NearestE24(double value) => Nearest(value, TwentyFour);

    private static double Nearest(double value, double[] decade)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(value);
        var exponent = (int)Math.Floor(Math.Log10(value));
        double nearest = 0, least = double.PositiveInfinity;
        for (var e = exponent - 1; e <= exponent + 1; e++)
        {
            foreach (var step in decade)
            {
                var candidate = Scale(step, e);
                var off = Math.Abs(Math.Log(candidate / value));
                if (off < least)
                    (nearest, least) = (candidate, off);
            }
        }
        return nearest;
    }

    // Whole numbers times or over a whole power of ten: 0.82 stays 0.82, not 0.8200000000000001.
    private static double Scale(double step, int exponent)
    {
        var digits = Math.Round(step * 10);
        return exponent >= 1 ? digits * Math.Pow(10, exponent - 1) : digits / Math.Pow(10, 1 - exponent);
    }
}
