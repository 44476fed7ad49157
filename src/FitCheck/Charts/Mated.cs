using FitCheck.Builds;
using FitCheck.Catalog;
using FitCheck.Facts;
using FitCheck.Rules.Conditions;

namespace FitCheck.Charts;

/// <summary>A driver on a spacer, in a cup or straight on the panel, before any place is looked at: what it needs, worked out once and used at every place.</summary>
internal sealed class Mated(DriverSide driver, MountSide? mount)
{
    private readonly Dictionary<int, Brief> _depths = [];
    private readonly Dictionary<int, Brief> _holes = [];
    private Brief? _front;

    /// <summary>What the rules say that need no place and can fail; null until they are asked.</summary>
    public Partial? Said { get; set; }

    /// <summary>What the others of them say, which are asked only where none fails.</summary>
    public Partial? Rest { get; set; }

    /// <summary>The facts that rest on nothing else, in the order of their kind's list.</summary>
    public Brief[] Facts { get; set; } = [];

    /// <summary>How deep it reaches where a thing stands.</summary>
    public Brief DepthNeeded(PlaceSide place, Obstruction? thing, int where)
    {
        if (!_depths.TryGetValue(where, out var known))
            _depths[where] = known = Weighed(MountingFacts.DepthNeeded(At(place), where == 0 ? null : thing));
        return known;
    }

    public Brief FrontNeeded(PlaceSide place) => _front ??= Weighed(MountingFacts.FrontNeeded(At(place)));

    /// <summary>The hole that it needs in a panel of this thickness.</summary>
    public Brief HoleNeeded(PlaceSide place)
    {
        if (!_holes.TryGetValue(place.Panel, out var known))
            _holes[place.Panel] = known = Weighed(MountingFacts.HoleNeeded(At(place)));
        return known;
    }

    private static Brief Weighed((Stack Stack, Func<double[], double> Value) needed) =>
        needed.Stack.Weigh(needed.Value) is var (number, guess) ? Brief.Of(number, guess) : Brief.Unknown;

    /// <summary>The whole of it at a place, for the facts as `check` computes them.</summary>
    public PositionContext At(PlaceSide place) => new(null!, new Placed(place.Position, place.Position.At) { Driver = driver.Chosen, Adapter = mount?.Adapter, Cup = mount?.Cup }, null);
}
