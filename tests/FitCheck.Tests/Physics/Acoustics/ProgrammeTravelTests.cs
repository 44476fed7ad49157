using FitCheck.Physics.Acoustics;
using FitCheck.Physics.Electrical.Filters;
using Xunit;

namespace FitCheck.Tests.Physics.Acoustics;

public class ProgrammeTravelTests
{
    private const double Mass = 13.3e-3;
    private static readonly DriverModel Woofer = new(3.3, 0.37e-3, 56, 4.34, 0.85);
    private static readonly ProgrammeTravel Travel = ProgrammeTravel.Of(Woofer, Mass, _ => 1)!;

    [Fact]
    public void Open_travel_agrees_with_a_sum_over_mechanical_impedances() =>
        // Outside: F/|k − mω² + jωr| with motional feedback in the electrical loop, nine frequencies a band, summed by a script of its own:
        // 4.679 mm.
        Assert.Equal(4.679e-3, Travel.Peak(15.5, _ => 1), 0.02e-3);

    [Fact]
    public void A_high_pass_of_80_Hz_halves_it() => // the same script with a Butterworth high-pass of second order: 2.236 mm
        Assert.Equal(2.236e-3, Travel.Peak(15.5, hz => ActiveFilter.ButterworthHighPass(hz, 80, 2)), 0.015e-3);

    [Fact]
    public void A_low_pass_of_80_Hz_leaves_less() => // the same script, high-pass and low-pass of second order at 80 Hz: 1.593 mm
        Assert.Equal(1.593e-3, Travel.Peak(15.5,
            hz => ActiveFilter.ButterworthHighPass(hz, 80, 2) * ActiveFilter.ButterworthLowPass(hz, 80, 2)), 0.015e-3);

    [Fact]
    public void The_output_of_a_subwoofer_is_turned_up_for_the_bass() => // the same script, level set for 80 Hz at 24 dB/octave
        Assert.Equal(12.44e-3, ProgrammeTravel.Of(Woofer, Mass, _ => 1, forBass: true)!.Peak(15.5,
            hz => ActiveFilter.ButterworthLowPass(hz, 80, 4)), 0.03e-3);

    // Whoever takes something away from a programme, at whatever corner and slope, leaves the cone no more to do.
    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void A_narrower_band_never_asks_more_travel(bool forBass)
    {
        var travel = ProgrammeTravel.Of(Woofer, Mass, _ => 1, forBass)!;
        var dice = new Random(20);
        for (var i = 0; i < 500; i++)
        {
            double high = Corner(20, 1000), low = Corner(20, 20_000);
            var (orderHigh, orderLow) = (dice.Next(1, 9), dice.Next(1, 9));
            var wide = Peak(high, low);
            Assert.True(Peak(high * (1 + dice.NextDouble()), low) <= wide, $"high-pass above {high:0} Hz, order {orderHigh}");
            Assert.True(Peak(high, low / (1 + dice.NextDouble())) <= wide, $"low-pass below {low:0} Hz, order {orderLow}");

            double Peak(double above, double below) => travel.Peak(15.5, hz =>
                ActiveFilter.ButterworthHighPass(hz, above, orderHigh) * ActiveFilter.ButterworthLowPass(hz, below, orderLow));
        }

        double Corner(double from, double to) => from * Math.Pow(to / from, dice.NextDouble());
    }

    [Fact]
    public void The_lowest_high_pass_just_keeps_the_limit()
    {
        var corner = Travel.LowestHighPass(15.5, 3e-3, 2, _ => 1)!.Value;

        Assert.InRange(With(corner), 2.97e-3, 3e-3);
        Assert.True(With(corner * 0.98) > 3e-3);

        static double With(double corner) => Travel.Peak(15.5, hz => ActiveFilter.ButterworthHighPass(hz, corner, 2));
    }

    [Fact]
    public void Small_signals_need_no_high_pass() => Assert.Equal(20, Travel.LowestHighPass(2, 3e-3, 2, _ => 1));

    [Fact]
    public void A_limit_that_no_filter_keeps_is_told() => Assert.Null(Travel.LowestHighPass(200, 0.1e-3, 1, _ => 1));

    [Fact]
    public void A_driver_without_parameters_has_no_travel() => Assert.Null(ProgrammeTravel.Of(new DriverModel(4), Mass, _ => 1));

    [Theory]
    [InlineData(31.62, -39.4)] // IEC 61672-1, table 3, from memory
    [InlineData(125.9, -16.1)] // IEC 61672-1, table 3, from memory
    [InlineData(1000, 0)] // IEC 61672-1, table 3, from memory
    [InlineData(3981, 1.0)] // IEC 61672-1, table 3, from memory
    [InlineData(15_849, -6.6)] // IEC 61672-1, table 3, from memory
    public void Weighting_A(double hz, double level) => Assert.Equal(level, AWeighting.Db(hz), 0.1);
}
