using CsCheck;
using FitCheck.Physics.Geometry;
using Xunit;

namespace FitCheck.Tests.Physics.Geometry;

/// <summary>How far a body reaches out deeper than something begins.</summary>
public class ReachBehindTests
{
    private static readonly BodyProfile Driver = BodyProfile.FromSheet(0.071, 0.056, 0.045, 0.017);

    // By hand, 18 mm of spacer: the magnet of 45 mm stands 21 to 38 mm behind the panel; at 10 mm the cone is, 28 mm behind the flange,
    // 71 − 26 × 28 / 39 = 52.33 mm; deeper than 38 mm there is nothing.
    [Theory]
    [InlineData(0.030, 0.045)]
    [InlineData(0.021, 0.045)]
    [InlineData(0.010, 0.052333)]
    [InlineData(0.0381, 0)]
    public void Without_a_tilt_the_widest_part_that_is_deep_enough_counts(double depth, double reach) =>
        Assert.Equal(reach, TiltedBody.ReachBehind(Driver, 0, 0.018, depth), 6);

    // Against points all over the body's surface, put where the three equations of a tilted body say.
    [Fact]
    public void With_a_tilt_no_point_of_the_body_that_is_deep_enough_lies_farther_out() =>
        Gen.Select(Gen.Double[0, 0.3], Gen.Double[0, 0.03], Gen.Double[0.001, 0.05]).Sample((tilt, thickness, depth) =>
        {
            var reach = TiltedBody.ReachBehind(Driver, tilt, thickness, depth);
            var farthest = 0.0;
            for (var s = 0.0; s <= 0.056; s += 0.0002)
            {
                for (var hour = 0.0; hour < 2 * Math.PI; hour += 0.01)
                {
                    var (r, sin, cos) = (Driver.RadiusAt(s), Math.Sin(tilt), Math.Cos(tilt));
                    var z = -thickness + (s * cos) - (r * Math.Cos(hour) * sin);
                    var (x, y) = ((s * sin) + (r * Math.Cos(hour) * cos), r * Math.Sin(hour));
                    if (z >= depth)
                        farthest = Math.Max(farthest, Math.Sqrt((x * x) + (y * y)));
                }
            }
            return farthest <= reach + 1e-9 && farthest >= reach - 0.001;
        }, iter: 60);
}
