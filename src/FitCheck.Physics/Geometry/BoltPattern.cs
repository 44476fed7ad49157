namespace FitCheck.Physics.Geometry;

/// <summary>
/// Screw holes on one circle: their angles in radians clockwise from the top, seen from the listener; the circle's radius and the length of the radial
/// slot that each hole is drawn out to (0: round), both in metres. Immutable.
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
            within[i] = Within(angles[i]);
        (Radius, Slot, Angles) = (radius, slot, within);
    }

    /// <summary>Of the bolt circle, in metres.</summary>
    public double Radius { get; }

    /// <summary>Radial length of the slots, in metres.</summary>
    public double Slot { get; }

    /// <summary>In radians from 0 to a full turn, in the order given.</summary>
    public IReadOnlyList<double> Angles { get; }

    /// <summary>The same pattern turned clockwise by an angle in radians.</summary>
    public BoltPattern Rotated(double angle)
    {
        var turned = new double[Angles.Count];
        for (var i = 0; i < turned.Length; i++)
            turned[i] = Angles[i] + angle;
        return new(Radius, Slot, turned);
    }

    /// <summary>The pattern on the other side of a vehicle: what stood at an angle stands at that angle to the left of the top.</summary>
    public BoltPattern Mirrored()
    {
        var mirrored = new double[Angles.Count];
        for (var i = 0; i < mirrored.Length; i++)
            mirrored[i] = -Angles[i];
        return new(Radius, Slot, mirrored);
    }

    /// <summary>
    /// The least distance in metres between the lines on which screws may stand in two slots, one of this pattern and one of another, when their angles
    /// differ by δ (radians). Two points at r₁ and r₂ are r₁² + r₂² − 2·r₁·r₂·cos δ apart, squared: this is convex, and zero only at the centre, so that
    /// within the two slots the least stands where one of them ends.
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

    /// <summary>The angle in radians by which two holes may differ and still take one screw; null when their circles are too far apart.</summary>
    /// <param name="other">The pattern on the other face.</param>
    /// <param name="clearance">How far apart the two holes' lines may be, metres, ≥ 0: what screws have to spare in their holes.</param>
    public double? Tolerance(BoltPattern other, double clearance)
    {
        if (DistanceTo(other, 0) > clearance)
            return null;
        // The distance grows with the angle up to a right angle.
        double keeps = 0, breaks = Math.PI / 2;
        if (DistanceTo(other, breaks) <= clearance)
            return breaks;
        for (var i = 0; i < 60; i++)
        {
            var middle = (keeps + breaks) / 2;
            if (DistanceTo(other, middle) <= clearance)
                keeps = middle;
            else
                breaks = middle;
        }
        return keeps;
    }

    /// <summary>
    /// The clockwise rotation of <paramref name="turned"/> against this pattern at which most of this pattern's holes meet one of its. Hole i meets hole j
    /// over the rotations within the tolerance of aᵢ − bⱼ; the number of holes that meet changes only at the ends of these stretches, so that trying
    /// every end finds the most. Among equals: the one whose worst hole is least off, then the one that is turned least.
    /// </summary>
    /// <param name="turned">The pattern that may be turned.</param>
    /// <param name="clearance">In metres, see <see cref="Tolerance"/>.</param>
    /// <param name="only">The only rotations allowed, radians, each good to the tolerance of the holes; null when the part may be turned freely.</param>
    public BoltMatch Align(BoltPattern turned, double clearance, IReadOnlyList<double>? only = null)
    {
        if (Tolerance(turned, clearance) is not { } tolerance)
            return new BoltMatch(only is { Count: > 0 } ? only[0] : 0, new bool[Angles.Count], new bool[turned.Angles.Count]);
        var best = Best(turned, tolerance, only, null);
        return best ?? new BoltMatch(0, new bool[Angles.Count], new bool[turned.Angles.Count]);
    }

    private BoltMatch? Best(BoltPattern turned, double tolerance, IReadOnlyList<double>? only, BoltMatch? best)
    {
        var worstOfBest = double.PositiveInfinity;
        foreach (var a in Angles)
        {
            foreach (var b in turned.Angles)
            {
                foreach (var end in (ReadOnlySpan<double>)[a - b - tolerance, a - b, a - b + tolerance])
                {
                    if (only is null || Near(end, only, tolerance))
                        Try(end);
                }
            }
        }
        foreach (var rotation in only ?? [0])
            Try(rotation);
        return best;

        void Try(double rotation)
        {
            var match = At(turned, rotation, tolerance);
            // In the middle between the extreme offsets the worst hole is least off, and every hole still meets, unless holes lie closer than the tolerance.
            var (low, high) = Offsets(turned, match);
            var centred = At(turned, rotation + ((low + high) / 2), tolerance);
            if (centred.Meeting >= match.Meeting && (only is null || Near(centred.Rotation, only, tolerance)))
                match = centred;
            var (after, until) = Offsets(turned, match);
            var worst = Math.Max(Math.Abs(after), Math.Abs(until));
            if (best is null || match.Meeting > best.Meeting || (match.Meeting == best.Meeting && (worst < worstOfBest - 1e-9
                || (worst < worstOfBest + 1e-9 && Math.Abs(Signed(match.Rotation)) < Math.Abs(Signed(best.Rotation)) - 1e-9))))
            {
                (best, worstOfBest) = (match, worst);
            }
        }
    }

    // Which holes meet at one rotation. A hole takes one screw, so that no two may share one on the other face: the largest matching, by augmenting paths.
    private BoltMatch At(BoltPattern turned, double rotation, double tolerance)
    {
        var own = new bool[Angles.Count];
        var partner = new int[turned.Angles.Count];
        Array.Fill(partner, -1);
        for (var i = 0; i < own.Length; i++)
            own[i] = Place(i, new bool[partner.Length]);
        var others = new bool[partner.Length];
        for (var j = 0; j < others.Length; j++)
            others[j] = partner[j] >= 0;
        return new BoltMatch(rotation, own, others);

        bool Place(int i, bool[] seen)
        {
            for (var j = 0; j < partner.Length; j++)
            {
                if (seen[j] || Math.Abs(Signed(Angles[i] - turned.Angles[j] - rotation)) > tolerance + 1e-9)
                    continue;
                seen[j] = true;
                if (partner[j] >= 0 && !Place(partner[j], seen))
                    continue;
                partner[j] = i;
                return true;
            }
            return false;
        }
    }

    private (double Low, double High) Offsets(BoltPattern turned, BoltMatch match)
    {
        double low = double.PositiveInfinity, high = double.NegativeInfinity;
        for (var i = 0; i < Angles.Count; i++)
        {
            if (!match.Meets[i])
                continue;
            var nearest = double.PositiveInfinity;
            foreach (var b in turned.Angles)
            {
                var off = Signed(Angles[i] - b - match.Rotation);
                if (Math.Abs(off) < Math.Abs(nearest))
                    nearest = off;
            }
            (low, high) = (Math.Min(low, nearest), Math.Max(high, nearest));
        }
        return low > high ? (0, 0) : (low, high);
    }

    private static bool Near(double rotation, IReadOnlyList<double> only, double tolerance)
    {
        foreach (var allowed in only)
        {
            if (Math.Abs(Signed(rotation - allowed)) <= tolerance + 1e-9)
                return true;
        }
        return false;
    }

    private static double Within(double angle) => angle - (Math.Floor(angle / Turn) * Turn);

    // From minus half a turn to half a turn.
    private static double Signed(double angle) => angle - (Math.Round(angle / Turn) * Turn);
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
