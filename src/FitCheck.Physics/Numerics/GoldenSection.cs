namespace FitCheck.Physics.Numerics;

/// <summary>Search for the minimum of a function with a single dip (Kiefer 1953).</summary>
internal static class GoldenSection
{
    private static readonly double Ratio = (Math.Sqrt(5) - 1) / 2;

    /// <summary>Where the function is least between two ends, to about 1e-6 of the interval.</summary>
    public static double Minimum(Func<double, double> function, double low, double high)
    {
        double left = high - (Ratio * (high - low)), right = low + (Ratio * (high - low));
        double atLeft = function(left), atRight = function(right);
        for (var step = 0; step < 28; step++)
        {
            if (atLeft < atRight)
            {
                (high, right, atRight) = (right, left, atLeft);
                left = high - (Ratio * (high - low));
                atLeft = function(left);
            }
            else
            {
                (low, left, atLeft) = (left, right, atRight);
                right = low + (Ratio * (high - low));
                atRight = function(right);
            }
        }

        return (low + high) / 2;
    }
}
