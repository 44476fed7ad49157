using FitCheck.Physics.Geometry;
using Xunit;

namespace FitCheck.Tests.Physics.Geometry;

public class TiltedBodyTests
{
    private static readonly BodyProfile Cylinder = Millimetres((0, 60), (100, 60));

    [Theory]
    [InlineData(8, 67.65941, "0 65, 62 45")] // geo.G3: computed by hand and by brute force over rim points, pure geometry
    [InlineData(35, 40.15035, "0 70, 25 30")] // geo.G4: the same; the front rim governs
    [InlineData(12, 75.24633, "0 66, 30 50, 45 42, 68 42")] // geo.G5: the same
    [InlineData(33.690067525979785, 72.11103, "0 40, 60 40")] // geo.G6: the worst tilt of this cylinder, √(60² + 40²)
    public void Depth_needed_is_that_of_the_deepest_rim(double tiltDeg, double millimetres, string points)
    {
        var body = Millimetres(
            points.Split(", ").Select(p => p.Split(' ')).Select(p => (double.Parse(p[0]), double.Parse(p[1]))).ToArray());

        Assert.Equal(millimetres, TiltedBody.DepthNeeded(body, Deg(tiltDeg), 0) * 1000, 4);
    }

    [Fact]
    public void A_wedge_that_pivots_on_the_flange_edge_moves_the_centre_outward()
    {
        var body = Millimetres((0, 65), (62, 45));

        var needed = TiltedBody.DepthNeeded(body, Deg(8), 0.0825 * Math.Sin(Deg(8)));

        Assert.Equal(56.1776, needed * 1000, 3); // geo.G7: E − R·sinθ, computed by hand, pure geometry
    }

    [Fact]
    public void A_tilted_cylinder_needs_a_longer_hole()
    {
        // The plate of 3 mm centred on the flange plane: its back half governs the far side.
        var needed = TiltedBody.HoleRadiusNeeded(Cylinder, Deg(10), 0, 0.0015);

        Assert.Equal(61.1901, needed * 1000, 3); // geo.G8: r/cosθ + (t/2)·tanθ, computed by hand, pure geometry
    }

    [Fact]
    public void Inclined_glass_is_met_by_the_rim()
    {
        var needed = TiltedBody.DepthNeeded(Millimetres((0, 40), (55, 40)), Deg(7), 0);

        var normal = (0.060 * Math.Cos(Deg(7))) - needed;
        Assert.Equal(0.087957, normal * 1000, 5); // geo.G9: computed by hand, pure geometry
        Assert.Equal(0.088618, normal / Math.Cos(Deg(7)) * 1000, 5); // geo.G9 along the axis
    }

    [Theory]
    [InlineData(0, 5, 1, 55)] // computed by hand: 60 − 20 · 5/20 at the panel's face
    [InlineData(0, 25, 1, 40)] // the cylinder alone is in the panel
    [InlineData(0, 60, 1, 40)] // its back just touches the panel's face
    [InlineData(0, 61, 1, 0)] // nothing reaches the panel
    public void Straight_hole_radius_is_the_widest_part_in_the_panel(double tiltDeg, double thickness, double panel, double millimetres)
    {
        var body = Millimetres((0, 60), (20, 40), (60, 40));

        Assert.Equal(millimetres, TiltedBody.HoleRadiusNeeded(body, Deg(tiltDeg), thickness / 1000, panel / 1000) * 1000, 6);
    }

    [Fact]
    public void Front_reach_adds_thickness_front_flange_rim_and_travel()
    {
        var reach = TiltedBody.FrontReach(thickness: 0.012, flangeThickness: 0.004, frontHeight: 0.006, flangeRadius: 0.080, travel: 0.005,
            tilt: Deg(30));

        Assert.Equal(12 + (10 * 0.8660254038) + 40 + 5, reach * 1000, 6); // computed by hand: cos 30° = √3/2, sin 30° = 1/2
        Assert.Equal(27, TiltedBody.FrontReach(0.012, 0.004, 0.006, 0.080, 0.005, 0) * 1000, 9); // computed by hand: 12 + 4 + 6 + 5
    }

    [Fact]
    public void Only_what_is_wide_enough_meets_something_at_the_side()
    {
        var body = Millimetres((0, 60), (40, 30), (60, 30));

        Assert.Equal(20, TiltedBody.DepthNeededBeyondRadius(body, 0, 0, 0.045)!.Value * 1000, 6); // computed by hand: halfway down the cone
        Assert.Equal(60, TiltedBody.DepthNeededBeyondRadius(body, 0, 0, 0.030)!.Value * 1000, 6); // the magnet touches
        Assert.Equal(48, TiltedBody.DepthNeededBeyondRadius(body, 0, 0.012, 0)!.Value * 1000, 6); // computed by hand: 60 − 12
        Assert.Null(TiltedBody.DepthNeededBeyondRadius(body, 0, 0, 0.061));
    }

    [Fact]
    public void A_rim_that_only_leans_in_meets_what_stands_close_to_it()
    {
        // By hand: a disc of radius 40, 5 thick, tilted by 30 degrees. Its deepest rim stands only 37.1 mm out, but the rim beside it
        // stands farther out and is √(5² + 40² − 38²) = 13.454 mm deep where it is 38 mm out; nothing of it is farther out than √(5² + 40²)
        // = 40.31 mm.
        var disc = BodyProfile.Of([(0, 0.040), (0.005, 0.040)]);

        Assert.Equal(13.454, TiltedBody.DepthNeededBeyondRadius(disc, Math.PI / 6, 0, 0.038)!.Value * 1000, 3);
        Assert.Null(TiltedBody.DepthNeededBeyondRadius(disc, Math.PI / 6, 0, 0.0404));
    }

    [Fact]
    public void A_tilt_of_a_right_angle_is_refused() =>
        Assert.Throws<ArgumentOutOfRangeException>(() => TiltedBody.DepthNeeded(Cylinder, Math.PI / 2, 0));

    private static double Deg(double degrees) => degrees * Math.PI / 180;

    private static BodyProfile Millimetres(params (double Z, double R)[] points) =>
        BodyProfile.Of(points.Select(p => (p.Z / 1000, p.R / 1000)).ToArray());
}
