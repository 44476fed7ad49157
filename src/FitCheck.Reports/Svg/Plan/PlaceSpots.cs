namespace FitCheck.Reports.Svg.Plan;

/// <summary>Metres forward and to the left.</summary>
internal readonly record struct Floor(double Forward, double Left);

/// <summary>
/// Where each position lies: where its location puts it, else where such a place usually is on its side. A drawing needs somewhere to put
/// a mark; nothing is computed from these.
/// </summary>
internal static class PlaceSpots
{
    // Further out than any vehicle is long or wide; a slip of the pen must not make the drawing a mile long.
    private const double MostForward = 3, MostBehind = 6, MostAside = 1.5;

    public static IReadOnlyList<Floor> Of(IReadOnlyList<PlanPlace> places)
    {
        var spots = new Floor[places.Count];
        for (var i = 0; i < places.Count; i++)
        {
            var nth = places.Take(i).Count(p => p.Side == places[i].Side && p.Place == places[i].Place);
            spots[i] = Recorded(places[i]) ?? Usual(places[i], nth);
        }
        return spots;
    }

    private static Floor? Recorded(PlanPlace place) =>
        place.Location is [var forward, var left, ..] && double.IsFinite(forward) && double.IsFinite(left)
            ? new(Math.Clamp(forward, -MostBehind, MostForward), Math.Clamp(left, -MostAside, MostAside))
            : null;

    // The second door of a side is the rear one, and so on.
    private static Floor Usual(PlanPlace place, int nth)
    {
        var (first, step, aside) = place.Place switch
        {
            "door" => (0.65, 0.95, 0.74),
            "dash" => (0.85, 0.1, 0.62),
            "sail" => (0.75, 0.1, 0.66),
            "pillar" => (0.71, 0.8, 0.64),
            "rear-panel" => (-0.7, 0.4, 0.66),
            "shelf" => (-1.15, 0.15, 0.4),
            "cargo" => (-1.5, 0.2, 0.5),
            _ => (0.2, 0.4, 0.7),
        };
        return new(Math.Max(first - (step * nth), -MostBehind), place.Side switch { "left" => aside, "right" => -aside, _ => 0 });
    }
}
