using FitCheck.Catalog;
using FitCheck.Facts;
using FitCheck.Physics.Quantities;
using FitCheck.Rules.Conditions;

namespace FitCheck.Charts;

/// <summary>A figure as a stack-up takes it: a length with its half-width, both SI, or nothing; and whether it is a guess.</summary>
internal readonly record struct Term(double Si, double HalfWidth, bool IsGuess)
{
    public static Term Of(Figure? figure) => figure is null ? new(double.NaN, 0, IsGuess: false) : new(figure.Si, figure.HalfWidth, figure.IsEstimated);

    /// <summary>A figure that counts as a given value when it is left out.</summary>
    public static Term Of(Figure? figure, double absent) => figure is null ? new(absent, 0, IsGuess: false) : Of(figure);

    /// <summary>At the lower end of its tolerance.</summary>
    public Term Down => this with { Si = Si - HalfWidth };

    /// <summary>At the upper end.</summary>
    public Term Up => this with { Si = Si + HalfWidth };

    /// <summary>True when there is no such figure.</summary>
    public bool IsMissing => double.IsNaN(Si);

    /// <summary>The difference of two figures times a factor, with the sum of their half-widths as its worst case.</summary>
    public static Brief Difference(in Term a, in Term b, double scale = 1) =>
        Brief.Of(Uncertain.Within((a.Si - b.Si) * scale, (a.HalfWidth + b.HalfWidth) * scale), a.IsGuess || b.IsGuess);

    /// <summary>What a figure has to spare over what is needed.</summary>
    public static Brief Spare(in Term there, in Brief needed) => needed.IsKnown
        ? Brief.Of(Uncertain.Within(there.Si - needed.Number.Value, there.HalfWidth + (needed.Number.High - needed.Number.Value)), there.IsGuess || needed.IsUnsure)
        : Brief.Unknown;
}

/// <summary>The smallest of several margins, gathered one by one, as the facts of mounting take it: a certain hit needs no other distance.</summary>
internal struct LeastMargin
{
    private bool _missing;
    private bool _certain;
    private bool _unsure;
    private Uncertain? _least;

    public void Add(in Brief margin)
    {
        if (!margin.IsKnown)
        {
            _missing = true;
            return;
        }
        _unsure |= margin.IsUnsure;
        _certain |= margin.Number.High < 0;
        if (_least is not { } least || margin.Number.Low < least.Low)
            _least = margin.Number;
    }

    public readonly Brief Value => _least is { } least && (!_missing || _certain) ? Brief.Of(least, _unsure) : Brief.Unknown;
}
