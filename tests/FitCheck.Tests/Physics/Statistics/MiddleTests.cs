using CsCheck;
using FitCheck.Physics.Numerics;
using MathNet.Numerics.Statistics;
using Xunit;

namespace FitCheck.Tests.Physics.Statistics;

public sealed class MiddleTests
{
    private static readonly Gen<double[]> Classes = Gen.Double[-1e6, 1e6].Array[1, 40];

    [Fact]
    public void A_wrong_one_among_ten_moves_neither_middle_nor_spread_far()
    {
        // By hand: sorted 2.1 62 63 64 65 65 66 68 70 71: median 65, distances 0 0 1 1 2 3 3 5 6 62.9, their median 2.5.
        var middle = Middle.Of([65, 63, 68, 70, 64, 2.1, 66, 71, 62, 65]);

        Assert.Equal(65, middle.Median, 12);
        Assert.Equal(2.5 * 1.4826022185, middle.Spread, 9);
        Assert.Equal(62.9 / (2.5 * 1.4826022185), middle.Score(2.1), 4);
    }

    [Fact]
    public void The_factor_is_the_inverse_of_the_normal_quartile() =>
        // Φ⁻¹(3/4) by MathNet; numbers at ±1 and 0 have the median distance 1.
        Assert.Equal(1 / MathNet.Numerics.Distributions.Normal.InvCDF(0, 1, 0.75), Middle.Of([-1, -1, 0, 1, 1]).Spread, 9);

    [Fact]
    public void Median_and_spread_are_those_of_another_library() => Classes.Sample(numbers =>
    {
        var middle = Middle.Of(numbers);
        var median = ArrayStatistics.MedianInplace([.. numbers]);
        var distance = ArrayStatistics.MedianInplace([.. numbers.Select(x => Math.Abs(x - median))]);

        return Near(middle.Median, median) && Near(middle.Spread, distance / MathNet.Numerics.Distributions.Normal.InvCDF(0, 1, 0.75))
            && middle.Count == numbers.Length;
    });

    [Fact]
    public void The_order_does_not_matter() => Classes.Sample(numbers => Middle.Of(numbers) == Middle.Of(numbers.Reverse()));

    [Fact]
    public void Off_a_class_without_spread_is_infinitely_far()
    {
        var middle = Middle.Of([5, 5, 5, 5]);

        Assert.Equal(0, middle.Score(5));
        Assert.Equal(double.PositiveInfinity, middle.Score(6));
    }

    [Fact]
    public void A_class_of_nothing_has_no_middle() => Assert.Throws<ArgumentException>(() => Middle.Of([]));

    private static bool Near(double a, double b) => Math.Abs(a - b) <= 1e-9 * Math.Max(1, Math.Abs(b));
}
