using FitCheck.Physics.Geometry;
using Xunit;

namespace FitCheck.Tests.Physics.Geometry;

public class BodyProfileTests
{
    [Fact]
    public void Sheet_figures_give_a_cone_and_a_magnet()
    {
        var body = BodyProfile.FromSheet(cutoutRadius: 0.070, depth: 0.062, magnetRadius: 0.045, magnetHeight: 0.020);

        Assert.Equal(BodyOrigin.ConeAndMagnet, body.Origin);
        Assert.Equal([(0, 0.070), (0.062 - 0.020, 0.045), (0.062, 0.045)], body.Points);
        Assert.Equal(0.062, body.Depth);
    }

    [Theory]
    [InlineData(null, 0.020)]
    [InlineData(0.045, null)]
    [InlineData(null, null)]
    public void Without_the_magnet_the_body_is_a_cylinder_and_says_so(double? magnetRadius, double? magnetHeight)
    {
        var body = BodyProfile.FromSheet(0.070, 0.062, magnetRadius, magnetHeight);

        Assert.Equal(BodyOrigin.Cylinder, body.Origin);
        Assert.Equal([(0, 0.070), (0.062, 0.070)], body.Points);
    }

    [Theory]
    [InlineData(0.000, 60)] // computed by hand: the cone starts at the rim
    [InlineData(0.020, 50)] // computed by hand: halfway from 60 to 40
    [InlineData(0.040, 45)] // the larger radius of the step
    [InlineData(0.055, 45)] // the cylinder
    [InlineData(0.061, 0)] // behind the body
    [InlineData(-0.001, 0)] // in front of it
    public void Radius_follows_the_profile(double z, double millimetres)
    {
        var body = BodyProfile.Of([(0, 0.060), (0.040, 0.040), (0.040, 0.045), (0.060, 0.045)]);

        Assert.Equal(millimetres / 1000, body.RadiusAt(z), 12);
    }

    [Fact]
    public void A_step_at_the_back_counts_with_its_larger_radius() =>
        Assert.Equal(0.045, BodyProfile.Of([(0, 0.050), (0.060, 0.030), (0.060, 0.045)]).RadiusAt(0.060), 12);

    [Fact]
    public void What_is_wrong_with_points_is_told_as_a_sentence()
    {
        Assert.Equal("A body profile needs at least two points.", BodyProfile.WhatIsWrong([(0, 0.05)]));
        Assert.Equal("A body profile needs a radius above zero.", BodyProfile.WhatIsWrong([(0, 0), (0.05, 0)]));
        Assert.Equal("Point 2 of the body profile has a distance or a radius below zero.",
            BodyProfile.WhatIsWrong([(0, 0.05), (0.06, -0.04)]));
        Assert.Equal("Point 3 of the body profile lies nearer to the flange than the one before it.",
            BodyProfile.WhatIsWrong([(0, 0.05), (0.06, 0.04), (0.05, 0.04)]));
        Assert.Equal("Point 2 of the body profile has a distance or a radius below zero.",
            BodyProfile.WhatIsWrong([(0, 0.05), (double.NaN, 0.04)]));
        Assert.Equal("Point 2 of the body profile has a distance or a radius below zero.",
            BodyProfile.WhatIsWrong([(0, 0.05), (0.06, double.NaN)]));
        Assert.Null(BodyProfile.WhatIsWrong([(0, 0.05), (0.06, 0.04)]));
        Assert.Throws<ArgumentException>(() => BodyProfile.Of([(0, 0.05)]));
    }

    [Fact]
    public void A_magnet_higher_than_the_depth_fills_it()
    {
        var body = BodyProfile.FromSheet(0.070, 0.010, 0.045, 0.013);

        Assert.Equal([(0, 0.070), (0, 0.045), (0.010, 0.045)], body.Points);
    }

    [Theory]
    [InlineData(double.NaN, 0.06, 0.04, 0.02)]
    [InlineData(0.07, double.PositiveInfinity, 0.04, 0.02)]
    [InlineData(0.07, 0.06, double.NaN, 0.02)]
    [InlineData(0.07, 0.06, 0.04, double.NegativeInfinity)]
    public void Sheet_figures_that_are_no_numbers_are_refused(double cutoutRadius, double depth, double magnetRadius,
        double magnetHeight) =>
        Assert.Throws<ArgumentException>(() => BodyProfile.FromSheet(cutoutRadius, depth, magnetRadius, magnetHeight));
}
