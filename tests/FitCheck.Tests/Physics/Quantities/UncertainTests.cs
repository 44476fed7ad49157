using FitCheck.Physics.Quantities;
using Xunit;

namespace FitCheck.Tests.Physics.Quantities;

/// <summary>Interval arithmetic and quadrature, by hand.</summary>
public class UncertainTests
{
    [Fact]
    public void It_is_made_exact_or_within_a_half_width()
    {
        Assert.Equal(new Uncertain(5, 5, 5, 0), Uncertain.Exact(5));
        Assert.Equal(new Uncertain(5, 4, 6, 1), Uncertain.Within(5, 1));
        Assert.True(Uncertain.Exact(5).IsExact);
        Assert.False(Uncertain.Within(5, 1).IsExact);
    }

    [Fact]
    public void Worst_cases_add_and_deviations_add_in_quadrature()
    {
        var (a, b) = (Uncertain.Within(5, 3), Uncertain.Within(2, 4)); // 3² + 4² = 5²
        Assert.Equal(new Uncertain(7, 0, 14, 5), a + b);
        Assert.Equal(new Uncertain(3, -4, 10, 5), a - b);
        Assert.Equal(new Uncertain(-5, -8, -2, 3), -a);
        Assert.Equal((a + b, a - b, a * b, -a),
            (Uncertain.Add(a, b), Uncertain.Subtract(a, b), Uncertain.Multiply(a, b), Uncertain.Negate(a)));
    }

    [Theory]
    [InlineData(1, 2, 3, 4, 3, 8)]
    [InlineData(-2, -1, -4, -3, 3, 8)]
    [InlineData(-2, -1, 3, 4, -8, -3)]
    [InlineData(1, 2, -4, -3, -8, -3)]
    [InlineData(-1, 2, -3, 4, -6, 8)]
    [InlineData(-2, 1, -3, 4, -8, 6)]
    [InlineData(-2, 1, -4, 3, -6, 8)]
    [InlineData(-1, 2, -4, 3, -8, 6)]
    public void A_product_lies_between_its_outermost_corners(double aLow, double aHigh, double bLow, double bHigh, double low, double high)
    {
        var product = Between(aLow, aHigh) * Between(bLow, bHigh);
        Assert.Equal((low, high), (product.Low, product.High));
    }

    [Fact]
    public void Deviations_of_a_product_are_weighted_with_the_other_factor() =>
        Assert.Equal(new Uncertain(-6, -10, -3, 2.5), Uncertain.Within(3, 1) * Uncertain.Within(-2, 0.5)); // √((1·2)² + (0.5·3)²) = 2.5

    [Fact]
    public void A_quotient_is_turned_over_and_none_by_what_may_be_zero()
    {
        Assert.Equal(new Uncertain(3, 2, 6, 1.5), Uncertain.Divide(Uncertain.Exact(6), Uncertain.Within(2, 1))); // 6/3 to 6/1; 6·1/2² = 1.5
        Assert.Equal(new Uncertain(-3, -6, -2, 1.5), Uncertain.Divide(Uncertain.Exact(6), Uncertain.Within(-2, 1)));
        Assert.Equal(new Uncertain(3, 2, 4, 1), Uncertain.Divide(Uncertain.Within(6, 2), Uncertain.Exact(2)));
        Assert.Null(Uncertain.Divide(Uncertain.Exact(6), Uncertain.Within(1, 1)));
        Assert.Null(Uncertain.Divide(Uncertain.Exact(6), Uncertain.Within(-1, 1)));
        Assert.Null(Uncertain.Divide(Uncertain.Exact(6), Uncertain.Within(0, 1)));
    }

    [Fact]
    public void The_smaller_and_the_larger_take_each_bound_for_itself()
    {
        var (a, b) = (Uncertain.Within(3, 1), Uncertain.Within(4, 1.5));
        Assert.Equal(new Uncertain(3, 2, 4, 1), Uncertain.Min(a, b));
        Assert.Equal(new Uncertain(3, 2, 4, 1), Uncertain.Min(b, a));
        Assert.Equal(new Uncertain(4, 2.5, 5.5, 1.5), Uncertain.Max(a, b));
        Assert.Equal(new Uncertain(3, 1, 5, 2), Uncertain.Min(Uncertain.Within(3, 2), b)); // 1 to 5 against 2.5 to 5.5
    }

    [Theory]
    [InlineData(2, 3, 4, 2, 3, 4)]
    [InlineData(-4, -3, -2, 2, 3, 4)]
    [InlineData(-1, 1, 3, 0, 1, 3)]
    [InlineData(-4, -1, 2, 0, 1, 4)]
    [InlineData(0, 1, 2, 0, 1, 2)]
    [InlineData(-2, -1, 0, 0, 1, 2)]
    public void An_absolute_value_is_folded_at_zero(double low, double value, double high, double foldedLow, double folded,
        double foldedHigh) =>
        Assert.Equal(new Uncertain(folded, foldedLow, foldedHigh, 0.5), Uncertain.Abs(new Uncertain(value, low, high, 0.5)));

    private static Uncertain Between(double low, double high) => new((low + high) / 2, low, high, 0);
}
