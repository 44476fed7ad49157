using FitCheck.Physics.Acoustics;
using FitCheck.Physics.Electrical.Loads;
using FitCheck.Physics.Electrical.Networks;
using Xunit;

namespace FitCheck.Tests.Physics.Electrical;

/// <summary>Drivers and voice coils one behind the other, against Kirchhoff's laws worked by hand.</summary>
public sealed class SeriesTests
{
    [Fact]
    public void Two_in_series_add_up_and_share_the_voltage_by_their_resistance()
    {
        var state = Solved(inSeries: 2, Resistive(4), Resistive(8));
        Assert.Equal(12, state.Ohm, 1e-9); // 4 + 8
        Assert.Equal(1.0 / 3, state.Drivers[0].Transfer.Magnitude, 1e-9); // 4 / 12
        Assert.Equal(2.0 / 3, state.Drivers[1].Transfer.Magnitude, 1e-9); // 8 / 12
    }

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void What_lies_across_one_of_two_in_series_lies_across_that_one_alone(bool isFirst)
    {
        var padded = Resistive(4) with { Elements = [LadderElement.Across(resistance: 4)] };
        var state = isFirst ? Solved(2, padded, Resistive(4)) : Solved(2, Resistive(4), padded);
        Assert.Equal(6, state.Ohm, 1e-9); // 4 ∥ 4 = 2, and 4
        Assert.Equal(2.0 / 6, state.Drivers[isFirst ? 0 : 1].Transfer.Magnitude, 1e-9);
        Assert.Equal(4.0 / 6, state.Drivers[isFirst ? 1 : 0].Transfer.Magnitude, 1e-9);
    }

    [Fact]
    public void Each_has_a_wire_of_its_own_in_series_too() =>
        Assert.Equal(9, Solved(2, Resistive(4) with { WireResistance = 0.4 }, Resistive(4) with { WireResistance = 0.6 }).Ohm, 1e-9);

    [Fact]
    public void Others_lie_across_all_of_those_in_series()
    {
        var state = Solved(inSeries: 2, Resistive(4), Resistive(4), Resistive(8));
        Assert.Equal(4, state.Ohm, 1e-9); // (4 + 4) ∥ 8
        Assert.Equal(1, state.Drivers[2].Transfer.Magnitude, 1e-9);
    }

    [Fact]
    public void Three_in_series_are_three_times_one() => Assert.Equal(12, Solved(3, Resistive(4), Resistive(4), Resistive(4)).Ohm, 1e-9);

    // Coils of one turn count on one former share their flux, M = L: in series 2·L + 2·M, in parallel (L² − M²) / (2·L − 2·M), which
    // is (L + M) / 2.
    [Theory]
    [InlineData(true, 4.0)]
    [InlineData(false, 1.0)]
    public void Coupled_coils_have_the_inductance_of_the_handbook(bool inSeries, double factor) =>
        Assert.Equal(factor, VoiceCoils.Inductance(inSeries));

    // Qes = 2π·fs·Mms·Re / Bl² (Small, JAES 1972) is one of the motor, however its coils are wired.
    [Fact]
    public void Wiring_leaves_the_electrical_damping_as_it_is()
    {
        double Share(bool inSeries) => VoiceCoils.Resistance(inSeries) / Math.Pow(VoiceCoils.ForceFactor(inSeries), 2);
        Assert.Equal(Share(true), Share(false));
    }

    [Theory]
    [InlineData(true, 4)] // two of 2 ohm one behind the other
    [InlineData(false, 1)] // side by side
    public void Two_coils_of_two_ohm(bool inSeries, double ohm) => Assert.Equal(ohm, 2 * VoiceCoils.Resistance(inSeries));

    private static ChannelBranch Resistive(double ohm) => new(new DriverModel(ohm));

    private static ChannelState Solved(int inSeries, params IReadOnlyList<ChannelBranch> branches) =>
        new ChannelLoad(branches) { InSeries = inSeries }.Assemble().At(100);
}
