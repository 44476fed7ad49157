using FitCheck.Catalog;
using FitCheck.Facts.Fitting;
using FitCheck.Facts.Values;
using FitCheck.Physics.Geometry;
using FitCheck.Physics.Quantities;

namespace FitCheck.Charts.BestMount;

/// <summary>
/// A driver's body as its figures say, and with each of them moved to either end of its tolerance: all that a stack-up over the body asks
/// for, made once for every spacer and place.
/// </summary>
internal sealed class BodyVariants
{
    private readonly BodyProfile? _nominal;
    private readonly (BodyProfile Down, BodyProfile Up)[] _moved = [];

    private BodyVariants(Stack stack, Func<double[], BodyProfile> body)
    {
        IsGuess = stack.IsGuess;
        if (stack.IsMissing)
            return;
        var values = stack.Nominal();
        _nominal = body(values);
        _moved = [.. stack.Moved(values).Select(m => (body(m.Down), body(m.Up)))];
    }

    /// <summary>True when a figure of the body is estimated.</summary>
    public bool IsGuess { get; }

    public static BodyVariants Of(Driver driver)
    {
        var stack = new Stack(Dimension.Metre);
        return new BodyVariants(stack, BodyFacts.Inputs(driver.Dimensions, what => what, stack));
    }

    /// <summary>
    /// A length that body, spacer and a third figure need together, as <see cref="StackUp"/> would have it; unknown when one of them is.
    /// </summary>
    public LengthTerm Needed(in Mounted on, in LengthTerm third, BodyFormula f)
    {
        var (thickness, tilt) = (on.Thickness, on.Tilt);
        if (_nominal is null || thickness.IsMissing || tilt.IsMissing || third.IsMissing)
            return LengthTerm.Missing;
        var nominal = f(_nominal, tilt.Si, thickness.Si, third.Si);
        var worst = 0.0;
        foreach (var (down, up) in _moved)
            Add(f(down, tilt.Si, thickness.Si, third.Si), f(up, tilt.Si, thickness.Si, third.Si));
        if (thickness.HalfWidth != 0)
            Add(f(_nominal, tilt.Si, thickness.Down.Si, third.Si), f(_nominal, tilt.Si, thickness.Up.Si, third.Si));
        if (tilt.HalfWidth != 0)
            Add(f(_nominal, tilt.Down.Si, thickness.Si, third.Si), f(_nominal, tilt.Up.Si, thickness.Si, third.Si));
        if (third.HalfWidth != 0)
            Add(f(_nominal, tilt.Si, thickness.Si, third.Down.Si), f(_nominal, tilt.Si, thickness.Si, third.Up.Si));
        return new LengthTerm(nominal, worst, IsGuess || thickness.IsGuess || tilt.IsGuess || third.IsGuess);

        void Add(double down, double up) => worst += Math.Max(Math.Abs(down - nominal), Math.Abs(up - nominal));
    }
}

/// <summary>What a spacer does to the body that it carries.</summary>
/// <param name="Thickness">At its centre, metres; nothing straight on the panel.</param>
/// <param name="Tilt">Between its faces, radians.</param>
internal readonly record struct Mounted(LengthTerm Thickness, LengthTerm Tilt);
