namespace FitCheck.Physics.Geometry;

/// <summary>
/// Where a driver's body goes when its axis is tilted by θ about the centre of the flange plane, and that centre stands t outside the
/// panel. With z from the panel's face into the cavity, and x, y from the hole's centre line, the body's point at s behind the flange,
/// radius r, clock angle φ is z = −t + s·cosθ − r·cosφ·sinθ, x = s·sinθ + r·cosφ·cosθ, y = r·sinφ. Lengths in metres (t is negative for a
/// recess); angles in radians, |θ| &lt; π/2; only the size of θ matters, for the body is round. All formulas are derived from these three
/// equations and exact up to rounding. A point keeps its distance from the flange's centre when it is tilted: s² + r² = ρ² + (z + t)², ρ
/// being its distance from the hole's centre line.
/// </summary>
internal static class TiltedBody
{
    // A nanometre: what touches, counts.
    private const double Touch = 1e-9;

    // Thicker than any driver is deep, metres.
    private const double Endless = 100;

    /// <summary>
    /// The depth in metres that the body needs behind the panel's face: max over its corners of s·cosθ + r·sinθ, less t. Negative when it
    /// stays outside.
    /// </summary>
    public static double DepthNeeded(BodyProfile profile, double tilt, double thickness)
    {
        var (sin, cos) = SinCos(tilt);
        var deepest = double.NegativeInfinity;
        foreach (var (z, r) in profile.Corners)
            deepest = Math.Max(deepest, (z * cos) + (r * sin));
        return deepest - thickness;
    }

    /// <summary>
    /// How far in metres the driver stands in front of the panel's face: t + (flange thickness + front height)·cosθ + R·sinθ + travel, R
    /// being the flange's radius. Conservative: the front is taken as being as wide as the flange, and its travel as pointing straight out.
    /// </summary>
    public static double FrontReach(double thickness, double flangeThickness, double frontHeight, double flangeRadius, double travel,
        double tilt)
    {
        var (sin, cos) = SinCos(tilt);
        return thickness + ((flangeThickness + frontHeight) * cos) + (flangeRadius * sin) + travel;
    }

    /// <summary>
    /// The radius in metres of the smallest hole, centred where the driver's axis meets the flange plane, through which the body passes a
    /// panel of this thickness (z from 0 to p): the largest distance from the hole's centre line of any body point there, all clock angles.
    /// 0 when nothing reaches the panel. At each s the farthest point is the one with z + t nearest to zero: for t ≥ 0, ρ² = s² + r² −
    /// max(t, s·cosθ − r·sinθ)². Along a straight piece this is convex between the places where it changes its form, so that the largest
    /// value stands at one of them.
    /// </summary>
    public static double HoleRadiusNeeded(BodyProfile profile, double tilt, double thickness, double panelThickness)
    {
        var (sin, cos) = SinCos(tilt);
        var (front, back) = (thickness, thickness + panelThickness);
        var largest = 0.0;
        for (var i = 1; i < profile.Corners.Length; i++)
        {
            var (from, to) = (profile.Corners[i - 1], profile.Corners[i]);
            var least = new Along((from.Z * cos) - (from.R * sin), (to.Z * cos) - (to.R * sin));
            var most = new Along((from.Z * cos) + (from.R * sin), (to.Z * cos) + (to.R * sin));
            foreach (var at in (ReadOnlySpan<double>)[0, 1, least.Where(front), least.Where(back), least.Where(0), most.Where(front)])
            {
                if (!Along.IsOn(at) || least.At(at) > back + Touch || most.At(at) < front - Touch)
                    continue;
                var (s, r) = (new Along(from.Z, to.Z).At(at), new Along(from.R, to.R).At(at));
                var w = Math.Max(Math.Max(front, least.At(at)), Math.Min(0, back));
                largest = Math.Max(largest, Math.Sqrt(Math.Max(0, (s * s) + (r * r) - (w * w))));
            }
        }
        return largest;
    }

    /// <summary>
    /// The radius in metres of the farthest body point from the hole's centre line that is at least <paramref name="depth"/> (metres)
    /// behind the panel's face, all clock angles: what a thing that begins there must stay clear of. 0 when the body does not reach so
    /// deep. It is the hole that the body needs in a panel that begins at that depth and never ends.
    /// </summary>
    public static double ReachBehind(BodyProfile profile, double tilt, double thickness, double depth) =>
        HoleRadiusNeeded(profile, tilt, thickness + depth, Endless);

    /// <summary>
    /// The depth in metres behind the panel's face of the deepest body point that is at least <paramref name="fromRadius"/> (metres, ≥ 0)
    /// away from the hole's centre line, all clock angles; for something in the cavity that begins at that radius. Null when no point is so
    /// far out. At each s the deepest point has w = z + t = min(s·cosθ + r·sinθ, √(s² + r² − F²)), F being that radius, and there is one
    /// when the farthest point, ρ² = s² + r² − max(0, s·cosθ − r·sinθ)², is far enough. Along a straight piece w has no largest value
    /// inside the stretches between the places where one of these changes its form: it stands at one of them. Where s² + r² comes to F², w
    /// is not above 0, and beyond that place it is not below.
    /// </summary>
    public static double? DepthNeededBeyondRadius(BodyProfile profile, double tilt, double thickness, double fromRadius)
    {
        var (sin, cos) = SinCos(tilt);
        var f = Math.Max(0, fromRadius);
        double? deepest = null;
        for (var i = 1; i < profile.Corners.Length; i++)
        {
            var (from, to) = (profile.Corners[i - 1], profile.Corners[i]);
            var least = new Along((from.Z * cos) - (from.R * sin), (to.Z * cos) - (to.R * sin));
            var most = new Along((from.Z * cos) + (from.R * sin), (to.Z * cos) + (to.R * sin));
            // s² + r² − least² is (s·sinθ + r·cosθ)², and with most it is (s·sinθ − r·cosθ)².
            var outer = new Along((from.Z * sin) + (from.R * cos), (to.Z * sin) + (to.R * cos));
            var inner = new Along((from.Z * sin) - (from.R * cos), (to.Z * sin) - (to.R * cos));
            var (alongS, alongR) = (new Along(from.Z, to.Z), new Along(from.R, to.R));
            foreach (var at in (ReadOnlySpan<double>)[0, 1, least.Where(0), outer.Where(f), inner.Where(f), inner.Where(-f)])
            {
                if (!Along.IsOn(at))
                    continue;
                var (s, r) = (alongS.At(at), alongR.At(at));
                var farthest = least.At(at) > 0 ? outer.At(at) : Math.Sqrt((s * s) + (r * r));
                if (farthest < f - Touch)
                    continue;
                var reach = Math.Sqrt(Math.Max(0, (s * s) + (r * r) - (f * f)));
                var w = Math.Max(least.At(at), Math.Min(most.At(at), reach));
                deepest = Math.Max(deepest ?? double.NegativeInfinity, w - thickness);
            }
        }
        return deepest;
    }

    /// <summary>
    /// The depth in metres behind the panel's face of the deepest body point that is at least <paramref name="fromRadius"/> (metres, ≥ 0)
    /// away from the hole's centre line and whose hour lies in a part of the clock face, seen from the listener; for something in the
    /// cavity that stands only there. Null when no point is there. <paramref name="leanHour"/> is the hour toward which the driver's axis
    /// leans on the listener's side; its magnet moves the other way. Without a tilt the body is as deep at every hour.
    /// </summary>
    public static double? DepthNeededInSector(BodyProfile profile, double tilt, double thickness, double fromRadius, double leanHour,
        ClockSector sector)
    {
        _ = SinCos(tilt);
        if (tilt == 0 || sector.IsWhole)
            return DepthNeededBeyondRadius(profile, tilt, thickness, fromRadius);
        // To lean by −θ toward an hour is to lean by θ away from it.
        return SectorDepth.Of(profile, Math.Abs(tilt), Math.Max(0, fromRadius), tilt > 0 ? leanHour : leanHour + 6, sector) - thickness;
    }

    private static (double Sin, double Cos) SinCos(double tilt)
    {
        ArgumentOutOfRangeException.ThrowIfGreaterThanOrEqual(Math.Abs(tilt), Math.PI / 2, nameof(tilt));
        return tilt == 0 ? (0, 1) : Math.SinCos(Math.Abs(tilt));
    }
}
