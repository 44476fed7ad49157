using FitCheck.Physics.Geometry;
using Xunit;

namespace FitCheck.Tests.Physics.Geometry;

/// <summary>
/// Depth over a part of the clock face: cases worked by hand, and a search over the skin of the solid, placed by the three equations of the
/// setting.
/// </summary>
public class SectorDepthTests
{
    private const double Near = 0.05e-3;
    private const double Thirty = Math.PI / 6;

    public static TheoryData<int> Cases => [.. Enumerable.Range(1, 40)];

    public static TheoryData<int> SlimCases => [.. Enumerable.Range(1, 16)];

    [Fact]
    public void The_rim_at_the_aimed_hour_goes_deepest_and_the_one_opposite_least()
    {
        // A cylinder of radius 40, 60 long, leaning by 30 degrees toward 12: the back's middle is at 51.9615 deep, 30 mm toward 6; its rim
        // 20 mm deeper, 34.641 mm nearer to 12, and 20 mm less deep, 34.641 mm farther.
        var body = Millimetres((0, 40), (60, 40));

        Assert.Equal(71.9615, Depth(body, 12, 11, 1), 3); // worked by hand: 51.9615 + 20, at 4.641 mm toward 12
        // worked by hand: on the ray at 6 the back is 30 mm out in its very middle
        Assert.Equal(51.9615, Depth(body, 12, 6, 6, from: 30), 3);
        Assert.Equal(31.9615, Depth(body, 12, 6, 6, from: 64.641), 2); // worked by hand: 51.9615 − 20 at 30 + 34.641 mm: the far rim
        Assert.Equal(40.41452, Depth(body, 12, 6, 6, from: 50), 3); // worked by hand: 51.96152 − (50 − 30)·tan 30°
        // worked by hand: toward 12 the flange's rim at 34.641 mm is the farthest
        Assert.Null(TiltedBody.DepthNeededInSector(body, Thirty, 0, 0.050, 12, new(11, 1)));
    }

    [Fact]
    public void Between_the_hours_a_long_body_is_left_through_its_side()
    {
        // A cylinder of radius 20, 200 long, leaning by 30 degrees toward 12, on the ray halfway between where the magnet moves and a
        // quarter of a turn from it: x = y = ρ/√2. On the plane of the ray u² + v² = r² with u = x·cosθ − w·sinθ; w is greatest where
        // x·cosθ·u + y·v = 0, which gives w = r·√(cos²θ + 1)/sinθ = 20·√1.75/0.5 = 52.9150, at ρ = √2·cosθ·sinθ·w/(cos²θ + 1) = 18.516 and
        // 52.4 mm along the axis.
        var body = Millimetres((0, 20), (200, 20));

        Assert.Equal(52.9150, Depth(body, 12, 7.5, 7.5), 3);
        Assert.Equal(52.9150, Depth(body, 12, 4.5, 4.5), 3); // the same on the other side
    }

    [Fact]
    public void Whatever_the_hour_a_straight_body_is_as_deep()
    {
        var body = Millimetres((0, 60), (40, 30), (60, 30));

        Assert.Equal(60, TiltedBody.DepthNeededInSector(body, 0, 0, 0, 3, new(1, 2))!.Value * 1000, 6); // worked by hand: no tilt
    }

    [Fact]
    public void Leaning_the_other_way_is_leaning_to_the_opposite_hour()
    {
        var body = Millimetres((0, 60), (40, 30), (60, 30));

        Assert.Equal(TiltedBody.DepthNeededInSector(body, 0.2, 0, 0.02, 9, new(1, 4)),
            TiltedBody.DepthNeededInSector(body, -0.2, 0, 0.02, 3, new(1, 4)));
    }

    [Theory]
    [InlineData(8, 2, 12, true)] // worked by hand: over the top
    [InlineData(8, 2, 8, true)]
    [InlineData(8, 2, 2, true)]
    [InlineData(8, 2, 14, true)] // the same hour, a turn later
    [InlineData(8, 2, 5, false)]
    [InlineData(0, 12, 7.3, true)] // the whole face
    [InlineData(3, 3, 3, true)] // one ray
    [InlineData(3, 3, 3.1, false)]
    public void A_sector_runs_clockwise_and_may_pass_the_top(double from, double to, double hour, bool inside) =>
        Assert.Equal(inside, new ClockSector(from, to).Contains(hour));

    [Theory]
    [MemberData(nameof(Cases))]
    public void Closed_forms_agree_with_a_search_over_the_skin_of_the_solid(int seed)
    {
        var random = new Random(seed);
        var body = RandomBody(random);
        var tilt = (random.NextDouble() - 0.5) * 60 * Math.PI / 180;
        var thickness = random.NextDouble() * 0.03;
        var from = seed % 3 == 0 ? 0 : random.NextDouble() * 0.07;
        var lean = random.NextDouble() * 12;
        Compare(body, tilt, thickness, from, lean, new ClockSector(random.Next(0, 13), random.NextDouble() * 12));
    }

    // So slim that a ray leaves through the side: there the conic's own deepest point decides.
    [Theory]
    [MemberData(nameof(SlimCases))]
    public void They_agree_for_slim_bodies_too(int seed)
    {
        var random = new Random(seed);
        var end = 0.010 + (random.NextDouble() * 0.010);
        var body = BodyProfile.Of([(0, 0.030 + (random.NextDouble() * 0.010)), (0.060 + (random.NextDouble() * 0.060), end), (0.160, end)]);
        var lean = random.NextDouble() * 12;
        var off = 0.5 + (random.NextDouble() * 2);
        var sector = random.Next(2) == 0 ? new ClockSector(lean + 6 + off, lean + 7 + off)
            : new ClockSector(lean + 5 - off, lean + 6 - off);
        Compare(body, (25 + (random.NextDouble() * 30)) * Math.PI / 180, 0, random.NextDouble() * 0.010, lean, sector);
    }

    private static void Compare(BodyProfile body, double tilt, double thickness, double from, double lean, ClockSector sector)
    {
        var search = Search(body, tilt, from, lean, sector);
        var depth = TiltedBody.DepthNeededInSector(body, tilt, thickness, from, lean, sector) + thickness;
        Assert.Equal(search is null, depth is null);
        if (search is var (found, bound))
        {
            Assert.InRange(depth!.Value, found - 1e-9, bound + 1e-9);
            Assert.InRange(depth.Value, bound - Near, bound + 1e-9);
        }
    }

    // Written apart from the program: the skin of the solid, its back included, is cut into cells, the most promising one first into four,
    // until the best one is eight thousandths of a millimetre small. No point of a cell is farther from its middle than its size, so that
    // nothing is overlooked. The axis leans toward the given hour on the listener's side, so that +x lies at the hour opposite. Returns the
    // deepest point found and a bound above all others.
    private static (double Found, double Bound)? Search(BodyProfile body, double tilt, double from, double lean, ClockSector sector)
    {
        const double Small = 8e-6;
        var (sin, cos) = Math.SinCos(tilt);
        var points = body.Points.Append((body.Depth, 0)).ToArray();
        var cells = new PriorityQueue<(int Piece, double P, double HalfP, double Phi, double HalfPhi), double>();
        var found = double.NegativeInfinity;
        for (var piece = 0; piece + 1 < points.Length; piece++)
            Add((piece, 0.5, 0.5, 0, Math.PI));
        while (cells.TryDequeue(out var cell, out var priority))
        {
            if (-priority <= found || Size(cell) < Small)
                return (found, -priority);
            for (var i = 0; i < 4; i++)
            {
                var (p, phi) = (cell.HalfP / 2, cell.HalfPhi / 2);
                Add((cell.Piece, cell.P + (i < 2 ? p : -p), p, cell.Phi + (i % 2 == 0 ? phi : -phi), phi));
            }
        }
        return double.IsNegativeInfinity(found) ? null : (found, found);

        double Size((int Piece, double P, double HalfP, double Phi, double HalfPhi) cell)
        {
            var ((az, ar), (bz, br)) = (points[cell.Piece], points[cell.Piece + 1]);
            return (cell.HalfP * Math.Sqrt(((bz - az) * (bz - az)) + ((br - ar) * (br - ar)))) + (cell.HalfPhi * Math.Max(ar, br));
        }

        void Add((int Piece, double P, double HalfP, double Phi, double HalfPhi) cell)
        {
            var ((az, ar), (bz, br)) = (points[cell.Piece], points[cell.Piece + 1]);
            var (s, r) = (az + ((bz - az) * cell.P), ar + ((br - ar) * cell.P));
            var (sinPhi, cosPhi) = Math.SinCos(cell.Phi);
            double x = (s * sin) + (r * cosPhi * cos), y = r * sinPhi, w = (s * cos) - (r * cosPhi * sin);
            double rho = Math.Sqrt((x * x) + (y * y)), size = Size(cell), hour = lean + 6 + (Math.Atan2(y, x) * 6 / Math.PI);
            if (rho >= from && sector.Contains(hour))
                found = Math.Max(found, w);
            var away = rho > size ? Math.Asin(size / rho) * 6 / Math.PI : 12;
            if (rho + size >= from
                && new ClockSector(sector.FromHour - away, sector.FromHour + Math.Min(12 - away, sector.Span + away)).Contains(hour))
                cells.Enqueue(cell, -(w + size));
        }
    }

    private static BodyProfile RandomBody(Random random)
    {
        var points = new List<(double Z, double R)> { (0, 0.040 + (random.NextDouble() * 0.050)) };
        for (var i = random.Next(1, 4); i > 0; i--)
        {
            var step = random.Next(4) == 0 ? 0 : random.NextDouble() * 0.030;
            points.Add((points[^1].Z + step, random.Next(4) == 0 ? points[^1].R : 0.020 + (random.NextDouble() * 0.060)));
        }
        points.Add((points[^1].Z + 0.010, points[^1].R));
        return BodyProfile.Of(points);
    }

    private static double Depth(BodyProfile body, double lean, double fromHour, double toHour, double from = 0) =>
        TiltedBody.DepthNeededInSector(body, Thirty, 0, from / 1000, lean, new(fromHour, toHour))!.Value * 1000;

    private static BodyProfile Millimetres(params (double Z, double R)[] points) =>
        BodyProfile.Of(points.Select(p => (p.Z / 1000, p.R / 1000)).ToArray());
}
