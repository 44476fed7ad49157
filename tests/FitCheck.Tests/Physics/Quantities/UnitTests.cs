using FitCheck.Physics.Quantities;
using UnitsNet;
using Xunit;

namespace FitCheck.Tests.Physics.Quantities;

public class UnitTests
{
    /// <summary>Every unit that is not its own SI unit, with what UnitsNet makes of one of it.</summary>
    public static TheoryData<string, double> Factors() => new()
    {
        { "mm", Length.FromMillimeters(1).Meters },
        { "cm", Length.FromCentimeters(1).Meters },
        { "in", Length.FromInches(1).Meters },
        { "mm2", Area.FromSquareMillimeters(1).SquareMeters },
        { "cm2", Area.FromSquareCentimeters(1).SquareMeters },
        { "L", Volume.FromLiters(1).CubicMeters },
        { "cm3", Volume.FromCubicCentimeters(1).CubicMeters },
        { "g", Mass.FromGrams(1).Kilograms },
        { "kHz", Frequency.FromKilohertz(1).Hertz },
        { "mA", ElectricCurrent.FromMilliamperes(1).Amperes },
        { "mV", ElectricPotential.FromMillivolts(1).Volts },
        { "kW", (double)Power.FromKilowatts(1).Watts },
        { "mohm", ElectricResistance.FromMilliohms(1).Ohms },
        { "kohm", ElectricResistance.FromKiloohms(1).Ohms },
        { "pF", ElectricCapacitance.FromPicofarads(1).Farads },
        { "nF", ElectricCapacitance.FromNanofarads(1).Farads },
        { "uF", ElectricCapacitance.FromMicrofarads(1).Farads },
        { "mF", ElectricCapacitance.FromMillifarads(1).Farads },
        { "uH", ElectricInductance.FromMicrohenries(1).Henries },
        { "mH", ElectricInductance.FromMillihenries(1).Henries },
        { "deg", Angle.FromDegrees(1).Radians },
        { "%", Ratio.FromPercent(1).DecimalFractions },
        { "mm/N", Length.FromMillimeters(1).Meters },
        { "um/N", Length.FromMicrometers(1).Meters },
    };

    [Theory]
    [MemberData(nameof(Factors))]
    public void A_unit_is_as_large_as_UnitsNet_says(string symbol, double si)
    {
        var unit = Unit.Find(symbol)!;
        Assert.Equal(1, unit.ToSi(1) / si, 12);
        Assert.Equal(1, unit.FromSi(si), 12);
    }

    [Fact]
    public void Every_other_unit_is_that_of_the_SI() =>
        Assert.Equal(["m", "kg", "Hz", "s", "A", "V", "W", "ohm", "T m", "N/A", "degC", "K", "dB", "dB/octave", "1", "money"],
            Unit.All.Where(u => u.Factor == 1).Select(u => u.Symbol));

    [Fact]
    public void People_read_millimetres_microfarads_and_millihenries()
    {
        Assert.Equal(
            ["mm", "mm2", "L", "g", "Hz", "A", "V", "W", "ohm", "uF", "mH", "T m", "dB", "deg", "1", "money"],
            new[]
            {
                Dimension.Metre, Dimension.SquareMetre, Dimension.CubicMetre, Dimension.Kilogram, Dimension.Hertz, Dimension.Ampere,
                Dimension.Volt, Dimension.Watt,
                Dimension.Ohm, Dimension.Farad, Dimension.Henry, Dimension.ForceFactor, Dimension.Decibel, Dimension.Radian, Dimension.One,
                Dimension.Currency,
            }.Select(d => Unit.DisplayFor(d)!.Symbol));
        Assert.Null(Unit.DisplayFor(new Dimension(Length: 1, Time: -1)));
    }

    [Fact]
    public void An_unknown_symbol_is_no_unit() => Assert.Null(Unit.Find("MM"));
}
