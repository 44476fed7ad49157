using FitCheck.Physics.Geometry;
using Xunit;

namespace FitCheck.Tests.Physics.Geometry;

/// <summary>
/// The closed forms against a cloud of points of the solid, placed by the three equations of the setting and nothing else.
/// </summary>
public class SampledSolidTests
{
    private const double Near = 0.05e-3;
    private const int ClockAngles = 1440;
    private const int AxialSteps = 2000;

    // Under mutation the first five, with and without tilt, spacer and none, are enough.
    public static TheoryData<int> Cases =>
        [.. Enumerable.Range(1, Environment.GetEnvironmentVariable("FITCHECK_FEW_CASES") is null ? 24 : 5)];

    [Theory]
    [MemberData(nameof(Cases))]
    public void Closed_forms_agree_with_a_cloud_of_points(int seed)
    {
        var random = new Random(seed);
        var body = RandomBody(random);
        var tilt = seed <= 2 ? 0 : (random.NextDouble() - 0.5) * 70 * Math.PI / 180;
        var thickness = seed % 5 == 0 ? 0 : random.NextDouble() * 0.030;
        var panel = random.NextDouble() * 0.004;
        var from = 0.015 + (random.NextDouble() * 0.060);

        double deepest = double.NegativeInfinity, hole = 0, holeNear = 0;
        double beyond = double.NegativeInfinity, beyondNear = double.NegativeInfinity;
        foreach (var (z, rho) in Cloud(body, tilt, thickness))
        {
            deepest = Math.Max(deepest, z);
            if (z >= 0 && z <= panel)
                hole = Math.Max(hole, rho);
            if (z >= -Near && z <= panel + Near)
                holeNear = Math.Max(holeNear, rho);
            if (rho >= from)
                beyond = Math.Max(beyond, z);
            if (rho >= from - Near)
                beyondNear = Math.Max(beyondNear, z);
        }

        Assert.InRange(TiltedBody.DepthNeeded(body, tilt, thickness), deepest - 1e-9, deepest + Near);
        Assert.InRange(TiltedBody.HoleRadiusNeeded(body, tilt, thickness, panel), hole - 1e-9, holeNear + Near);
        Assert.InRange(TiltedBody.DepthNeededBeyondRadius(body, tilt, thickness, from) ?? double.NegativeInfinity, beyond - 1e-9,
            beyondNear + Near);
    }

    // Steps of the profile are walked from radius to radius; half of the clock is enough, the other half is its mirror image.
    private static IEnumerable<(double Z, double Rho)> Cloud(BodyProfile body, double tilt, double thickness)
    {
        var (sin, cos) = Math.SinCos(tilt);
        var clock = Enumerable.Range(0, (ClockAngles / 2) + 1).Select(i => Math.SinCos(2 * Math.PI * i / ClockAngles)).ToArray();
        foreach (var (from, to) in body.Points.Zip(body.Points.Skip(1)))
        {
            for (var i = 0; i <= AxialSteps; i++)
            {
                var s = from.Z + ((to.Z - from.Z) * i / AxialSteps);
                var r = from.R + ((to.R - from.R) * i / AxialSteps);
                foreach (var (sinPhi, cosPhi) in clock)
                {
                    double x = (s * sin) + (r * cosPhi * cos), y = r * sinPhi;
                    yield return (-thickness + (s * cos) - (r * cosPhi * sin), Math.Sqrt((x * x) + (y * y)));
                }
            }
        }
    }

    // Cones, steps inward and outward, cylinders.
    private static BodyProfile RandomBody(Random random)
    {
        var points = new List<(double Z, double R)> { (0, 0.040 + (random.NextDouble() * 0.050)) };
        for (var i = random.Next(1, 5); i > 0; i--)
        {
            var step = random.Next(4) == 0 ? 0 : random.NextDouble() * 0.030;
            points.Add((points[^1].Z + step, random.Next(4) == 0 ? points[^1].R : 0.020 + (random.NextDouble() * 0.060)));
        }
        points.Add((points[^1].Z + 0.010, points[^1].R));
        return BodyProfile.Of(points);
    }
}
