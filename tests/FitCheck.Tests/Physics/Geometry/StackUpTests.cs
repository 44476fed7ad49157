using FitCheck.Physics.Geometry;
using FitCheck.Physics.Quantities;
using Xunit;

namespace FitCheck.Tests.Physics.Geometry;

public class StackUpTests
{
    private static readonly (string Name, double Nominal, double HalfWidth)[] Bore =
        [("bore", 40, 0.10), ("first", 25, 0.05), ("second", 2, 0.03), ("third", 10, 0.05)];

    [Fact]
    public void Worst_cases_add_and_deviations_add_in_quadrature()
    {
        var gap = StackUp.Of(Bore, v => v[0] - v[1] - v[2] - v[3]);

        Assert.Equal(3.0, gap.Value, 9); // tol.nom: worked example at metricmech.com, 40 − 25 − 2 − 10
        Assert.Equal(2.77, gap.Low, 9); // tol.wc: the same example, ±0.23
        Assert.Equal(3.23, gap.High, 9); // tol.wc
        Assert.Equal(0.1261, gap.Rss, 4); // tol.rss: the same example; F. Scholz, Tolerance Stack Analysis Methods
    }

    [Fact]
    public void Ten_equal_parts()
    {
        var sum = StackUp.Of([.. Enumerable.Repeat(("part", 5.0, 0.1), 10)], v => v.Sum());

        Assert.Equal(1.0, sum.High - sum.Value, 9); // tol.10: published text on RSS, ten parts of ±0.1
        Assert.Equal(0.316, sum.Rss, 3); // tol.10
    }

    [Fact]
    public void A_door()
    {
        var clearance = StackUp.Of(
            [("slot", 68, 1.5), ("adapter", 12, 0.5), ("driver", 62, 1.0), ("gasket", 2, 0.5), ("sheet, off by", 0, 0.3)],
            v => v[0] + v[1] + v[3] - v[2] - v[4]);

        Assert.Equal(20.0, clearance.Value, 9); // tol.door: computed by hand
        Assert.Equal(3.8, clearance.Value - clearance.Low, 9); // tol.door: worst case by hand
        Assert.Equal(1.9596, clearance.Rss, 4); // tol.door: √(1.5² + 0.5² + 1² + 0.5² + 0.3²) by hand
    }

    [Fact]
    public void The_larger_of_two_one_sided_deviations_counts()
    {
        var larger = StackUp.Of([("a", 10, 2)], v => Math.Max(v[0], 9.5));

        Assert.Equal((8, 12), (larger.Low, larger.High)); // computed by hand: +2 and −0.5
    }

    [Fact]
    public void The_spacer_that_a_deep_driver_needs()
    {
        (string, double, double)[] inputs = [("spacer", 0, 0), ("depth", 0.062, 0), ("slot", 0.058, 0)];

        var spacer = StackUp.SolveFor(inputs, v => v[2] - (v[1] - v[0]), index: 0, limit: 0.003, atLeast: true)!.Value;

        Assert.Equal(0.007, spacer.Value, 9); // geo.spacer: 62 + 3 − 58, computed by hand
        Assert.True(spacer.OrMore);
    }

    [Fact]
    public void A_value_that_passes_leaves_room_for_the_other_inputs()
    {
        (string, double, double)[] inputs = [("cavity", 0.060, 0.003), ("driver", 0.062, 0.001)];

        var cavity = StackUp.SolveFor(inputs, v => v[0] - v[1], 0, 0.003, atLeast: true)!.Value;

        Assert.Equal(0.066, cavity.Value, 9); // computed by hand: 62 + 1 + 3; its own tolerance does not count
        Assert.Equal(("66 mm", true), (QuantityText.FormatLimit(cavity.Value, Dimension.Metre, cavity.OrMore), cavity.OrMore));
    }

    [Fact]
    public void A_value_that_must_not_be_exceeded()
    {
        (string, double, double)[] inputs = [("cavity", 0.060, 0.001), ("driver", 0.0621, 0.001)];

        var driver = StackUp.SolveFor(inputs, v => v[0] - v[1], 1, 0.00345, atLeast: true)!.Value;

        Assert.False(driver.OrMore);
        Assert.Equal(0.05555, driver.Value, 9); // computed by hand: 60 − 1 − 3.45
        // Computed by hand: downward, so that it still passes.
        Assert.Equal("55.5 mm", QuantityText.FormatLimit(driver.Value, Dimension.Metre, driver.OrMore));
    }

    [Fact]
    public void A_result_that_must_be_at_most_its_limit()
    {
        (string, double, double)[] inputs = [("tilt", 0.1, 0.1), ("radius", 0.08, 0.001)];

        var tilt = StackUp.SolveFor(inputs, v => v[1] * Math.Sin(v[0]), 0, 0.0405, atLeast: false)!.Value;

        Assert.Equal(Math.PI / 6, tilt.Value, 6); // computed by hand: (80 + 1)·sin 30° = 40.5
        Assert.False(tilt.OrMore);
    }

    [Fact]
    public void An_input_that_decides_nothing_has_no_passing_value()
    {
        (string, double, double)[] inputs = [("magnet", 0.02, 0.003), ("depth", 0.062, 0.001)];

        Assert.Null(StackUp.SolveFor(inputs, v => v[1], 0, 0.05, atLeast: true));
        Assert.Null(StackUp.SolveFor(inputs, v => v[0] < 0.03 ? double.NaN : 1, 0, 0.5, atLeast: true));
    }

    [Fact]
    public void A_length_is_never_solved_below_zero()
    {
        (string, double, double)[] inputs = [("spacer", 0.005, 0), ("front", 0.030, 0)];

        Assert.Null(StackUp.SolveFor(inputs, v => v[0] + v[1], 0, 0.020, atLeast: false));
    }
}
