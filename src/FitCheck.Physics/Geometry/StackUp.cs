using FitCheck.Physics.Quantities;

namespace FitCheck.Physics.Geometry;

/// <summary>The value of one input at which a result just keeps its limit.</summary>
/// <param name="Value">In the input's unit.</param>
/// <param name="OrMore">True when larger values keep the limit too, false when smaller ones do.</param>
internal readonly record struct PassingValue(double Value, bool OrMore);

/// <summary>
/// Tolerance stack-up: how far a result may be off when each of its inputs is off by its half-width. Worst case Σ|cᵢ| and root of the sum
/// of squares √Σcᵢ² (F. Scholz, Tolerance Stack Analysis Methods, 1995), with cᵢ the larger of the result's changes when input i alone
/// moves to either end of its tolerance. Where a result may jump, as the depth beside an edge does, inputs that alone move nothing reach
/// over the jump together: there the worst case is that of all corners. Pure functions; any units.
/// </summary>
internal static class StackUp
{
    /// <summary>
    /// The result with its worst case (Low, High) and its root-sum-square half-width (Rss), in the unit of f. Not-a-number when f is at any
    /// of the inputs it is tried at.
    /// </summary>
    /// <param name="inputs">Name, nominal value and half-width (≥ 0) of each input.</param>
    /// <param name="f">The result, from the inputs' values in the same order; pure, and defined over the tolerances.</param>
    public static Uncertain Of(IReadOnlyList<(string Name, double Nominal, double HalfWidth)> inputs, Func<double[], double> f)
    {
        var values = new double[inputs.Count];
        for (var i = 0; i < values.Length; i++)
            values[i] = inputs[i].Nominal;
        var nominal = f(values);
        double worst = 0, squares = 0;
        for (var i = 0; i < inputs.Count; i++)
        {
            var contribution = Contribution(inputs[i], i, values, nominal, f);
            worst += contribution;
            squares += contribution * contribution;
        }
        return new(nominal, nominal - worst, nominal + worst, Math.Sqrt(squares));
    }

    /// <summary>
    /// The result with its worst case over all corners of the tolerances; as <see cref="Of"/> otherwise, but that its root-sum-square
    /// half-width is never more than the worst case.
    /// </summary>
    /// <param name="inputs">Name, nominal value and half-width (≥ 0) of each input.</param>
    /// <param name="together">
    /// Inputs that move together, each with the sign of its way, because the result only rises or only falls as all of them go their ways;
    /// every other input goes its own. With the sign 0 it goes its own and is tried at its nominal value too, because the result may be
    /// worse there than at both ends: an edge lies in a panel for a spacer's middle alone, or a body is widest at a middle tilt.
    /// </param>
    /// <param name="f">The result, as in <see cref="Of"/>; it takes two, or three, for each way, multiplied.</param>
    public static Uncertain OverCorners(IReadOnlyList<(string Name, double Nominal, double HalfWidth)> inputs,
        IReadOnlyList<(int Index, int Sign)> together, Func<double[], double> f)
    {
        var number = Of(inputs, f);
        var nominal = new double[inputs.Count];
        var signs = new int[inputs.Count];
        var hasMiddle = new bool[inputs.Count];
        var (isOneWay, corners) = (false, 1);
        foreach (var (index, sign) in together)
        {
            (signs[index], hasMiddle[index]) = (sign, sign == 0);
            isOneWay |= sign != 0 && inputs[index].HalfWidth > 0;
        }
        for (var i = 0; i < nominal.Length; i++)
        {
            nominal[i] = inputs[i].Nominal;
            corners *= OwnEnds(i);
        }
        var (low, high, values) = (number.Value, number.Value, new double[nominal.Length]);
        for (var corner = 0; corner < (isOneWay ? 2 * corners : corners); corner++)
        {
            var (own, shared) = (corner % corners, corner < corners ? -1 : 1);
            for (var i = 0; i < values.Length; i++)
            {
                var at = signs[i] * shared;
                if (OwnEnds(i) is > 1 and var ends)
                    (at, own) = (own % ends == 2 ? 0 : (2 * (own % ends)) - 1, own / ends);
                values[i] = nominal[i] + (at * inputs[i].HalfWidth);
            }
            var result = f(values);
            (low, high) = (Math.Min(low, result), Math.Max(high, result));
        }
        return new(number.Value, low, high, Math.Min(number.Rss, Math.Max(number.Value - low, high - number.Value)));

        int OwnEnds(int i) => inputs[i].HalfWidth == 0 || signs[i] != 0 ? 1 : hasMiddle[i] ? 3 : 2;
    }

    /// <summary>
    /// The value of one input at which the result, with the worst case of all other inputs, just keeps a limit: which measured value would
    /// pass. By bracketing outward from the nominal value and bisection, to 1e-9 of that value. Null when the input cannot decide: the
    /// result keeps or breaks the limit for every value tried (from <paramref name="lowest"/> to a thousand times the nominal value).
    /// </summary>
    /// <param name="inputs">Name, nominal value and half-width (≥ 0) of each input.</param>
    /// <param name="f">The result; monotone (not strictly) in that input; not-a-number where it is not defined.</param>
    /// <param name="index">Which input.</param>
    /// <param name="limit">In the unit of f.</param>
    /// <param name="atLeast">True when the result must be at least the limit, false when at most.</param>
    /// <param name="lowest">The least value that the input can have: 0 for the lengths of things.</param>
    /// <param name="together">Where the worst case is that of all corners: see <see cref="OverCorners"/>.</param>
    public static PassingValue? SolveFor(IReadOnlyList<(string Name, double Nominal, double HalfWidth)> inputs, Func<double[], double> f,
        int index, double limit, bool atLeast, double lowest = 0, IReadOnlyList<(int Index, int Sign)>? together = null)
    {
        var start = inputs[index].Nominal;
        if (Bracket(Margin, start, Scale(inputs[index]), lowest) is not var (passing, failing))
            return null;
        var orMore = passing > failing;
        while (Math.Abs(passing - failing) > 1e-9 * Math.Max(Math.Abs(passing), Math.Abs(failing)) && Middle() is var middle
            && middle != passing && middle != failing)
        {
            if (Margin(middle) >= 0)
                passing = middle;
            else
                failing = middle;
        }
        return new(passing, orMore);

        double Middle() => passing + ((failing - passing) / 2);

        double Margin(double value)
        {
            var tried = inputs.ToArray();
            tried[index] = tried[index] with { Nominal = value, HalfWidth = 0 };
            var result = together is null ? Of(tried, f) : OverCorners(tried, together, f);
            return atLeast ? result.Low - limit : limit - result.High;
        }
    }

    private static double Contribution((string Name, double Nominal, double HalfWidth) input, int index, double[] values, double nominal,
        Func<double[], double> f)
    {
        if (input.HalfWidth == 0)
            return 0;
        values[index] = input.Nominal - input.HalfWidth;
        var down = Math.Abs(f(values) - nominal);
        values[index] = input.Nominal + input.HalfWidth;
        var up = Math.Abs(f(values) - nominal);
        values[index] = input.Nominal;
        return Math.Max(down, up);
    }

    private static double Scale((string Name, double Nominal, double HalfWidth) input) =>
        input.Nominal != 0 ? Math.Abs(input.Nominal) : input.HalfWidth != 0 ? input.HalfWidth : 1;

    // Steps outward on both sides, doubling, until one side of a step passes and the other does not.
    private static (double Passing, double Failing)? Bracket(Func<double, double> margin, double start, double scale, double lowest)
    {
        double down = Math.Max(start, lowest), up = down;
        double atDown = margin(down), atUp = atDown;
        for (var step = scale / 1024; step <= scale * 1024; step *= 2)
        {
            var above = up + step;
            var atAbove = margin(above);
            if (Crosses(atUp, atAbove))
                return atAbove >= 0 ? (above, up) : (up, above);
            (up, atUp) = (above, atAbove);

            var below = Math.Max(down - step, lowest);
            var atBelow = margin(below);
            if (Crosses(atDown, atBelow))
                return atBelow >= 0 ? (below, down) : (down, below);
            (down, atDown) = (below, atBelow);
        }
        return null;
    }

    private static bool Crosses(double a, double b) => !double.IsNaN(a) && !double.IsNaN(b) && (a >= 0) != (b >= 0);
}
