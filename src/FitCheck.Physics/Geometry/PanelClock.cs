namespace FitCheck.Physics.Geometry;

/// <summary>
/// The clock face on a panel, seen by someone who looks at it from inside the vehicle: twelve is up (forward where the panel lies flat),
/// three is to the right.
/// </summary>
internal sealed class PanelClock
{
    private readonly Direction _normal, _up, _right;

    /// <summary>For a panel that faces along a direction.</summary>
    public PanelClock(Direction normal)
    {
        _normal = normal.Normalized();
        var top = Math.Abs(_normal.Z) > 0.99 ? new Direction(1, 0, 0) : new Direction(0, 0, 1);
        _up = (top + (_normal * -_normal.Dot(top))).Normalized();
        // The onlooker looks against the normal; looking × up is to the right.
        _right = (-_normal).Cross(_up);
    }

    /// <summary>The direction in the panel's plane in which an hour lies, length 1.</summary>
    public Direction At(double hour)
    {
        var angle = hour * Math.PI / 6;
        return (_up * Math.Cos(angle)) + (_right * Math.Sin(angle));
    }

    /// <summary>The panel's normal, leant towards an hour by an angle in radians.</summary>
    public Direction Leaning(double angle, double hour) => (_normal * Math.Cos(angle)) + (At(hour) * Math.Sin(angle));

    /// <summary>
    /// The hour, 0 up to 12, towards which a direction points in the panel's plane; null when it points straight along the normal.
    /// </summary>
    public double? HourOf(Direction direction)
    {
        double up = direction.Dot(_up), right = direction.Dot(_right);
        if (Math.Sqrt((up * up) + (right * right)) < 1e-9 * direction.Length)
            return null;
        var hour = Math.Atan2(right, up) * 6 / Math.PI;
        return hour < 0 ? hour + 12 : hour;
    }
}
