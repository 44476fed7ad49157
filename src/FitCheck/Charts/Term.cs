using FitCheck.Catalog;
using FitCheck.Facts.Values;
using FitCheck.Physics.Quantities;

namespace FitCheck.Charts;

/// <summary>A figure as a stack-up takes it: a length with its half-width, both SI, or nothing; and whether it is a guess.</summary>
internal readonly record struct Term(double Si, double HalfWidth, bool IsGuess)
{
    public static Term Of(Figure? figure) => figure is null ? Missing : new(figure.Si, figure.HalfWidth, figure.IsEstimated);

    /// <summary>A figure that counts as a given value when it is left out.</summary>
    public static Term Of(Figure? figure, double absent) => figure is null ? Exactly(absent) : Of(figure);

    /// <summary>At the lower end of its tolerance.</summary>
    public Term Down => this with { Si = Si - HalfWidth };

    /// <summary>At the upper end.</summary>
    public Term Up => this with { Si = Si + HalfWidth };

    /// <summary>True when there is no such figure.</summary>
    public bool IsMissing => double.IsNaN(Si);

    public static readonly Term Missing = new(double.NaN, 0, IsGuess: false);

    /// <summary>Exactly this, as nobody guessed it.</summary>
    public static Term Exactly(double si) => new(si, 0, IsGuess: false);

    /// <summary>The difference of two figures times a factor (&gt; 0), with the sum of their half-widths as its worst case.</summary>
    public static Term Difference(in Term a, in Term b, double scale = 1) =>
        new((a.Si - b.Si) * scale, (a.HalfWidth + b.HalfWidth) * scale, a.IsGuess || b.IsGuess);

    /// <summary>As a fact.</summary>
    public Brief ToBrief() => IsMissing ? Brief.Unknown : Brief.Of(Uncertain.Within(Si, HalfWidth), IsGuess);
}

/// <summary>The smallest of several margins, gathered one by one, as the facts of mounting take it: a certain hit needs no other distance.</summary>
internal struct LeastMargin
{
    private bool _missing;
    private bool _certain;
    private bool _unsure;
    private Term _least = Term.Missing;

    public LeastMargin()
    {
    }

    public void Add(in Term margin)
    {
        if (margin.IsMissing)
        {
            _missing = true;
            return;
        }
        _unsure |= margin.IsGuess;
        _certain |= margin.Si + margin.HalfWidth < 0;
        if (_least.IsMissing || margin.Si - margin.HalfWidth < _least.Si - _least.HalfWidth)
            _least = margin;
    }

    public readonly Term Value => !_missing || _certain ? _least with { IsGuess = _unsure } : Term.Missing;
}
