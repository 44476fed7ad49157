using FitCheck.Catalog;
using FitCheck.Facts.Fitting;
using FitCheck.Facts.Values;
using FitCheck.Physics.Geometry;
using FitCheck.Physics.Quantities;

namespace FitCheck.Charts.BestMount;

/// <summary>A figure as a stack-up takes it: a length with its half-width, both SI, or nothing; and whether it is a guess.</summary>
internal readonly record struct LengthTerm(double Si, double HalfWidth, bool IsGuess) : ILength<LengthTerm>
{
    public static LengthTerm Of(Figure? figure) => figure is null ? Missing : new(figure.Si, figure.HalfWidth, figure.IsEstimated);

    /// <summary>A figure that counts as a given value when it is left out.</summary>
    public static LengthTerm Of(Figure? figure, double absent) => figure is null ? Exactly(absent) : Of(figure);

    /// <summary>At the lower end of its tolerance.</summary>
    public LengthTerm Down => this with { Si = Si - HalfWidth };

    /// <summary>At the upper end.</summary>
    public LengthTerm Up => this with { Si = Si + HalfWidth };

    /// <summary>True when there is no such figure.</summary>
    public bool IsMissing => double.IsNaN(Si);

    public static readonly LengthTerm Missing = new(double.NaN, 0, IsGuess: false);

    /// <summary>Exactly this, as nobody guessed it.</summary>
    public static LengthTerm Exactly(double si) => new(si, 0, IsGuess: false);

    /// <summary>The difference of two figures times a factor (&gt; 0), with the sum of their half-widths as its worst case.</summary>
    public static LengthTerm Difference(in LengthTerm a, in LengthTerm b, double scale = 1) =>
        new((a.Si - b.Si) * scale, (a.HalfWidth + b.HalfWidth) * scale, a.IsGuess || b.IsGuess);

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
        var worst = 0.0;
        for (var i = 0; i < inputs.Length; i++)
        {
            if (inputs[i].HalfWidth == 0)
                continue;
            values[i] = inputs[i].Down.Si;
            var down = Math.Abs(TFormula.Of(values) - nominal);
            values[i] = inputs[i].Up.Si;
            worst += Math.Max(down, Math.Abs(TFormula.Of(values) - nominal));
            values[i] = inputs[i].Si;
        }
        return new LengthTerm(nominal, worst, isGuess);
    }

    /// <summary>As a fact.</summary>
    public Brief ToBrief() => IsMissing ? Brief.Unknown : Brief.Of(Uncertain.Within(Si, HalfWidth), IsGuess ? Doubt.Guessed : Doubt.None);
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
        if (_least.Add(margin.Down.Si, margin.Up.Si))
            _term = margin;
    }

    public readonly LengthTerm Value => _least.At < 0 ? LengthTerm.Missing : _term with { IsGuess = _isGuess };
}
