using CsCheck;
using FitCheck.Physics.Acoustics;
using FitCheck.Physics.Electrical.Cables;
using FitCheck.Physics.Electrical.Filters;
using FitCheck.Physics.Electrical.Loads;
using FitCheck.Physics.Electrical.Programme;
using FitCheck.Physics.Numerics;
using Xunit;

namespace FitCheck.Tests.Physics.Electrical;

public class PowerTests
{
    private static readonly AmplifierOutput TwoRatings = new([new(50, 4), new(80, 2)]);

    [Theory]
    [InlineData(4, 50)] // as rated
    [InlineData(2, 80)] // as rated
    [InlineData(8, 25)] // voltage-limited: 200 V² / 8 ohm
    [InlineData(1, 40)] // current-limited: 40 A² · 1 ohm
    public void Power_into_a_load(double load, double watts) => Assert.Equal(watts, TwoRatings.PowerInto(load), 1e-9);

    [Fact]
    public void Between_ratings_the_voltage_lies_between_theirs() =>
        Assert.Equal((Math.Sqrt(200) + Math.Sqrt(160)) / 2, TwoRatings.VoltsInto(Math.Sqrt(8)), 1e-9); // geometric middle of 2 and 4 ohm

    [Fact]
    public void Of_two_ratings_for_one_load_the_lower_counts() =>
        Assert.Equal(45, new AmplifierOutput([new(50, 4), new(45, 4)]).PowerInto(4), 1e-9);

    [Fact]
    public void The_order_of_ratings_does_not_count()
    {
        PowerRating[] ratings = [new(80, 2), new(30, 8), new(50, 4), new(60, 4)]; // 12.65, 15.49 and 14.14 V
        AmplifierOutput[] outputs = [new(ratings), new(ratings.Reverse()), new([ratings[3], ratings[2], ratings[1], ratings[0]])];
        Assert.All(outputs, output => Assert.Equal(
            [40, 80, 50, 30, 15], // √(P·R) holds above 8 ohm, the current of 2 ohm below
            new[] { 1.0, 2, 4, 8, 16 }.Select(output.PowerInto), (a, b) => Math.Abs(a - b) < 1e-9));
    }

    [Fact]
    public void A_load_that_cannot_be_is_refused()
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => TwoRatings.VoltsInto(0));
        Assert.Throws<ArgumentException>(() => new AmplifierOutput([new(50, 0)]));
        Assert.Throws<ArgumentException>(() => CombinedLoad.Parallel());
        Assert.Throws<ArgumentException>(() => CombinedLoad.Series());
        Assert.Throws<ArgumentOutOfRangeException>(() => LPad.For(0, 3));
        Assert.Throws<ArgumentOutOfRangeException>(() => LPad.For(4, -1));
    }

    [Fact]
    public void Voltage_never_falls_with_the_load() => Gen.Select(RandomNetworks.Logarithmic(0.5, 16), RandomNetworks.Logarithmic(1, 4))
        .Sample((load, ratio) => TwoRatings.VoltsInto(load * ratio) >= TwoRatings.VoltsInto(load) - 1e-12);

    [Fact]
    public void Ratings_that_cannot_be_are_refused()
    {
        Assert.Throws<ArgumentException>(() => new AmplifierOutput([]));
        Assert.Throws<ArgumentException>(() => new AmplifierOutput([new(0, 4)]));
        Assert.Throws<ArgumentException>(() => new AmplifierOutput([new(50, double.NaN)]));
    }

    [Fact]
    public void A_supply_below_the_drop_gives_nothing() => Assert.Equal(0, AmplifierOutput.SineCeiling(1, 2, 4));

    [Fact]
    public void Peak_dissipation_is_that_of_an_ideal_class_B_stage() => Gen.Double[-89, 89].Sample(degrees =>
    {
        // Supply and current of amplitude 1 into |Z| = 1: the device that conducts drops 1 − sin θ. A resistor peaks at 1/4.
        var phi = Math.Abs(degrees) * Math.PI / 180;
        var worst = Enumerable.Range(0, 20_000).Select(i => i * Math.PI / 10_000)
            .Max(theta => (1 - Math.Sin(theta)) * Math.Max(0, Math.Sin(theta - phi)));
        Assert.Equal(0.25 / worst, Epdr.Of(1, degrees), 1e-5);
    }, iter: 30);

    [Fact]
    public void Programme_noise_shares_add_up_to_one()
    {
        Assert.Equal(1, Enumerable.Range(0, ProgrammeNoise.BandDb.Count).Sum(ProgrammeNoise.Share), 1e-12);
        Assert.Equal(1, ProgrammeNoise.Mean(_ => 1), 1e-12);
        Assert.Equal(1, ProgrammeNoise.ShareAbove(10), 1e-12);
        Assert.Equal(0, ProgrammeNoise.ShareAbove(30_000), 1e-12);
    }

    [Fact]
    public void Less_power_lies_above_a_higher_frequency() => Gen.Select(RandomNetworks.Hertz, RandomNetworks.Logarithmic(1, 10))
        .Sample((hz, ratio) => ProgrammeNoise.ShareAbove(hz * ratio) <= ProgrammeNoise.ShareAbove(hz) + 1e-12);

    [Fact]
    public void The_points_of_the_noise_lie_at_equal_ratios_and_stand_for_all_of_it()
    {
        Assert.Equal(93, ProgrammeNoise.Points.Count); // three in each of 31 bands
        Assert.Equal(1, ProgrammeNoise.Points.Sum(p => p.Share), 1e-12);
        Assert.Equal(1000, ProgrammeNoise.Points[(3 * 17) + 1].Hz, 1e-9); // the middle one of the 18th band
        Assert.All(ProgrammeNoise.Points.Zip(ProgrammeNoise.Points.Skip(1)),
            pair => Assert.Equal(Math.Pow(10, 1 / 30.0), pair.Second.Hz / pair.First.Hz, 1e-9));
        Assert.Equal(ProgrammeNoise.Mean(hz => hz), ProgrammeNoise.Points.Sum(p => p.Share * p.Hz), 1e-6);
    }

    [Fact]
    public void A_steep_filter_lets_through_what_lies_above() =>
        // a band edge
        Assert.Equal(ProgrammeNoise.ShareAbove(2818.4),
            ProgrammeNoise.Mean(hz => Math.Pow(ActiveFilter.ButterworthHighPass(hz, 2818.4, 60), 2)), 0.002);

    [Fact]
    public void Series_loads_add() => Assert.Equal(8, CombinedLoad.Series(4, 4));

    [Fact]
    public void An_L_pad_keeps_the_load_and_gives_its_attenuation() =>
        Gen.Select(RandomNetworks.Logarithmic(1, 16), Gen.Double[0.1, 20]).Sample((load, db) =>
    {
        var pad = LPad.For(load, db);
        Assert.Equal(load, pad.Input(load), 1e-9 * load);
        Assert.Equal(db, pad.Attenuation(load), 1e-9);
        var shares = pad.PowerShares(load);
        Assert.Equal(1, shares.Series + shares.Shunt + shares.Load, 1e-9);
        Assert.Equal(Math.Pow(10, -db / 10), shares.Load, 1e-9);
        var sweep = new ChannelLoad([new ChannelBranch(new DriverModel(load), pad.Elements)]).Sweep();
        Assert.Equal(-db, sweep.LevelDb(0)[0], 1e-9);
    });

    [Fact]
    public void An_L_pad_for_nothing_is_a_wire()
    {
        var pad = LPad.For(4, 0);
        Assert.Equal((0, double.PositiveInfinity), (pad.Series, pad.Shunt));
        Assert.Equal(0, pad.Attenuation(4), 1e-12);
        Assert.Equal(new LPad(0, double.PositiveInfinity), pad.InE24());
    }

    // By hand: E24 steps by at most 1.1, so each resistor is off by at most 4.9 %; K = 1 + Rs·(1/Rp + 1/Z) then by at most 9.8 % of (K −
    // 1)/K, which at 10 dB is 6.8 %, 0.57 dB.
    [Fact]
    public void A_pad_of_bought_resistors_comes_within_six_tenths_of_a_decibel() =>
        Gen.Select(RandomNetworks.Logarithmic(2, 8), Gen.Double[1, 10])
        .Sample((load, db) => Math.Abs(LPad.For(load, db).InE24().Attenuation(load) - db) < 0.6);

    [Fact]
    public void No_preferred_number_is_nearer() => RandomNetworks.Logarithmic(1e-3, 1e4).Sample(value =>
    {
        var nearest = PreferredNumbers.NearestE24(value);
        return Enumerable.Range(-4, 10).SelectMany(e => PreferredNumbers.E24.Select(s => s * Math.Pow(10, e)))
            .All(other => Math.Abs(Math.Log(other / value)) >= Math.Abs(Math.Log(nearest / value)) - 1e-9);
    });

    [Theory]
    [InlineData(0.82)]
    [InlineData(0.047)]
    [InlineData(470)]
    [InlineData(110)]
    [InlineData(6.8)]
    public void A_preferred_number_is_printed_as_itself(double value) => Assert.Equal(value, PreferredNumbers.NearestE24(value * 1.001));

    [Fact]
    public void A_wire_of_no_resistance_loses_nothing() => Assert.Equal(0, WireLoss.Db(4, 0));
}
