using FitCheck.Physics.Quantities;

namespace FitCheck.Rules.Conditions;

/// <summary>Compares numbers that are known within bounds: the answer is yes, no, or null when the bounds overlap.</summary>
internal static class Comparison
{
    // 65 mm − 62 mm is a little more than 3 mm in binary; a limit must not be missed by that.
    private const double Rounding = 1e-9;

    /// <summary>Is a strictly less than b?</summary>
    public static bool? Less(in Uncertain a, in Uncertain b, Dimension dimension)
    {
        if (Less(a.High, b.Low, dimension))
            return true;
        return Less(a.Low, b.High, dimension) || FactInputs.IsNonsense(a) || FactInputs.IsNonsense(b) ? null : false;
    }

    /// <summary>Are a and b the same number?</summary>
    public static bool? Same(in Uncertain a, in Uncertain b, Dimension dimension)
    {
        if (Less(a.High, b.Low, dimension) || Less(b.High, a.Low, dimension))
            return false;
        return a.IsExact && b.IsExact ? true : null;
    }

    /// <summary>True when the two differ by no more than rounding.</summary>
    public static bool Near(double a, double b, Dimension dimension) => !Less(a, b, dimension) && !Less(b, a, dimension);

    private static bool Less(double a, double b, Dimension dimension) => a < b - Noise(a, b, dimension);

    private static double Noise(double a, double b, Dimension dimension)
    {
        var noise = Rounding * Math.Max(Unit.DisplayFor(dimension)?.Factor ?? 0, Math.Min(Math.Abs(a), Math.Abs(b)));
        return double.IsFinite(noise) ? noise : 0;
    }
}
