using FitCheck.Physics.Quantities;

namespace FitCheck.Facts.Values;

/// <summary>Compares numbers that are known within bounds: the answer is yes, no, or null when the bounds overlap.</summary>
internal static class Comparison
{
    // 65 mm − 62 mm is a little more than 3 mm in binary; a limit must not be missed by that.
    private const double Rounding = 1e-9;

    /// <summary>Is a strictly less than b?</summary>
    public static bool? Less(in Uncertain a, in Uncertain b, Dimension dimension) => Less(a, b, ScaleOf(dimension));

    /// <summary>Whether a is strictly less than b, by the scale of their dimension.</summary>
    public static bool? Less(in Uncertain a, in Uncertain b, double scale)
    {
        if (Less(a.High, b.Low, scale))
            return true;
        return Less(a.Low, b.High, scale) || Brief.IsNonsense(a) || Brief.IsNonsense(b) ? null : false;
    }

    /// <summary>Are a and b the same number?</summary>
    public static bool? Same(in Uncertain a, in Uncertain b, Dimension dimension) => Same(a, b, ScaleOf(dimension));

    /// <summary>Whether a and b are the same number, by the scale of their dimension.</summary>
    public static bool? Same(in Uncertain a, in Uncertain b, double scale)
    {
        if (Less(a.High, b.Low, scale) || Less(b.High, a.Low, scale))
            return false;
        return a.IsExact && b.IsExact ? true : null;
    }

    /// <summary>True when the two differ by no more than rounding.</summary>
    public static bool Near(double a, double b, Dimension dimension) => Near(a, b, ScaleOf(dimension));

    /// <summary>True when the two differ by no more than rounding, by the scale of their dimension.</summary>
    public static bool Near(double a, double b, double scale) => !Less(a, b, scale) && !Less(b, a, scale);

    /// <summary>One of the unit in which people read this dimension, SI: rounding is measured by it.</summary>
    public static double ScaleOf(Dimension dimension) => Unit.DisplayFor(dimension)?.Factor ?? 0;

    private static bool Less(double a, double b, double scale)
    {
        // What is not less at all, or less by more than any noise of the two, needs no closer look.
        var apart = b - a;
        return apart > 0 && (apart > MostNoise(b, scale) || a < b - Noise(a, b, scale));
    }

    /// <summary>Two numbers, one of which is this, that are farther apart differ by more than rounding.</summary>
    public static double MostNoise(double number, double scale) => 2 * Rounding * (scale + Math.Abs(number));

    private static double Noise(double a, double b, double scale)
    {
        var noise = Rounding * Math.Max(scale, Math.Min(Math.Abs(a), Math.Abs(b)));
        return double.IsFinite(noise) ? noise : 0;
    }
}
