using FitCheck.Physics.Electrical.Programme;
using Xunit;

namespace FitCheck.Tests.Physics.Electrical;

/// <summary>What an output can give into a load above those that its sheet states, worked by hand: V² = P·R.</summary>
public sealed class BeyondRatingsTests
{
    [Theory]
    [InlineData(4, 70, 140)] // 140 W into 2 ohm are 16.7 V; into 4 ohm at least that, 70 W, and never more power than it has: 140 W
    [InlineData(8, 35, 140)]
    [InlineData(2, 140, 140)] // as rated
    [InlineData(1, 70, 70)] // below it the current stays
    public void A_single_rating_holds_the_voltage_at_least_and_the_power_at_most(double load, double least, double most)
    {
        var output = new AmplifierOutput([new(140, 2)]);
        Assert.Equal(least, Math.Pow(output.VoltsInto(load), 2) / load, 1e-9);
        Assert.Equal(most, Math.Pow(output.MostVoltsInto(load), 2) / load, 1e-9);
    }

    [Fact]
    public void Two_ratings_tell_how_the_voltage_rises()
    {
        // From 2 to 4 ohm 160 to 200 V²: a quarter more; into 8 ohm at most a quarter more again, 250 V² / 8 ohm.
        Assert.Equal(31.25, Math.Pow(new AmplifierOutput([new(80, 2), new(50, 4)]).MostVoltsInto(8), 2) / 8, 1e-9);
    }

    [Fact]
    public void A_stiff_supply_leaves_nothing_open()
    {
        var output = new AmplifierOutput([new(100, 2), new(50, 4)]); // 14.1 V into both
        Assert.Equal(output.VoltsInto(8), output.MostVoltsInto(8), 1e-9);
    }
}
