using FitCheck.Physics.Quantities;
using Xunit;

namespace FitCheck.Tests.Physics.Quantities;

/// <summary>
/// Figures as people write them. Expected values by hand; an inch is 25.4 mm exactly (international yard and pound agreement, 1959).
/// </summary>
public class QuantityTextTests
{
    [Theory]
    [InlineData("65 mm", 0.065)]
    [InlineData("  65   mm ", 0.065)]
    [InlineData("65mm", 0.065)]
    [InlineData("-3.5 mm", -0.0035)]
    [InlineData("2.56 in", 0.065024)] // 2.56 · 25.4 = 65.024
    [InlineData("9/16 in", 0.0142875)] // 0.5625 · 25.4 = 14.2875
    [InlineData("2 9/16 in", 0.0650875)] // 2.5625 · 25.4 = 65.0875
    [InlineData("-2 1/2 in", -0.0635)] // minus two and a half
    [InlineData("-1/2 in", -0.0127)]
    [InlineData("2.5 mm2", 2.5e-6)]
    [InlineData("80 %", 0.8)]
    [InlineData("12 dB/octave", 12)]
    public void A_number_with_a_unit_is_read_in_si(string text, double si)
    {
        var quantity = QuantityText.Parse(text)!.Value;
        Assert.Equal(si, quantity.Si, 15);
        Assert.Null(quantity.Tolerance);
        Assert.Null(quantity.Provenance);
    }

    [Theory]
    [InlineData("65 mm ± 0.5 mm", 0.065, 0.0005)]
    [InlineData("65 mm +/- 0.5 mm", 0.065, 0.0005)]
    [InlineData("65 mm ± 0 mm", 0.065, 0)]
    [InlineData("2 9/16 in ± 1/16 in", 0.0650875, 0.0015875)] // 25.4/16 = 1.5875
    [InlineData("4 ohm±200 mohm", 4, 0.2)]
    public void A_tolerance_may_follow_in_a_unit_of_its_own(string text, double si, double tolerance)
    {
        var quantity = QuantityText.Parse(text)!.Value;
        Assert.Equal((si, tolerance), (Math.Round(quantity.Si, 12), Math.Round(quantity.Tolerance!.Value, 12)));
    }

    [Theory]
    [InlineData("65 mm (measured)", Provenance.Measured)]
    [InlineData("65 mm ± 1 mm (datasheet)", Provenance.Datasheet)]
    [InlineData("14 AWG (estimated)", Provenance.Estimated)]
    public void Where_it_comes_from_stands_last(string text, Provenance provenance) =>
        Assert.Equal(provenance, QuantityText.Parse(text)!.Value.Provenance);

    [Theory]
    [InlineData("14 AWG", 2.08)] // ASTM B258: 0.0641 in, 2.08 mm2
    [InlineData("14AWG", 2.08)]
    [InlineData("0 AWG", 53.5)] // ASTM B258: 0.3249 in, 53.5 mm2
    [InlineData("1/0 AWG", 53.5)]
    [InlineData("4/0 AWG", 107)] // ASTM B258: 0.4600 in, 107 mm2
    [InlineData("40 AWG", 0.00501)] // ASTM B258: 0.0031 in, 0.00501 mm2
    public void A_gauge_is_an_area(string text, double squareMillimetres)
    {
        var quantity = QuantityText.Parse(text)!.Value;
        Assert.Equal("mm2", quantity.Unit.Symbol);
        Assert.InRange(quantity.Written / squareMillimetres, 0.995, 1.005);
    }

    [Theory]
    [InlineData("")]
    [InlineData("mm")]
    [InlineData("65")]
    [InlineData("65 MM")]
    [InlineData("65 1")]
    [InlineData("65 mm 3")]
    [InlineData("1e3 mm")]
    [InlineData("1 2 mm")]
    [InlineData("1 2 3 mm")]
    [InlineData("1/2 3 mm")]
    [InlineData("1/0 mm")]
    [InlineData("/2 mm")]
    [InlineData("1/ mm")]
    [InlineData("1/-2 mm")]
    [InlineData("- 5 mm")]
    [InlineData("1.2.3 mm")]
    [InlineData("NaN mm")]
    [InlineData("65 mm ±")]
    [InlineData("65 mm ± 1")]
    [InlineData("65 mm ± -1 mm")]
    [InlineData("65 mm ± 1 ohm")]
    [InlineData("65 ± 1 mm")]
    [InlineData("65 mm (guessed)")]
    [InlineData("41 AWG")]
    [InlineData("-1 AWG")]
    [InlineData("x/0 AWG")]
    [InlineData("AWG")]
    public void Anything_else_is_no_quantity(string text) => Assert.Null(QuantityText.Parse(text));

    [Fact]
    public void A_number_too_large_to_keep_is_none() => Assert.Null(QuantityText.Parse(new string('9', 400) + " mm"));

    [Theory]
    [InlineData(0.065, "65 mm")]
    [InlineData(0.0712, "71.2 mm")]
    [InlineData(0.00225, "2.3 mm")] // half away from zero
    [InlineData(-0.00225, "-2.3 mm")]
    [InlineData(-1e-9, "0 mm")] // never -0
    public void A_length_is_shown_in_tenths_of_a_millimetre(double metres, string text) =>
        Assert.Equal(text, QuantityText.Format(metres, Dimension.Metre));

    [Theory]
    [InlineData(80, "80 Hz")]
    [InlineData(9999, "9999 Hz")]
    [InlineData(10_000, "10 kHz")]
    [InlineData(-12_345, "-12.35 kHz")]
    public void Ten_thousand_hertz_are_kilohertz(double hertz, string text) =>
        Assert.Equal(text, QuantityText.Format(hertz, Dimension.Hertz));

    [Theory]
    [InlineData(1.999, "1999 mm")]
    [InlineData(2, "2 m")]
    [InlineData(-9.9, "-9.9 m")]
    public void The_way_of_a_cable_is_told_in_metres(double metres, string text) =>
        Assert.Equal(text, QuantityText.Format(metres, Dimension.Metre));

    [Fact]
    public void Every_dimension_has_its_own_way()
    {
        Assert.Equal("4.7 uF", QuantityText.Format(4.7e-6, Dimension.Farad));
        Assert.Equal("0.33 mH", QuantityText.Format(0.33e-3, Dimension.Henry));
        Assert.Equal("20000 ohm", QuantityText.Format(20_000, Dimension.Ohm));
        Assert.Equal("1.25", QuantityText.Format(1.25, Dimension.One));
        Assert.Equal("80 %", QuantityText.Format(0.8, Unit.Find("%")!));
        Assert.Equal("3.457 m·s^-1", QuantityText.Format(3.45678, new Dimension(Length: 1, Time: -1)));
        Assert.Equal("2.563 in", new Quantity(0.0650875, Unit.Find("in")!).ToString()); // 65.0875/25.4 = 2.5625
    }

    [Fact]
    public void A_number_beyond_decimals_is_shown_whole() => Assert.Equal("1" + new string('0', 30), QuantityText.Number(1e30, 1));

    [Theory]
    [InlineData("-0")]
    [InlineData("-0.0")]
    [InlineData("-0/4")]
    public void Minus_nothing_is_nothing(string text) =>
        // all bits of +0 are 0, IEEE 754-2019, clause 3.4
        Assert.Equal(0L, BitConverter.DoubleToInt64Bits(QuantityText.ParseNumber(text)!.Value));
}
