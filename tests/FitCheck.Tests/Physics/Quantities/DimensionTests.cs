using FitCheck.Physics.Quantities;
using Xunit;

namespace FitCheck.Tests.Physics.Quantities;

/// <summary>Dimensions as the SI brochure (BIPM, 9th edition, table 4) derives them.</summary>
public class DimensionTests
{
    private static readonly Dimension Second = new(Time: 1);

    /// <summary>One of each base quantity alone.</summary>
    public static TheoryData<Dimension, string> Bases() => new()
    {
        { new Dimension(Length: 2), "mm2" },
        { new Dimension(Mass: 2), "kg^2" },
        { new Dimension(Time: 2), "s^2" },
        { new Dimension(Current: 2), "A^2" },
        { new Dimension(Temperature: 2), "K^2" },
        { new Dimension(Level: 2), "dB^2" },
        { new Dimension(Octave: 1), "octave" },
        { new Dimension(Angle: 2), "rad^2" },
        { new Dimension(Money: 2), "money^2" },
    };

    [Fact]
    public void Derived_dimensions_multiply_out()
    {
        Assert.Equal(Dimension.Watt, Dimension.Volt * Dimension.Ampere); // W = V·A
        Assert.Equal(Dimension.Ohm, Dimension.Volt / Dimension.Ampere); // ohm = V/A
        Assert.Equal(Second, Dimension.Farad * Dimension.Ohm); // F = s/ohm
        Assert.Equal(Second, Dimension.Henry / Dimension.Ohm); // H = ohm·s
        Assert.Equal(Dimension.One / Second, Dimension.Hertz); // Hz = 1/s
        Assert.Equal(Dimension.Watt, Dimension.ForceFactor * Dimension.Ampere * Dimension.Metre / Second); // T·m = N/A, and W = N·m/s
        Assert.Equal(Dimension.Metre / (Dimension.ForceFactor * Dimension.Ampere), Dimension.Compliance); // m/N
        Assert.Equal(Dimension.CubicMetre, Dimension.Multiply(Dimension.SquareMetre, Dimension.Metre));
        Assert.Equal(Dimension.Metre, Dimension.Divide(Dimension.SquareMetre, Dimension.Metre));
        Assert.Equal(Dimension.Decibel, Dimension.Slope * new Dimension(Octave: 1));
    }

    [Theory]
    [MemberData(nameof(Bases))]
    public void Each_base_quantity_counts(Dimension one, string name)
    {
        Assert.Equal(name, one.ToString());
        Assert.Equal(one, one * Dimension.One);
        Assert.NotEqual(one, one * one);
        Assert.Equal(Dimension.One, one / one);
        Assert.Equal(one.GetHashCode(), (one * one / one).GetHashCode());
    }

    [Fact]
    public void No_two_base_quantities_are_the_same_or_have_the_same_hash()
    {
        Dimension[] all = [.. Bases().Select(row => (Dimension)row[0])];
        Assert.Equal(all.Length, all.Distinct().Count());
        Assert.Equal(all.Length, all.Select(d => d.GetHashCode()).Distinct().Count());
    }

    [Fact]
    public void It_is_told_in_the_unit_that_people_read_or_in_base_units()
    {
        Assert.Equal("mm", Dimension.Metre.ToString());
        Assert.Equal("a pure number", Dimension.One.ToString());
        Assert.Equal("m·kg·s·A·K·dB·octave·rad·money", new Dimension(1, 1, 1, 1, 1, 1, 1, 1, 1).ToString());
        Assert.Equal("m^3·kg^-1", new Dimension(Length: 3, Mass: -1).ToString());
    }

    [Fact]
    public void An_exponent_stops_where_its_number_ends()
    {
        var (many, few) = (Dimension.One, Dimension.One);
        for (var i = 0; i < 300; i++)
            (many, few) = (many * Dimension.Metre, few / Dimension.Metre);
        Assert.Equal((sbyte.MaxValue, sbyte.MinValue), (many.Length, few.Length));
    }
}
