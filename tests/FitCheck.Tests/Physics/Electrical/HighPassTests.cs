using CsCheck;
using FitCheck.Physics.Acoustics;
using FitCheck.Physics.Electrical.Filters;
using FitCheck.Physics.Electrical.Loads;
using FitCheck.Physics.Electrical.Networks;
using FitCheck.Physics.Numerics;
using Xunit;

namespace FitCheck.Tests.Physics.Electrical;

public class HighPassTests
{
    private static readonly IReadOnlyList<double> Grid = FrequencyGrid.Audio;

    [Theory]
    [InlineData(1, 5.576)] // 10·lg((1 + 8²)/(1 + 2²))/2: a first-order filter between corner/2 and corner/8
    [InlineData(2, 11.907)] // 10·lg((1 + 8⁴)/(1 + 2⁴))/2
    [InlineData(3, 17.996)] // 10·lg((1 + 8⁶)/(1 + 2⁶))/2
    [InlineData(4, 24.068)] // 10·lg((1 + 8⁸)/(1 + 2⁸))/2
    public void Corner_and_slope_of_a_Butterworth_filter(int order, double slope)
    {
        var found = Of(hz => ActiveFilter.ButterworthHighPass(hz, 1000, order));
        Assert.Equal(1000, found.CornerHz!.Value, order == 1 ? 12.0 : 2.0); // a first-order filter still loses 0.03 dB in the passband
        Assert.Equal(slope, found.SlopeDbPerOctave!.Value, 0.07);
        Assert.Equal(0, found.PeakDb, 0.05);
    }

    [Fact]
    public void A_capacitor_has_its_corner_where_its_reactance_is_the_load()
    {
        var sweep = new ChannelLoad([new ChannelBranch(new DriverModel(4), [LadderElement.InLine(capacitance: 100e-6)])]).Sweep();
        Assert.Equal(1 / (2 * Math.PI * 4 * 100e-6), HighPass.Of(Grid, sweep.LevelDb(0)).CornerHz!.Value, 2.0);
    }

    [Fact]
    public void A_level_that_never_falls_is_full_range()
    {
        var found = Of(_ => 0.5);
        Assert.True(found.IsFullRange);
        Assert.Null(found.SlopeDbPerOctave);
        Assert.Equal(-6.0206, found.PassbandDb, 1e-3);
    }

    [Fact]
    public void A_fall_of_two_decibels_is_still_full_range() => Assert.True(Of(hz => hz < 1000 ? 0.8 : 1).IsFullRange);

    [Fact]
    // the grid's first two are 20 and 20.58 Hz
    public void A_fall_at_the_lowest_frequency_alone_is_seen() => Assert.InRange(Of(hz => hz < 20.2 ? 0.1 : 1).CornerHz!.Value, 20, 20.6);

    [Fact]
    public void A_corner_close_to_the_lowest_frequency_has_no_slope()
    {
        var found = Of(hz => ActiveFilter.ButterworthHighPass(hz, 30, 2));
        Assert.Equal(30, found.CornerHz!.Value, 0.5);
        Assert.Null(found.SlopeDbPerOctave); // an octave below it nothing is looked at
    }

    [Fact]
    public void Between_few_points_levels_run_straight_over_log_frequency()
    {
        // By hand: 8 to 12 kHz mean 1 dB, 12 to 16 kHz (at 16 kHz -2·ln(16/12)/ln(20/12) = -1.1263) mean -0.5632 dB, weighted by ln 1.5 and
        // ln 1.3333 over ln 2: 0.3512 dB. Corner at 0.3512 - 3.0103 = -2.6591 dB, 2.6591/20 of a decade below 1 kHz: 736.3 Hz. Levels at
        // half and an eighth of it: -20 + 20·lg 3.6815 = -8.679 and -40 + 20·ln(92.04/20)/ln 5 = -21.031 dB; 12.352 dB over two octaves.
        var found = HighPass.Of([20, 100, 1000, 8000, 12_000, 20_000], [-40, -20, 0, 2, 0, -2]);
        Assert.Equal(0.3512, found.PassbandDb, 1e-4);
        Assert.Equal(736.3, found.CornerHz!.Value, 0.05);
        Assert.Equal(6.176, found.SlopeDbPerOctave!.Value, 1e-3);
        Assert.Equal((1.6488, 8000), (Math.Round(found.PeakDb, 4), found.PeakHz));
    }

    [Fact]
    public void Levels_without_their_frequencies_are_refused()
    {
        Assert.Throws<ArgumentException>(() => HighPass.Of([100, 1000], [0]));
        Assert.Throws<ArgumentException>(() => HighPass.Of([100], [0]));
    }

    [Fact]
    public void A_grid_has_equal_ratios_and_both_its_ends()
    {
        Assert.Equal([10, 100, 1000], FrequencyGrid.Log(10, 1000, 3), (a, b) => Math.Abs(a - b) < 1e-9);
        Assert.Equal(Math.Pow(10, 1 / 80.0), Grid[101] / Grid[100], 1e-9);
        Assert.Throws<ArgumentOutOfRangeException>(() => FrequencyGrid.Log(10, 1000, 1));
        Assert.Throws<ArgumentOutOfRangeException>(() => FrequencyGrid.Log(0, 1000, 3));
        Assert.Throws<ArgumentOutOfRangeException>(() => FrequencyGrid.Log(1000, 1000, 3));
    }

    [Fact]
    public void The_highest_corner_counts() =>
        // Down below 4 kHz, up again below 500 Hz: a dip in between must not hide that the tweeter starts at 4 kHz.
        Assert.InRange(Of(hz => hz is > 500 and < 4000 ? 0.1 : 1).CornerHz!.Value, 3800, 4100);

    [Fact]
    public void A_resonance_shows_as_a_peak()
    {
        // Second order with Q = 2: highest at fc/√(1 − 1/(2Q²)), by Q/√(1 − 1/(4Q²)).
        var found = Of(hz =>
        {
            var x = hz / 2000;
            return x * x / Math.Sqrt(Math.Pow(1 - (x * x), 2) + (x * x / 4));
        });
        Assert.Equal(20 * Math.Log10(2 / Math.Sqrt(1 - (1 / 16.0))) - found.PassbandDb, found.PeakDb, 0.02);
        Assert.Equal(2000 / Math.Sqrt(1 - (1 / 8.0)), found.PeakHz, 40.0);
    }

    [Fact]
    public void Silence_below_a_frequency_has_a_corner_and_no_undefined_number()
    {
        var found = Of(hz => hz < 1000 ? 0 : 1);
        Assert.InRange(found.CornerHz!.Value, 980, 1030);
        Assert.False(double.IsNaN(found.PassbandDb));
    }

    [Fact]
    public void A_smaller_capacitor_never_lowers_the_corner() =>
        Gen.Select(RandomNetworks.Logarithmic(4e-6, 1e-4), RandomNetworks.Logarithmic(1.1, 4)).Sample((farad, ratio) =>
            Corner(farad / ratio) >= Corner(farad));

    [Fact]
    public void A_rolled_off_ladder_falls_ever_further()
    {
        LadderElement[] ladder = [LadderElement.InLine(capacitance: 8.8419e-6), LadderElement.Across(inductance: 0.15915e-3),
            LadderElement.InLine(capacitance: 26.526e-6)];
        var levels = new ChannelLoad([new ChannelBranch(new DriverModel(4), ladder)]).Sweep().LevelDb(0);
        for (var i = 1; i < levels.Length; i++)
            Assert.True(levels[i] >= levels[i - 1] - 1e-9, $"at {Grid[i]:F0} Hz");
    }

    [Theory]
    [InlineData(100, 1, 0.894427)] // 1/√(1 + (100/200)²)
    [InlineData(400, 2, 0.242536)] // 1/√(1 + 2⁴)
    public void Butterworth_low_pass(double hz, int order, double ratio) =>
        Assert.Equal(ratio, ActiveFilter.ButterworthLowPass(hz, 200, order), 1e-6);

    [Theory]
    [InlineData(200, 4, 0.5)] // −6.02 dB at the corner, Linkwitz 1976
    [InlineData(400, 4, 0.0588235)] // 1/(1 + 2⁴)
    [InlineData(100, 2, 0.8)] // 1/(1 + 0.5²)
    public void Linkwitz_Riley_low_pass(double hz, int order, double ratio)
    {
        Assert.Equal(ratio, ActiveFilter.LinkwitzRileyLowPass(hz, 200, order), 1e-6);
        Assert.Equal(ratio, ActiveFilter.LinkwitzRileyHighPass(200 * 200 / hz, 200, order), 1e-6); // mirrored about the corner
    }

    [Fact]
    public void Orders_that_cannot_be_are_refused()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => ActiveFilter.ButterworthLowPass(100, 200, 0));
        Assert.Throws<ArgumentOutOfRangeException>(() => ActiveFilter.LinkwitzRileyLowPass(100, 200, 3));
        Assert.Throws<ArgumentOutOfRangeException>(() => ActiveFilter.LinkwitzRileyLowPass(100, 200, 1));
        Assert.Throws<ArgumentOutOfRangeException>(() => ActiveFilter.LinkwitzRileyLowPass(100, 200, 0));
    }

    [Theory]
    [InlineData(6, 1)]
    [InlineData(12, 2)]
    [InlineData(18, 3)]
    [InlineData(24, 4)]
    [InlineData(48, 8)]
    [InlineData(2, 1)]
    public void Order_of_a_slope(double slope, int order) => Assert.Equal(order, ActiveFilter.OrderOfSlope(slope));

    private static double Corner(double farad) =>
        HighPass.Of(Grid,
            new ChannelLoad([new ChannelBranch(new DriverModel(4), [LadderElement.InLine(capacitance: farad)])]).Sweep()
                .LevelDb(0)).CornerHz!.Value;

    private static HighPass Of(Func<double, double> magnitude) => HighPass.Of(Grid, [.. Grid.Select(hz => 20 * Math.Log10(magnitude(hz)))]);
}
