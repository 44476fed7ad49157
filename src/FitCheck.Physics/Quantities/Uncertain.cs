namespace FitCheck.Physics.Quantities;

/// <summary>
/// A computed number with its worst-case bounds and its root-sum-square half-width, all in SI.
/// Low ≤ Value ≤ High always holds; an exact number has Low = Value = High and Rss = 0.
/// </summary>
public readonly record struct Uncertain(double Value, double Low, double High, double Rss)
{
    /// <summary>A number without uncertainty.</summary>
    public static Uncertain Exact(double value) => new(value, value, value, 0);

    /// <summary>A number with a symmetric half-width (≥ 0).</summary>
    public static Uncertain Within(double value, double halfWidth) => new(value, value - halfWidth, value + halfWidth, halfWidth);

    /// <summary>True when nothing is uncertain.</summary>
    public bool IsExact => Low == High;

    /// <summary>Sum: worst cases add, independent deviations add in quadrature.</summary>
    public static Uncertain operator +(Uncertain a, Uncertain b) =>
        new(a.Value + b.Value, a.Low + b.Low, a.High + b.High, Quadrature(a.Rss, b.Rss));

    /// <summary>Difference.</summary>
    public static Uncertain operator -(Uncertain a, Uncertain b) => a + -b;

    /// <summary>Sign change.</summary>
    public static Uncertain operator -(Uncertain a) => new(-a.Value, -a.High, -a.Low, a.Rss);

    /// <summary>Product.</summary>
    public static Uncertain operator *(Uncertain a, Uncertain b)
    {
        double p = a.Low * b.Low, q = a.Low * b.High, r = a.High * b.Low, s = a.High * b.High;
        return new(a.Value * b.Value, Math.Min(Math.Min(p, q), Math.Min(r, s)), Math.Max(Math.Max(p, q), Math.Max(r, s)),
            Quadrature(a.Rss * b.Value, b.Rss * a.Value));
    }

    /// <summary>Quotient; null when the divisor may be zero.</summary>
    public static Uncertain? Divide(Uncertain a, Uncertain b)
    {
        if (b.Low <= 0 && b.High >= 0)
            return null;
        var inverse = new Uncertain(1 / b.Value, 1 / b.High, 1 / b.Low, b.Rss / (b.Value * b.Value));
        return a * inverse;
    }

    /// <summary>The smaller of two.</summary>
    public static Uncertain Min(Uncertain a, Uncertain b) =>
        new(Math.Min(a.Value, b.Value), Math.Min(a.Low, b.Low), Math.Min(a.High, b.High), a.Value <= b.Value ? a.Rss : b.Rss);

    /// <summary>The larger of two.</summary>
    public static Uncertain Max(Uncertain a, Uncertain b) => -Min(-a, -b);

    /// <summary>The absolute value.</summary>
    public static Uncertain Abs(Uncertain a) =>
        a.Low >= 0 ? a : a.High <= 0 ? -a : new(Math.Abs(a.Value), 0, Math.Max(-a.Low, a.High), a.Rss);

    /// <summary>The named form of the sum.</summary>
    public static Uncertain Add(Uncertain left, Uncertain right) => left + right;

    /// <summary>The named form of the difference.</summary>
    public static Uncertain Subtract(Uncertain left, Uncertain right) => left - right;

    /// <summary>The named form of the product.</summary>
    public static Uncertain Multiply(Uncertain left, Uncertain right) => left * right;

    /// <summary>The named form of the sign change.</summary>
    public static Uncertain Negate(Uncertain item) => -item;

    private static double Quadrature(double a, double b) => Math.Sqrt((a * a) + (b * b));
}
