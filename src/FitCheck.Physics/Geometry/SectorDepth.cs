namespace FitCheck.Physics.Geometry;

/// <summary>
/// The deepest point of a tilted body over a part of the clock face. The setting is that of <see cref="TiltedBody"/>, whose +x is where the
/// magnet moves: the axis leans to the listener's side toward −x, the hour at which the sound is aimed, so that behind the panel the magnet
/// moves to the hour opposite, and the spacer's thick edge stands there too. The rim that goes deepest is the one at the aimed hour, where
/// the spacer is thin. The region, a wedge of the clock outside a radius F, is a prism along z: at its deepest point nothing of the body
/// lies behind, so that this point is on the body's surface, and one of these: (1) a corner circle's deepest point; (2) where a corner
/// circle meets an edge ray of the wedge or (3) the radius F; on a ray's plane, which cuts a piece of the surface in a conic, (4) the
/// conic's own deepest point; (5) where the ray at F meets the surface; (6) where the deepest line of a piece or the one opposite comes to
/// F, at which depth along F, √(s² + r² − F²), turns. All closed forms.
/// </summary>
internal ref struct SectorDepth
{
    // A nanometre: what touches, counts.
    private const double Touch = 1e-9;

    private readonly double _sin;
    private readonly double _cos;
    private readonly double _from;
    private readonly double _lean;
    private readonly ClockSector _sector;
    // The rays at the sector's two ends.
    private readonly (double X, double Y) _first;
    private readonly (double X, double Y) _last;
    private double _deepest = double.NegativeInfinity;

    private SectorDepth(double tilt, double fromRadius, double leanHour, ClockSector sector)
    {
        (_sin, _cos) = Math.SinCos(tilt);
        (_from, _lean, _sector) = (fromRadius, leanHour, sector);
        (_first, _last) = (Ray(sector.FromHour), Ray(sector.ToHour));
    }

    /// <summary>
    /// The largest z + t over the body's points in the region; null when there are none. The tilt is in radians, from 0 to below π/2.
    /// </summary>
    public static double? Of(BodyProfile profile, double tilt, double fromRadius, double leanHour, ClockSector sector)
    {
        var search = new SectorDepth(tilt, fromRadius, leanHour, sector);
        for (var i = 1; i < profile.Corners.Length; i++)
            search.Piece(profile.Corners[i - 1], profile.Corners[i]);
        search.Piece(profile.Points[^1], (profile.Depth, 0));
        return double.IsNegativeInfinity(search._deepest) ? null : search._deepest;
    }

    private void Piece((double Z, double R) from, (double Z, double R) to)
    {
        Corner(from.Z, from.R);
        Corner(to.Z, to.R);
        foreach (var (x, y) in (ReadOnlySpan<(double X, double Y)>)[_first, _last])
        {
            Conic(from, to, x, y);
            AtRadius(from, to, x * _from, y * _from);
        }
        var (alongS, alongR) = (new Along(from.Z, to.Z), new Along(from.R, to.R));
        // Along F the depth turns where it comes to the line nearest to the aimed hour, or to the one farthest from it.
        foreach (var side in (ReadOnlySpan<double>)[-1, 1])
        {
            var away = new Along((from.Z * _sin) + (side * from.R * _cos), (to.Z * _sin) + (side * to.R * _cos));
            foreach (var at in (ReadOnlySpan<double>)[away.Where(_from), away.Where(-_from)])
            {
                if (at is > 0 and < 1)
                    Try(alongS.At(at), side * alongR.At(at), 0);
            }
        }
    }

    private void Corner(double s, double r)
    {
        Try(s, -r, 0);
        // Where ρ is F, w² is s² + r² − F², and u follows from w.
        if (_sin > 0 && (s * s) + (r * r) - (_from * _from) is >= 0 and var square)
        {
            foreach (var w in (ReadOnlySpan<double>)[Math.Sqrt(square), -Math.Sqrt(square)])
            {
                var u = ((s * _cos) - w) / _sin;
                if (Math.Abs(u) <= r)
                {
                    var v = Math.Sqrt((r * r) - (u * u));
                    Try(s, u, v);
                    Try(s, u, -v);
                }
            }
        }
        foreach (var (x, y) in (ReadOnlySpan<(double X, double Y)>)[_first, _last])
        {
            // At ρ along the ray (x, y): u = ρ·x/cosθ − s·tanθ and v = ρ·y, with u² + v² = r².
            var (slope, shift) = (x / _cos, s * _sin / _cos);
            var (first, second) = Roots((slope * slope) + (y * y), -slope * shift, (shift * shift) - (r * r));
            Try(s, (first * slope) - shift, first * y);
            Try(s, (second * slope) - shift, second * y);
        }
    }

    // On the plane of a ray, s = ρ·x·sinθ + w·cosθ, u = ρ·x·cosθ − w·sinθ, v = ρ·y. Deepest is where u² + v² − r(s)² does not change with
    // ρ.
    private void Conic((double Z, double R) from, (double Z, double R) to, double x, double y)
    {
        if (to.Z <= from.Z)
            return;
        var k = (to.R - from.R) / (to.Z - from.Z);
        var at0 = from.R - (k * from.Z);
        // r = at0 + k·s. The derivative by ρ, halved: u·x·cosθ + v·y − r·k·x·sinθ = byRho·ρ + byW·w − constant = 0.
        var byRho = (x * x * _cos * _cos) + (y * y) - (k * k * x * x * _sin * _sin);
        var byW = -(x * _cos * _sin) - (k * k * x * _sin * _cos);
        var constant = at0 * k * x * _sin;
        if (Math.Abs(byRho) < 1e-12)
            return;
        // ρ = shift + turn·w, put into u² + v² = r².
        var (shift, turn) = (constant / byRho, -byW / byRho);
        var (u0, u1) = (shift * x * _cos, (turn * x * _cos) - _sin);
        var (v0, v1) = (shift * y, turn * y);
        var (r0, r1) = (at0 + (k * shift * x * _sin), k * ((turn * x * _sin) + _cos));
        var (first, second) =
            Roots((u1 * u1) + (v1 * v1) - (r1 * r1), (u0 * u1) + (v0 * v1) - (r0 * r1), (u0 * u0) + (v0 * v0) - (r0 * r0));
        OnPiece(from, to, (shift + (turn * first)) * x, (shift + (turn * first)) * y, first);
        OnPiece(from, to, (shift + (turn * second)) * x, (shift + (turn * second)) * y, second);
    }

    // The line along z through (x, y) meets the cone of a piece twice at most; a step it meets where s is the step's.
    private void AtRadius((double Z, double R) from, (double Z, double R) to, double x, double y)
    {
        if (to.Z <= from.Z)
        {
            OnPiece(from, to, x, y, (from.Z - (x * _sin)) / _cos);
            return;
        }
        var k = (to.R - from.R) / (to.Z - from.Z);
        var r0 = from.R - (k * from.Z) + (k * x * _sin);
        var r1 = k * _cos;
        var (first, second) = Roots((_sin * _sin) - (r1 * r1), -(x * _cos * _sin) - (r0 * r1), (x * x * _cos * _cos) + (y * y) - (r0 * r0));
        OnPiece(from, to, x, y, first);
        OnPiece(from, to, x, y, second);
    }

    private void OnPiece((double Z, double R) from, (double Z, double R) to, double x, double y, double w)
    {
        var s = (x * _sin) + (w * _cos);
        var u = (x * _cos) - (w * _sin);
        var r = Math.Sqrt((u * u) + (y * y));
        if (double.IsFinite(s) && s >= from.Z - Touch && s <= to.Z + Touch && Between(r, from.R, to.R))
            Try(s, u, y);
    }

    private void Try(double s, double u, double v)
    {
        var w = (s * _cos) - (u * _sin);
        var x = (s * _sin) + (u * _cos);
        if (!(w > _deepest))
            return;
        var rho = Math.Sqrt((x * x) + (v * v));
        if (rho >= _from - Touch && (rho < Touch || InSector(x, v)))
            _deepest = w;
    }

    // 0 is at +x, where the magnet moves: opposite to the hour of the lean.
    private readonly bool InSector(double x, double y) => _sector.Contains(_lean + 6 + (Math.Atan2(y, x) * 6 / Math.PI));

    private readonly (double X, double Y) Ray(double hour)
    {
        var (y, x) = Math.SinCos((hour - _lean - 6) * Math.PI / 6);
        return (x, y);
    }

    private static bool Between(double r, double a, double b) => r >= Math.Min(a, b) - Touch && r <= Math.Max(a, b) + Touch;

    // a·q² + 2·h·q + c = 0; not a number when there is no root, the same twice when it is linear.
    private static (double First, double Second) Roots(double a, double h, double c)
    {
        if (Math.Abs(a) < 1e-12)
            return (-c / (2 * h), -c / (2 * h));
        // A root that rounding just took away is still there.
        var under = (h * h) - (a * c);
        var root = Math.Sqrt(under < 0 && under > -1e-18 ? 0 : under);
        return ((-h - root) / a, (-h + root) / a);
    }
}
