using FitCheck.Catalog;
using FitCheck.Physics.Geometry;

namespace FitCheck.Facts.Sound;

/// <summary>
/// Where a driver stands and looks, in the vehicle's frame with the listener between the front seats' heads at its origin; lengths in
/// metres.
/// </summary>
/// <param name="Location">Of the driver's centre.</param>
/// <param name="Axis">Along which it looks, length 1; null where direction does not matter, as for a box in the cargo space.</param>
/// <param name="Clock">The clock face of the panel it is mounted on.</param>
/// <param name="Hour">The hour towards which a tilted spacer leans it, and towards which a tweeter is turned.</param>
internal sealed record Aim(Direction Location, Direction? Axis, PanelClock? Clock, double? Hour)
{
    public double Distance => Location.Length;

    /// <summary>Between the axis and the line to the listener, radians.</summary>
    public double? Angle => Axis?.AngleTo(-Location);

    /// <summary>Null when the vehicle does not record where the position is.</summary>
    public static Aim? Of(Position position, double tilt)
    {
        if (position.Location is not [var x, var y, var z])
            return null;
        var location = new Direction(x.Si, y.Si, z.Si);
        if (location.Length == 0 || Facing(position) is not { } normal)
            return location.Length == 0 ? null : new Aim(location, null, null, null);
        var clock = new PanelClock(normal);
        var hour = position.Mounting.AimClock ?? clock.HourOf(-location);
        return new Aim(location, tilt > 0 && hour is { } towards ? clock.Leaning(tilt, towards) : normal.Normalized(), clock, hour);
    }

    public static bool IsEstimated(Position position) => position.Location.Any(f => f.IsEstimated);

    // Panels of vehicles: doors, side panels, mirror sails and pillars face across the cabin, the top of a dash up and back, a shelf up.
    // Bass from the cargo space has no direction (common practice, no source).
    private static Direction? Facing(Position position)
    {
        var across = new Direction(0, position.Side switch { "left" => -1, "right" => 1, _ => 0 }, 0);
        return position.Place switch
        {
            "dash" => new Direction(-1, 0, 1),
            "shelf" => new Direction(0, 0, 1),
            _ when Fitting.PlaceFacts.Faces(position) != true => null,
            _ when across.Length == 0 => null,
            _ => across,
        };
    }
}
