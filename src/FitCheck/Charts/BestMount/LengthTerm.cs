using FitCheck.Catalog;
using FitCheck.Facts.Fitting;
using FitCheck.Facts.Values;
using FitCheck.Physics.Geometry;
using FitCheck.Physics.Quantities;

namespace FitCheck.Charts.BestMount;

/// <summary>A figure as a stack-up takes it: a length with its worst case, SI, or nothing; and whether it is a guess.</summary>
internal readonly record struct LengthTerm(double Si, double Low, double High, bool IsGuess) : ILength<LengthTerm>
{
    public LengthTerm(double si, double halfWidth, bool isGuess) : this(si, si - halfWidth, si + halfWidth, isGuess)
    {
    }

    public static LengthTerm Of(Figure? figure) => figure is null ? Missing : new(figure.Si, figure.HalfWidth, figure.IsEstimated);

    /// <summary>A figure that counts as a given value when it is left out.</summary>
    public static LengthTerm Of(Figure? figure, double absent) => figure is null ? Exactly(absent) : Of(figure);

    /// <summary>True when nothing is open about it.</summary>
    public bool IsExact => Low == High;

    /// <summary>True when there is no such figure.</summary>
    public bool IsMissing => double.IsNaN(Si);

    public static readonly LengthTerm Missing = new(double.NaN, 0, isGuess: false);

    /// <summary>Exactly this, as nobody guessed it.</summary>
    public static LengthTerm Exactly(double si) => new(si, 0, isGuess: false);

    /// <summary>The difference of two figures times a factor (&gt; 0), with the sum of their tolerances as its worst case.</summary>
    public static LengthTerm Difference(in LengthTerm a, in LengthTerm b, double scale = 1) =>
        new((a.Si - b.Si) * scale, (a.Low - b.High) * scale, (a.High - b.Low) * scale, a.IsGuess || b.IsGuess);

    /// <summary>As <see cref="FitCheck.Physics.Geometry.StackUp"/> would have it; unknown when an input is.</summary>
    public static LengthTerm Of<TFormula>(ReadOnlySpan<LengthTerm> inputs) where TFormula : struct, ILengthFormula
    {
        Span<double> values = stackalloc double[inputs.Length];
        var isGuess = false;
        for (var i = 0; i < inputs.Length; i++)
        {
            if (inputs[i].IsMissing)
                return Missing;
            values[i] = inputs[i].Si;
            isGuess |= inputs[i].IsGuess;
        }
        var nominal = TFormula.Of(values);
        var (low, high) = (nominal, nominal);
        foreach (var up in (ReadOnlySpan<bool>)[false, true])
        {
            for (var i = 0; i < inputs.Length; i++)
                values[i] = !TFormula.Rises(i) ? inputs[i].Si : up ? inputs[i].High : inputs[i].Low;
            Corners<TFormula>(inputs, values, 0, ref low, ref high);
        }
        return new LengthTerm(nominal, low, high, isGuess);
    }

    private static void Corners<TFormula>(ReadOnlySpan<LengthTerm> inputs, Span<double> values, int from, ref double low, ref double high)
        where TFormula : struct, ILengthFormula
    {
        while (from < inputs.Length && (TFormula.Rises(from) || inputs[from].IsExact))
            from++;
        if (from == inputs.Length)
        {
            var result = TFormula.Of(values);
            (low, high) = (Math.Min(low, result), Math.Max(high, result));
            return;
        }
        values[from] = inputs[from].Low;
        Corners<TFormula>(inputs, values, from + 1, ref low, ref high);
        values[from] = inputs[from].High;
        Corners<TFormula>(inputs, values, from + 1, ref low, ref high);
        values[from] = inputs[from].Si;
    }

    /// <summary>As a fact.</summary>
    public Brief ToBrief() => IsMissing ? Brief.Unknown
        : Brief.Of(new Uncertain(Si, Low, High, Math.Max(High - Si, Si - Low)), IsGuess ? Doubt.Guessed : Doubt.None);
}

/// <summary>The smallest of several margins, gathered one by one.</summary>
internal struct LeastLengthTerm : IMargins<LengthTerm>
{
    private LeastMargin _least = new();
    private LengthTerm _term = LengthTerm.Missing;
    private bool _isGuess;

    public LeastLengthTerm()
    {
    }

    public void Add(in LengthTerm margin)
    {
        if (margin.IsMissing)
        {
            _least.AddUnknown();
            return;
        }
        _isGuess |= margin.IsGuess;
        if (_least.Add(margin.Low, margin.High))
            _term = margin;
    }

    public readonly LengthTerm Value => _least.At < 0 ? LengthTerm.Missing : _term with { IsGuess = _isGuess };
}
