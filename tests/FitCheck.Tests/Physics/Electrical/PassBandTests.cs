using System.Numerics;
using FitCheck.Physics.Acoustics;
using FitCheck.Physics.Electrical.Filters;
using FitCheck.Physics.Electrical.Loads;
using FitCheck.Physics.Electrical.Networks;
using FitCheck.Physics.Numerics;
using Xunit;

namespace FitCheck.Tests.Physics.Electrical;

public class PassBandTests
{
    private static readonly IReadOnlyList<double> Grid = FrequencyGrid.Audio;

    [Theory]
    [InlineData(80, 3000)]
    [InlineData(30, 120)]
    [InlineData(3500, 12_000)]
    public void A_band_between_two_Butterworth_filters_ends_at_their_corners(double high, double low)
    {
        var found = Between(high, low, order: 4, home: Math.Sqrt(high * low)); // -3.01 dB at the corner, by definition

        Assert.Equal(high, found.LowHz, 0.02 * high);
        Assert.Equal(low, found.HighHz, 0.02 * low);
        Assert.Equal(0, found.PeakDb, 0.1);
    }

    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(4)]
    public void Both_at_one_corner_leave_a_quarter_of_the_power(int order) => // 1/2 times 1/2
        Assert.Equal(-6.02, Between(200, 200, order, home: 200).PeakDb, 0.05);

    [Fact]
    public void A_high_pass_far_above_the_low_pass_leaves_next_to_nothing() =>
        // 400 Hz in the middle of 80 and 2000 Hz, where each is 10 lg(1 + 5^4) = 27.97 dB down
        Assert.Equal(-55.9, Between(2000, 80, order: 2, home: 300).PeakDb, 0.1);

    [Fact]
    public void Without_filters_all_is_left()
    {
        var found = PassBand.Of(Grid, [.. Grid.Select(_ => 0.0)], 300);

        Assert.Equal((20.0, 20_000.0), (found.LowHz, found.HighHz));
    }

    [Fact]
    public void A_resonance_beyond_the_end_is_no_band()
    {
        // Down from 1 kHz to 3 kHz, and up again at 6 kHz: the band of a woofer ends at 1 kHz.
        var found = PassBand.Of(Grid, [.. Grid.Select(hz => hz is > 1000 and < 3000 ? -10.0 : 0)], homeHz: 300);

        Assert.InRange(found.HighHz, 980, 1040);
        Assert.Equal(20, found.LowHz);
    }

    [Fact]
    public void A_pad_and_the_wire_of_a_coil_take_the_same_off_everywhere()
    {
        // 4 ohm across 6.8 ohm are 2.519 ohm; behind 1.5 ohm of the pad and 0.3 ohm of the coil 2.519/4.319: -4.68 dB.
        var pad = new ChannelBranch(new DriverModel(4), [LadderElement.InLine(resistance: 0.3, inductance: 0.3e-3),
            LadderElement.Across(capacitance: 10e-6), LadderElement.InLine(resistance: 1.5), LadderElement.Across(resistance: 6.8)]);

        Assert.Equal(-4.68, ResistiveLoss.Db([], pad), 0.01);
        Assert.Equal(-4.68 - 1.81, ResistiveLoss.Db([LadderElement.InLine(resistance: 1)], pad), 0.01); // 4.319/5.319: -1.81 dB
    }

    [Fact]
    public void Each_rung_bears_its_share_of_the_voltage()
    {
        var capacitor = LadderElement.InLine(capacitance: 10e-6);
        var resistor = LadderElement.InLine(resistance: 1);
        var again = LadderElement.InLine(resistance: 1); // equal, but another one
        var network = new ChannelLoad([new ChannelBranch(new DriverModel(2), [capacitor, resistor, again])]).Assemble();
        // 10 uF are 4 ohm, before 4 ohm; the last rung is in no network.
        var across = network.Across([capacitor, again, LadderElement.InLine(resistance: 1)], 1 / (2 * Math.PI * 4 * 10e-6));

        Assert.Equal(Math.Sqrt(0.5), Complex.Abs(across[0]!.Value), 1e-6);
        Assert.Equal(Math.Sqrt(0.5) / 4, Complex.Abs(across[1]!.Value), 1e-6);
        Assert.Null(across[2]);
    }

    private static PassBand Between(double high, double low, int order, double home) => PassBand.Of(Grid,
        [.. Grid.Select(hz => 20 * Math.Log10(
            ActiveFilter.ButterworthHighPass(hz, high, order) * ActiveFilter.ButterworthLowPass(hz, low, order)))], home);
}
