using FitCheck.Builds.Readable;
using FitCheck.Catalog;
using FitCheck.Physics.Geometry;
using FitCheck.Physics.Quantities;

namespace FitCheck.Facts.Values;

/// <summary>
/// A stack-up of figures: gathers the inputs of a computation with their tolerances, and remembers which of them are missing or guessed, so
/// that the resulting fact can say what to measure and which reading would pass.
/// </summary>
internal sealed class Stack(Dimension dimension)
{
    // What a careful reading with a depth gauge is worth (common practice, no source).
    internal const double ReadingTolerance = 0.5e-3;

    // Of many figures with a tolerance these many are told to be read again: reading what weighs little settles little.
    private const int Reread = 2;

    private readonly List<(string Name, double Nominal, double HalfWidth)> _inputs = [];
    private readonly List<(string How, DatumKey? Key)> _asked = [];
    private readonly List<(int Index, bool Estimated)> _unsure = [];
    // Null where each figure by itself tells the worst case.
    private List<(int Index, int Sign)>? _together;
    // What is no length.
    private Dictionary<int, Dimension>? _others;
    private readonly List<(string What, Figure? Figure, Foundation.Problems.Location At)> _data = [];

    /// <summary>How many figures were added.</summary>
    public int Count => _inputs.Count;

    /// <summary>Adds a figure that must be known. Returns its place among the inputs.</summary>
    public int Need(string what, string how, Figure? figure, DatumKey? key = null)
    {
        _inputs.Add((what, figure?.Si ?? double.NaN, figure?.HalfWidth ?? 0));
        _asked.Add((how, key));
        if (figure is null || figure.IsEstimated)
            _unsure.Add((_inputs.Count - 1, figure is not null));
        if (figure is { Quantity.Dimension: var d } && d != Dimension.Metre)
            (_others ??= [])[_inputs.Count - 1] = d;
        if (figure is not null)
            _data.Add((what, figure, figure.At));
        return _inputs.Count - 1;
    }

    /// <summary>Adds what is no length and must be known: an angle, of which no reading that passes is told, or an area.</summary>
    public int Need(string what, string how, Figure? figure, Dimension of, DatumKey? key = null)
    {
        var at = Need(what, how, figure, key);
        (_others ??= [])[at] = of;
        return at;
    }

    /// <summary>Adds a figure that counts as a given value when it is left out.</summary>
    public int Optional(string what, string how, Figure? figure, double absent, DatumKey? key = null)
    {
        if (figure is not null)
            return Need(what, how, figure, key);
        _inputs.Add((what, absent, 0));
        _asked.Add((how, key));
        return _inputs.Count - 1;
    }

    /// <summary>
    /// Says that the function may jump, so that its worst case is looked for at all corners; of the figures of these places it is enough to
    /// try both ends together, each moved by its sign; of one of the sign 0 its middle is tried beside its own ends.
    /// </summary>
    public void MoveTogether(params ReadOnlySpan<(int Index, int Sign)> figures) => (_together ??= []).AddRange(figures);

    /// <summary>Adds a place where a datum stands that the function reads by itself.</summary>
    public void Cite(string what, Foundation.Problems.Location at) => _data.Add((what, null, at));

    /// <summary>The fact.</summary>
    public FactValue Of(Func<double[], double> f)
    {
        var missing = Missing();
        var data = _data.ConvertAll(d => d.Figure is null ? new Datum(d.What, d.At) : new Datum(d.What, d.Figure));
        var unsure = new List<Unsure>();
        foreach (var (index, estimated) in _unsure)
        {
            if (missing == 0 || !estimated)
                unsure.Add(Asked(index, estimated, missing > 1 ? null : PassingOf(index, f)));
        }
        if (missing > 0)
            return FactValue.Unknown(FactType.Number(dimension), [.. unsure]) with { Data = data };
        var number = _together is null ? StackUp.Of(_inputs, f) : StackUp.OverCorners(_inputs, _together, f);
        return double.IsNaN(number.Value)
            ? FactValue.Unknown(FactType.Number(dimension)) with { Data = data }
            : FactValue.Of(dimension, number) with
            {
                Unsure = unsure,
                Data = data,
                Rereadings = number.IsExact ? null : new(() => WeighMost(f))
            };
    }

    private Unsure[] WeighMost(Func<double[], double> f)
    {
        var nominal = Nominal();
        return [.. Enumerable.Range(0, _inputs.Count).Where(i => _inputs[i].HalfWidth > 0).OrderByDescending(Weight).Take(Reread)
            .Select(i => Asked(i, estimated: false, PassingOf(i, f)))];

        double Weight(int index)
        {
            var (down, up) = Ends(nominal, index);
            return Math.Abs(f(up) - f(down));
        }
    }

    private Unsure Asked(int index, bool estimated, Func<PassLimit, string?>? passing) =>
        new(_inputs[index].Name, _asked[index].How, estimated, passing) { Key = _asked[index].Key };

    private Func<PassLimit, string?>? PassingOf(int index, Func<double[], double> f) =>
        DimensionOf(index) == Dimension.Radian ? null : limit => Passing(index, f, limit);

    private Dimension DimensionOf(int index) =>
        _others is not null && _others.TryGetValue(index, out var other) ? other : Dimension.Metre;

    /// <summary>True when a figure is missing, so that there is no number.</summary>
    public bool IsMissing => Missing() > 0;

    /// <summary>True when a figure is missing or estimated.</summary>
    public bool IsGuess => _unsure.Count > 0;

    /// <summary>The inputs as they are written.</summary>
    public double[] Nominal() => [.. _inputs.Select(i => i.Nominal)];

    /// <summary>The inputs with those that move together at either end of their tolerances; null where these have none.</summary>
    public (double[] Down, double[] Up)? MovedTogether(double[] nominal)
    {
        if (_together?.Exists(t => _inputs[t.Index].HalfWidth > 0) != true)
            return null;
        var (down, up) = ((double[])nominal.Clone(), (double[])nominal.Clone());
        foreach (var (index, sign) in _together)
        {
            down[index] -= sign * _inputs[index].HalfWidth;
            up[index] += sign * _inputs[index].HalfWidth;
        }
        return (down, up);
    }

    private (double[] Down, double[] Up) Ends(double[] nominal, int index)
    {
        var (down, up) = ((double[])nominal.Clone(), (double[])nominal.Clone());
        (down[index], up[index]) = (nominal[index] - _inputs[index].HalfWidth, nominal[index] + _inputs[index].HalfWidth);
        return (down, up);
    }

    private int Missing()
    {
        var missing = 0;
        foreach (var (_, estimated) in _unsure)
            missing += estimated ? 0 : 1;
        return missing;
    }

    private string? Passing(int index, Func<double[], double> f, PassLimit limit)
    {
        var inputs = _inputs.ToList();
        var (start, of) = (double.IsNaN(inputs[index].Nominal) ? 0.05 : inputs[index].Nominal, DimensionOf(index));
        inputs[index] = inputs[index] with { Nominal = start, HalfWidth = 0 };
        if (inputs.Exists(i => double.IsNaN(i.Nominal))
            || StackUp.SolveFor(inputs, f, index, limit.Limit, limit.AtLeast, together: _together) is not { } passing)
            return null;
        // The reading itself may be off by its own tolerance.
        var off = of == Dimension.Metre ? ReadingTolerance : 0;
        var safe = passing with { Value = passing.Value + (passing.OrMore ? off : -off) };
        return $"{QuantityText.FormatLimit(safe.Value, of, safe.OrMore)} or {(safe.OrMore ? "more" : "less")}";
    }
}
