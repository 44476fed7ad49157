using FitCheck.Catalog;
using FitCheck.Charts.Pairs;
using FitCheck.Facts.Fitting;
using FitCheck.Facts.Values;

namespace FitCheck.Charts.BestMount;

/// <summary>
/// A driver on a spacer, in a cup or straight on the panel, before any place is looked at: what it needs, worked out once and used at
/// every place.
/// </summary>
internal sealed class DriverOnMount
{
    private readonly Mounted _on;
    private readonly Dictionary<int, LengthTerm> _depths = [];
    private readonly Dictionary<int, LengthTerm> _holes = [];
    private ChartedDriver _driver = null!;
    private LengthTerm? _front;
    private PartialVerdict _said;

    /// <summary>Made for one spacer, one cup or the bare panel; the driver is set by <see cref="Turn"/>.</summary>
    public DriverOnMount(ChartedMount? mount)
    {
        _on = mount?.Adapter is null ? new Mounted(LengthTerm.Exactly(0), LengthTerm.Exactly(0)) : new Mounted(mount.Thickness, mount.Tilt);
    }

    /// <summary>What the rules say that need no place and can fail.</summary>
    public ref PartialVerdict Said => ref _said;

    /// <summary>What the first look takes off what a place has.</summary>
    public LengthTerm Needed { get; set; }

    /// <summary>What the others of them say, which are asked only where none fails.</summary>
    public PartialVerdict? Rest { get; set; }

    /// <summary>The facts that rest on nothing else, in the order of their kind's list; meant only where it has them.</summary>
    public Brief[] Facts { get; set; } = [];

    public bool HasFacts { get; set; }

    /// <summary>True where this driver has been asked about already.</summary>
    public bool IsOf(ChartedDriver driver) => ReferenceEquals(_driver, driver);

    /// <summary>Goes on to another driver.</summary>
    public DriverOnMount Turn(ChartedDriver driver)
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
    public LengthTerm DepthNeeded(in ObstacleBehind thing)
    {
        if (!_depths.TryGetValue(thing.Where, out var known))
            _depths[thing.Where] = known = _driver.Body.Needed(_on, thing.FromRadius, thing.Reach);
        return known;
    }

    /// <summary>How far it reaches out where it is deeper than a thing begins.</summary>
    public LengthTerm ReachBehind(in ObstacleBehind thing) => _driver.Body.Needed(_on, thing.Depth, BodyFormulas.ReachBehind);

    /// <summary>How far it stands before the mounting plane, its travel included.</summary>
    public LengthTerm FrontNeeded() =>
        _front ??= MountingFormulas.FrontNeeded(_on.Thickness, _on.Tilt, _driver.FlangeThickness, _driver.FrontHeight, _driver.Flange,
            _driver.Travel);

    /// <summary>The hole that its body needs in a panel.</summary>
    public LengthTerm HoleOfBody(ChartedPlace place)
    {
        if (!_holes.TryGetValue(place.Panel, out var known))
            _holes[place.Panel] = known = _driver.Body.Needed(_on, place.PanelThickness, BodyFormulas.HoleNeeded);
        return known;
    }

    /// <summary>The same across the short axis of an oval body.</summary>
    public LengthTerm HoleOfBodyMinor(ChartedPlace place) =>
        _driver.BodyMinor.Needed(_on, place.PanelThickness, BodyFormulas.HoleNeeded);
}
