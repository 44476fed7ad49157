namespace FitCheck.Physics.Geometry;

/// <summary>
/// Screw holes on one circle: their angles in radians clockwise from the top, seen from the listener; the circle's radius and the length of
/// the radial slot that each hole is drawn out to (0: round), both in metres. Immutable.
/// </summary>
public sealed class BoltPattern
{
    private const double Turn = 2 * Math.PI;

    /// <param name="radius">Of the bolt circle, metres, &gt; 0.</param>
    /// <param name="slot">Radial length over which a screw may stand, metres, ≥ 0, half of it inward and half outward.</param>
    /// <param name="angles">Radians clockwise from the top; any number of turns.</param>
    public BoltPattern(double radius, double slot, IReadOnlyList<double> angles)
    {
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(radius);
        ArgumentOutOfRangeException.ThrowIfNegative(slot);
        var within = new double[angles.Count];
        for (var i = 0; i < within.Length; i++)
            within[i] = angles[i] - (Math.Floor(angles[i] / Turn) * Turn);
        (Radius, Slot, Within) = (radius, slot, within);
    }

    /// <summary>Of the bolt circle, in metres.</summary>
    public double Radius { get; }

    /// <summary>Radial length of the slots, in metres.</summary>
    public double Slot { get; }

    /// <summary>In radians from 0 to a full turn, in the order given.</summary>
    public IReadOnlyList<double> Angles => Within;

    /// <summary>The angles as an array, in radians, for computations that run through them often.</summary>
    internal double[] Within { get; }

    /// <summary>This pattern turned clockwise by an angle in radians.</summary>
    public BoltPattern Rotated(double angle)
    {
        var turned = new double[Angles.Count];
        for (var i = 0; i < turned.Length; i++)
            turned[i] = Angles[i] + angle;
        return new(Radius, Slot, turned);
    }

    /// <summary>
    /// The least distance in metres between the lines on which screws may stand in two slots, one of this pattern and one of another, when
    /// their angles differ by δ (radians). Two points at r₁ and r₂ are r₁² + r₂² − 2·r₁·r₂·cos δ apart, squared: this is convex, and zero
    /// only at the centre, so that within the two slots the least stands where one of them ends.
    /// </summary>
    public double DistanceTo(BoltPattern other, double angle)
    {
        var cos = Math.Cos(angle);
        var (inner, outer) = (Math.Max(0, Radius - (Slot / 2)), Radius + (Slot / 2));
        var (otherInner, otherOuter) = (Math.Max(0, other.Radius - (other.Slot / 2)), other.Radius + (other.Slot / 2));
        var least = Math.Min(From(inner, otherInner, otherOuter), From(outer, otherInner, otherOuter));
        return Math.Min(least, Math.Min(From(otherInner, inner, outer), From(otherOuter, inner, outer)));

        double From(double r, double low, double high)
        {
            var s = Math.Clamp(r * cos, low, high);
            return Math.Sqrt(Math.Max(0, (r * r) + (s * s) - (2 * r * s * cos)));
        }
    }

    /// <summary>
    /// The angle in radians by which two holes may differ and still take one screw; null when their circles are too far apart.
    /// </summary>
    /// <param name="other">The pattern on the other face.</param>
    /// <param name="clearance">How far apart the two holes' lines may be, metres, ≥ 0: what screws have to spare in their holes.</param>
    public double? Tolerance(BoltPattern other, double clearance)
    {
        if (DistanceTo(other, 0) > clearance)
            return null;
        var (inner, outer) = (Math.Max(0, Radius - (Slot / 2)), Radius + (Slot / 2));
        var (otherInner, otherOuter) = (Math.Max(0, other.Radius - (other.Slot / 2)), other.Radius + (other.Slot / 2));
        var most = Math.Max(Turning(inner, otherInner, otherOuter, clearance), Turning(outer, otherInner, otherOuter, clearance));
        return Math.Max(most, Math.Max(Turning(otherInner, inner, outer, clearance), Turning(otherOuter, inner, outer, clearance)));
    }

    /// <summary>
    /// The angle up to a right one by which a point at a radius may stand aside of a slot: points at r and s are r² + s² − 2·r·s·cos δ
    /// apart, squared, so that sin²(δ/2) = (c² − (r − s)²)/(4·r·s) where they are c apart; δ is largest for s² = r² − c², or for the end of
    /// the slot that is nearest to it.
    /// </summary>
    private static double Turning(double r, double low, double high, double clearance)
    {
        var s = Math.Clamp(Math.Sqrt(Math.Max(0, (r * r) - (clearance * clearance))), low, high);
        if (r * s == 0)
            return Math.Max(r, s) <= clearance ? Math.PI / 2 : 0;
        var square = ((clearance * clearance) - ((r - s) * (r - s))) / (4 * r * s);
        return square <= 0 ? 0 : square >= 0.5 ? Math.PI / 2 : 2 * Math.Asin(Math.Sqrt(square));
    }

    /// <summary>
    /// The clockwise rotation of <paramref name="turned"/> against this pattern at which most of this pattern's holes meet one of its. Hole
    /// i meets hole j over the rotations within the tolerance of aᵢ − bⱼ; the number of holes that meet changes only at the ends of these
    /// stretches, so that trying every end finds the most. Among equals: the one whose worst hole is least off, then the one that is turned
    /// least.
    /// </summary>
    /// <param name="turned">The pattern that may be turned.</param>
    /// <param name="clearance">In metres, see <see cref="Tolerance"/>.</param>
    /// <param name="only">The only rotations allowed, radians, each good to the tolerance of the holes; null when the part may be turned
    /// freely.</param>
    public BoltMatch Align(BoltPattern turned, double clearance, IReadOnlyList<double>? only = null)
    {
        if (Tolerance(turned, clearance) is not { } tolerance)
            return new BoltMatch(only is { Count: > 0 } ? only[0] : 0, new bool[Angles.Count], new bool[turned.Angles.Count]);
        return new BoltTurns(this, turned, tolerance, only).Best();
    }

    /// <summary>
    /// How many holes meet where most do: as many as <see cref="Align"/> finds, without looking for the best of the turns at which they do.
    /// </summary>
    /// <inheritdoc cref="Align"/>
    public int MostMeeting(BoltPattern turned, double clearance, IReadOnlyList<double>? only = null) =>
        Tolerance(turned, clearance) is { } tolerance ? new BoltTurns(this, turned, tolerance, only).Most() : 0;

    // From minus half a turn to half a turn.
    internal static double Signed(double angle) => angle - (Math.Round(angle / Turn) * Turn);
}

/// <summary>How two bolt patterns lie on each other.</summary>
/// <param name="Rotation">Clockwise turn of the second pattern, radians.</param>
/// <param name="Meets">For each hole of the first pattern, whether it meets one of the second.</param>
/// <param name="Used">For each hole of the second pattern, whether a hole of the first meets it.</param>
public sealed record BoltMatch(double Rotation, IReadOnlyList<bool> Meets, IReadOnlyList<bool> Used)
{
    /// <summary>How many holes meet.</summary>
    public int Meeting { get; } = Meets.Count(m => m);
}
