using System.Globalization;
using FitCheck.Physics.Quantities;
using Xunit;

namespace FitCheck.Tests.Physics;

/// <summary>
/// Lengths in inches. One inch is 25.4 mm exactly (international yard and pound agreement, 1959; ISO 31-1, annex A); a sixty-fourth is
/// 0.396875 mm.
/// </summary>
public class LengthsTests
{
    private static readonly Unit Millimetre = Unit.Find("mm")!;

    [Theory] // by division by 25.4, by hand
    [InlineData(25.4, "1 in")]
    [InlineData(65, "2.56 in")] // 2.55906
    [InlineData(143, "5.63 in")] // 5.62992
    [InlineData(3, "0.118 in")] // 0.11811
    [InlineData(0.5, "0.02 in")] // 0.019685: three digits, the zero left off
    [InlineData(-2.5, "-0.098 in")]
    [InlineData(4100, "161.4 in")] // 161.417
    [InlineData(0, "0 in")]
    public void A_length_is_told_in_decimal_inches(double mm, string told)
    {
        using var inches = Lengths.Asked(LengthUnits.Inch);

        Assert.Equal(told, QuantityText.Format(mm / 1000, Millimetre));
        Assert.Equal(told, QuantityText.Format(mm / 1000, Dimension.Metre));
    }

    [Fact]
    public void Nothing_but_lengths_changes()
    {
        using var inches = Lengths.Asked(LengthUnits.Inch);

        Assert.Equal("8.37 mm2", QuantityText.Format(8.37e-6, Unit.Find("mm2")!));
        Assert.Equal("130 cm2", QuantityText.Format(0.013, Unit.Find("cm2")!));
        Assert.Equal("0.6 mm/N", QuantityText.Format(0.0006, Unit.Find("mm/N")!));
        Assert.Equal("12 L", QuantityText.Format(0.012, Unit.Find("L")!));
    }

    [Fact]
    public void In_the_workshop_both_stand_side_by_side()
    {
        using var both = Lengths.Asked(LengthUnits.Both);

        Assert.Equal("65 mm (2.56 in)", QuantityText.Format(0.065, Millimetre));
    }

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void What_is_told_as_a_limit_keeps_it(bool orMore)
    {
        using var inches = Lengths.Asked(LengthUnits.Inch);
        for (var mm = 0.1; mm < 3000; mm *= 1.07)
        {
            var told = QuantityText.Parse(QuantityText.FormatLimit(mm / 1000, Millimetre, orMore))!.Value.Si * 1000;
            var off = orMore ? told - mm : mm - told;
            Assert.InRange(off, -1e-6, mm < 25.4 ? 0.0254001 : mm < 2540 ? 0.254001 : 2.54001); // one step of the last digit
        }
    }

    [Fact] // the sixty-fourths of a decimal equivalent chart: 1/64 = 0.015625 in, and so on
    public void Every_sixty_fourth_is_its_fraction_in_lowest_terms()
    {
        for (var n = 1; n < 64; n++)
        {
            var divisor = (int)System.Numerics.BigInteger.GreatestCommonDivisor(n, 64);
            var fraction = string.Create(CultureInfo.InvariantCulture, $"{n / divisor}/{64 / divisor} in");
            var si = n * 0.015625 * 25.4 / 1000;

            Assert.Equal(fraction, Lengths.Fraction(si, orMore: true));
            Assert.Equal(fraction, Lengths.Fraction(si, orMore: false));
            Assert.Equal("2 " + fraction, Lengths.Fraction(si + 0.0508, orMore: true));
        }
    }

    [Theory]
    [InlineData(143, true, "5 41/64 in")] // 5.62992 x 64 = 360.3: 361 = 5 41/64, 143.28 mm
    [InlineData(143, false, "5 5/8 in")] // 360 = 5 40/64, 142.875 mm
    [InlineData(3.9, true, "5/32 in")] // 9.83 sixty-fourths: 10, 3.97 mm
    [InlineData(3.9, false, "9/64 in")] // 9, 3.57 mm
    [InlineData(25.4, true, "1 in")]
    [InlineData(25.3, true, "1 in")]
    [InlineData(0.1, false, "0 in")]
    public void A_hole_is_rounded_to_the_side_that_keeps_it(double mm, bool orMore, string told) =>
        Assert.Equal(told, Lengths.Fraction(mm / 1000, orMore));

    [Fact]
    public void What_was_asked_for_goes_before_what_a_build_says_and_ends_with_its_scope()
    {
        using (Lengths.OfBuild(LengthUnits.Inch))
        {
            Assert.Equal(LengthUnits.Inch, Lengths.Told);
            using (Lengths.Asked(LengthUnits.Millimetre))
                Assert.Equal(LengthUnits.Millimetre, Lengths.Told);
            Assert.Equal(LengthUnits.Inch, Lengths.Told);
        }
        Assert.Equal(LengthUnits.Millimetre, Lengths.Told);
    }
}
