using FitCheck.Builds.Readable;
using FitCheck.Catalog;
using FitCheck.Facts.Values;
using FitCheck.Physics.Geometry;
using FitCheck.Physics.Quantities;

namespace FitCheck.Facts.Fitting;

/// <summary>A length with all its evidence: it adds its figures to a stack-up, in order, and tells what is made of them.</summary>
internal sealed class StackedLength : ILength<StackedLength>
{
    private readonly Func<Stack, Func<double[], double>> _into;

    private StackedLength(Func<Stack, Func<double[], double>> into, bool isMissing = false) => (_into, IsMissing) = (into, isMissing);

    public bool IsMissing { get; }

    /// <summary>The figure that it is, if it is no more than one.</summary>
    public Figure? Figure { get; private init; }

    /// <summary>A figure that must be known.</summary>
    public static StackedLength Need(string what, string how, Figure? figure, DatumKey? key = null) => new(stack =>
    {
        var at = stack.Need(what, how, figure, key);
        return v => v[at];
    }, isMissing: figure is null)
    { Figure = figure };

    /// <summary>An angle that must be known.</summary>
    public static StackedLength Angle(string what, string how, Figure? figure, DatumKey? key = null) => new(stack =>
    {
        var at = stack.Need(what, how, figure, Dimension.Radian, key);
        return v => v[at];
    }, isMissing: figure is null)
    { Figure = figure };

    /// <summary>A figure that counts as a given value when it is left out.</summary>
    public static StackedLength Optional(string what, string how, Figure? figure, double absent, DatumKey? key = null) => new(stack =>
    {
        var at = stack.Optional(what, how, figure, absent, key);
        return v => v[at];
    })
    { Figure = figure };

    /// <inheritdoc/>
    public static StackedLength Difference(in StackedLength there, in StackedLength needed, double scale = 1)
    {
        var (one, other) = (there, needed);
        return new(stack =>
        {
            var (a, b) = (one._into(stack), other._into(stack));
            return v => (a(v) - b(v)) * scale;
        });
    }

    /// <inheritdoc/>
    public static StackedLength Of<TFormula>(ReadOnlySpan<StackedLength> inputs) where TFormula : struct, ILengthFormula
    {
        var all = inputs.ToArray();
        return new(stack =>
        {
            var each = new Func<double[], double>[all.Length];
            stack.MoveTogether();
            for (var i = 0; i < each.Length; i++)
            {
                var at = stack.Count;
                each[i] = all[i]._into(stack);
                if (TFormula.Rises(i) && stack.Count == at + 1)
                    stack.MoveTogether((at, 1));
            }
            return v => TFormula.Of(Array.ConvertAll(each, e => e(v)));
        });
    }

    /// <summary>A length that the driver's body needs on what carries it.</summary>
    /// <param name="body">Adds the body's figures; see <see cref="BodyFacts.Inputs"/>.</param>
    /// <param name="thickness">Of the spacer.</param>
    /// <param name="tilt">Of the spacer.</param>
    /// <param name="third">What the formula asks for beside.</param>
    /// <param name="formula">From body, tilt, thickness and the third figure.</param>
    public static StackedLength OfBody(Func<Stack, Func<double[], BodyProfile>> body, StackedLength thickness, StackedLength tilt,
        StackedLength third, BodyFormula formula) =>
        new(stack =>
    {
        var profile = body(stack);
        var (t, angle, beside) = (WithMiddle(thickness, stack), WithMiddle(tilt, stack), third._into(stack));
        return v => formula(profile(v), angle(v), t(v), beside(v));
    });

    // A body may need more at a middle thickness or tilt than at either end.
    private static Func<double[], double> WithMiddle(StackedLength length, Stack stack)
    {
        var at = stack.Count;
        var read = length._into(stack);
        if (stack.Count == at + 1)
            stack.MoveTogether((at, 0));
        return read;
    }

    /// <summary>As a fact.</summary>
    public FactValue ToFact()
    {
        var stack = new Stack(Dimension.Metre);
        return stack.Of(_into(stack));
    }
}

/// <summary>Margins with all their evidence.</summary>
internal readonly struct StackedMargins : IMargins<StackedLength>
{
    private readonly List<FactValue> _margins = [];

    public StackedMargins()
    {
    }

    public void Add(in StackedLength margin) => _margins.Add(margin.ToFact());

    /// <summary>The smallest, with what is unsure about any; null when there is none at all.</summary>
    public FactValue? ToFact()
    {
        if (_margins.Count == 0)
            return null;
        var least = new LeastMargin();
        foreach (var margin in _margins)
        {
            if (margin.Number is { } number)
                least.Add(number.Low, number.High);
            else
                least.AddUnknown();
        }
        var unsure = _margins.SelectMany(m => m.Unsure).DistinctBy(u => u.What).ToList();
        if (least.At < 0)
            return FactValue.Unknown(_margins[0].Type, [.. unsure.Where(u => !u.Estimated)]) with
            {
                Data = [.. _margins.SelectMany(m =>
                m.Data).Distinct()]
            };
        return _margins[least.At] with { Unsure = [.. unsure.Where(u => u.Estimated)] };
    }
}
