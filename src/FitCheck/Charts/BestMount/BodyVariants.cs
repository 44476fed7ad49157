using FitCheck.Catalog;
using FitCheck.Facts.Fitting;
using FitCheck.Facts.Values;
using FitCheck.Physics.Geometry;
using FitCheck.Physics.Quantities;

namespace FitCheck.Charts.BestMount;

/// <summary>
/// A driver's body as its figures say, as small and as large as their tolerances let it be: all that a stack-up over the body asks for,
/// made once for every spacer and place.
/// </summary>
internal sealed class BodyVariants
{
    private readonly BodyProfile? _nominal;
    private readonly BodyProfile[] _ends = [];

    private BodyVariants(Stack stack, Func<double[], BodyProfile> body)
    {
        IsGuess = stack.IsGuess;
        if (stack.IsMissing)
            return;
        var values = stack.Nominal();
        _nominal = body(values);
        _ends = stack.MovedTogether(values) is var (down, up) ? [body(down), body(up)] : [_nominal];
    }

    /// <summary>True when a figure of the body is estimated.</summary>
    public bool IsGuess { get; }

    public static BodyVariants Of(Driver driver, bool acrossShortAxis)
    {
        var stack = new Stack(Dimension.Metre);
        return new BodyVariants(stack, BodyFacts.Inputs(driver.Dimensions, what => what, stack, acrossShortAxis));
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
        var (low, high) = (nominal, nominal);
        foreach (var angle in Places(tilt))
        {
            foreach (var thick in Places(thickness))
            {
                foreach (var beside in third.IsExact ? (ReadOnlySpan<double>)[third.Low] : [third.Low, third.High])
                {
                    foreach (var body in _ends)
                    {
                        var result = f(body, angle, thick, beside);
                        (low, high) = (Math.Min(low, result), Math.Max(high, result));
                    }
                }
            }
        }
        return new LengthTerm(nominal, low, high, IsGuess || thickness.IsGuess || tilt.IsGuess || third.IsGuess);

        // What is exact has one end only; a body may need more at a middle thickness or tilt than at either end.
        static double[] Places(in LengthTerm term) => term.IsExact ? [term.Low] : [term.Low, term.Si, term.High];
    }
}

/// <summary>What a spacer does to the body that it carries.</summary>
/// <param name="Thickness">At its centre, metres; nothing straight on the panel.</param>
/// <param name="Tilt">Between its faces, radians.</param>
internal readonly record struct Mounted(LengthTerm Thickness, LengthTerm Tilt);
