using CsCheck;
using FitCheck.Physics.Geometry;
using Xunit;

namespace FitCheck.Tests.Physics.Geometry;

public class GeometryProperties
{
    private const double Rounding = 1e-7;

    private static readonly Gen<BodyProfile> Body =
        Gen.Select(Gen.Double[0, 0.04], Gen.Double[0.01, 0.09]).List[2, 6].Select(steps =>
        {
            var z = 0.0;
            return BodyProfile.Of(steps.Select((step, i) => (z += i == 0 ? 0 : step.Item1, step.Item2)).ToArray());
        });

    private static readonly Gen<double> Tilt = Gen.Double[-0.7, 0.7];
    private static readonly Gen<double> Length = Gen.Double[0, 0.04];

    [Fact]
    public void A_deeper_cavity_never_reduces_clearance() =>
        Gen.Select(Body, Tilt, Length, Length, Length).Sample((body, tilt, thickness, depth, deeper) =>
            depth + deeper - TiltedBody.DepthNeeded(body, tilt, thickness) >= depth - TiltedBody.DepthNeeded(body, tilt, thickness));

    [Fact]
    public void A_thicker_spacer_never_needs_more_depth() =>
        Gen.Select(Body, Tilt, Length, Length).Sample((body, tilt, thickness, more) =>
            TiltedBody.DepthNeeded(body, tilt, thickness + more) <= TiltedBody.DepthNeeded(body, tilt, thickness));

    [Fact]
    public void A_thicker_panel_never_needs_a_smaller_hole() =>
        Gen.Select(Body, Tilt, Length, Length, Length).Sample((body, tilt, thickness, panel, more) =>
            TiltedBody.HoleRadiusNeeded(body, tilt, thickness, panel + more) >= TiltedBody.HoleRadiusNeeded(body, tilt, thickness, panel)
                - Rounding);

    [Fact]
    public void Zero_tilt_is_the_straight_case() =>
        Gen.Select(Body, Length, Gen.Double[0, 0.004]).Sample((body, thickness, panel) =>
        {
            Assert.Equal(body.Depth - thickness, TiltedBody.DepthNeeded(body, 0, thickness), Rounding);
            Assert.InRange(TiltedBody.HoleRadiusNeeded(body, 0, thickness, panel), Widest(body, thickness, thickness + panel) - Rounding,
                Widest(body, thickness - Rounding, thickness + panel + Rounding) + Rounding);
            Assert.Equal(thickness + 0.010 + 0.005, TiltedBody.FrontReach(thickness, 0.004, 0.006, 0.080, 0.005, 0), Rounding);
        });

    [Fact]
    public void A_mirrored_tilt_gives_the_same() =>
        Gen.Select(Body, Tilt, Length, Length).Sample((body, tilt, thickness, radius) =>
            TiltedBody.DepthNeeded(body, tilt, thickness) == TiltedBody.DepthNeeded(body, -tilt, thickness)
            && TiltedBody.HoleRadiusNeeded(body, tilt, thickness, 0.001) == TiltedBody.HoleRadiusNeeded(body, -tilt, thickness, 0.001)
            && TiltedBody.DepthNeededBeyondRadius(body, tilt, thickness, radius) == TiltedBody.DepthNeededBeyondRadius(body, -tilt,
            thickness, radius)
            && TiltedBody.FrontReach(thickness, 0.004, 0.006, 0.08, 0.005, tilt) == TiltedBody.FrontReach(thickness, 0.004, 0.006, 0.08,
            0.005, -tilt));

    [Fact]
    public void Something_that_begins_at_the_centre_is_met_by_the_deepest_point() =>
        Gen.Select(Body, Tilt, Length).Sample((body, tilt, thickness) =>
            Math.Abs(TiltedBody.DepthNeededBeyondRadius(body, tilt, thickness, 0)!.Value
                - TiltedBody.DepthNeeded(body, tilt, thickness)) < Rounding);

    [Fact]
    public void Something_farther_out_is_never_met_deeper() =>
        Gen.Select(Body, Tilt, Length, Gen.Double[0, 0.09], Length).Sample((body, tilt, thickness, radius, more) =>
            (TiltedBody.DepthNeededBeyondRadius(body, tilt, thickness, radius + more) ?? double.NegativeInfinity)
            <= (TiltedBody.DepthNeededBeyondRadius(body, tilt, thickness, radius) ?? double.NegativeInfinity) + Rounding);

    [Fact]
    public void A_step_split_in_two_is_the_same_body() =>
        Gen.Select(Body, Tilt, Length, Gen.Double[0.01, 0.09]).Sample((body, tilt, thickness, radius) =>
        {
            var halves = body.Points.Zip(body.Points.Skip(1), (a, b) => ((a.Z + b.Z) / 2, (a.R + b.R) / 2));
            var split =
                BodyProfile.Of(body.Points.Zip(halves, (p, h) => new[] { p, h }).SelectMany(p => p).Append(body.Points[^1]).ToArray());
            Assert.Equal(TiltedBody.HoleRadiusNeeded(body, tilt, thickness, 0.001),
                TiltedBody.HoleRadiusNeeded(split, tilt, thickness, 0.001), 1e-6);
            Assert.Equal(
                TiltedBody.DepthNeededBeyondRadius(body, tilt, thickness, radius) ?? -1,
                TiltedBody.DepthNeededBeyondRadius(split, tilt, thickness, radius) ?? -1, 1e-6);
        });

    // What just touches the panel may count or not.
    private static double Widest(BodyProfile body, double from, double to) =>
        Enumerable.Range(0, 101).Select(i => body.RadiusAt(from + ((to - from) * i / 100)))
        .Concat(body.Points.Where(p => p.Z >= from && p.Z <= to).Select(p => p.R)).Max();
}
