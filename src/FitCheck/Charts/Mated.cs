using FitCheck.Catalog;
using FitCheck.Facts.Values;
using FitCheck.Physics.Geometry;

namespace FitCheck.Charts;

/// <summary>A driver on a spacer, in a cup or straight on the panel, before any place is looked at: what it needs, worked out once and used at every place.</summary>
internal sealed class Mated
{
    private readonly Mounted _on;
    private readonly Dictionary<int, Term> _depths = [];
    private readonly Dictionary<int, Term> _holes = [];
    private DriverSide _driver = null!;
    private Term? _front;
    private Partial _said;

    /// <summary>Made for one spacer, one cup or the bare panel; the driver is set by <see cref="Turn"/>.</summary>
    public Mated(MountSide? mount)
    {
        var adapter = mount?.Adapter;
        _on = new Mounted(adapter is null ? Term.Exactly(0) : Term.Of(adapter.Thickness), Term.Of(adapter?.Tilt, 0));
    }

    /// <summary>What the rules say that need no place and can fail.</summary>
    public ref Partial Said => ref _said;

    /// <summary>What the first look takes off what a place has.</summary>
    public Term Needed { get; set; }

    /// <summary>What the others of them say, which are asked only where none fails.</summary>
    public Partial? Rest { get; set; }

    /// <summary>The facts that rest on nothing else, in the order of their kind's list; meant only where it has them.</summary>
    public Brief[] Facts { get; set; } = [];

    public bool HasFacts { get; set; }

    /// <summary>Goes on to another driver.</summary>
    public Mated Turn(DriverSide driver)
    {
        _driver = driver;
        (Rest, HasFacts, _front) = (null, false, null);
        if (_depths.Count > 0)
            _depths.Clear();
        if (_holes.Count > 0)
            _holes.Clear();
        return this;
    }

    /// <summary>How deep it reaches where a thing stands.</summary>
    public Term DepthNeeded(in Thing thing)
    {
        if (!_depths.TryGetValue(thing.Where, out var known))
            _depths[thing.Where] = known = _driver.Body.Needed(_on, thing.FromRadius, thing.Reach);
        return known;
    }

    /// <summary>How far it stands before the mounting plane, its travel included.</summary>
    public Term FrontNeeded() => _front ??= Front([_on.Thickness, _driver.FlangeThickness, _driver.FrontHeight, _driver.Flange, _driver.Travel, _on.Tilt]);

    /// <summary>The hole that it needs in a panel.</summary>
    public Term HoleNeeded(PlaceSide place)
    {
        if (!_holes.TryGetValue(place.Panel, out var known))
            _holes[place.Panel] = known = _driver.Body.Needed(_on, place.PanelThickness, (body, on, panel) => 2 * TiltedBody.HoleRadiusNeeded(body, on.Tilt.Si, on.Thickness.Si, panel));
        return known;
    }

    private static Term Front(ReadOnlySpan<Term> terms)
    {
        Span<double> values = stackalloc double[terms.Length];
        var guess = false;
        for (var i = 0; i < terms.Length; i++)
        {
            if (terms[i].IsMissing)
                return Term.Missing;
            values[i] = terms[i].Si;
            guess |= terms[i].IsGuess;
        }
        var nominal = Reach(values);
        var worst = 0.0;
        for (var i = 0; i < terms.Length; i++)
        {
            if (terms[i].HalfWidth == 0)
                continue;
            values[i] = terms[i].Down.Si;
            var down = Math.Abs(Reach(values) - nominal);
            values[i] = terms[i].Up.Si;
            worst += Math.Max(down, Math.Abs(Reach(values) - nominal));
            values[i] = terms[i].Si;
        }
        return new Term(nominal, worst, guess);

        static double Reach(ReadOnlySpan<double> v) => TiltedBody.FrontReach(v[0], v[1], v[2], v[3] / 2, v[4], v[5]);
    }
}
