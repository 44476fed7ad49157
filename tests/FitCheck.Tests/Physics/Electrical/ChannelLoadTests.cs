using System.Numerics;
using CsCheck;
using FitCheck.Physics.Acoustics;
using FitCheck.Physics.Electrical.Loads;
using FitCheck.Physics.Electrical.Networks;
using Xunit;

namespace FitCheck.Tests.Physics.Electrical;

public class ChannelLoadTests
{
    private static readonly Gen<double> Ohm = RandomNetworks.Logarithmic(1, 10);

    private static readonly Gen<DriverModel> Driver = Gen.Select(
        Ohm, RandomNetworks.Logarithmic(1e-5, 1e-3), RandomNetworks.Logarithmic(30, 2000), RandomNetworks.Logarithmic(1, 10),
        RandomNetworks.Logarithmic(0.3, 2),
        (re, le, fs, qms, qes) => new DriverModel(re, le, fs, qms, qes));

    private static readonly Gen<LadderElement> Element = Gen.Select(
        Gen.Bool, RandomNetworks.Logarithmic(0.1, 10), RandomNetworks.Logarithmic(1e-5, 1e-2), RandomNetworks.Logarithmic(1e-6, 1e-4),
        Gen.Int[0, 3],
        (shunt, r, l, c, kind) => kind switch
        {
            0 => new LadderElement(shunt, Resistance: r),
            1 => new LadderElement(shunt, Resistance: r, Inductance: l),
            2 => new LadderElement(shunt, Capacitance: c),
            _ => new LadderElement(shunt, r, l, c),
        });

    private static readonly Gen<ChannelLoad> Load = Gen.Select(
        Gen.Select(Driver, Element.Array[0, 4], RandomNetworks.Logarithmic(0.01, 1), (d, e, w) => new ChannelBranch(d, e, w)).Array[1, 3],
        RandomNetworks.Logarithmic(0.01, 1), (branches, wire) => new ChannelLoad(branches, wire));

    [Fact]
    public void A_resistive_driver_is_its_resistance_everywhere()
    {
        var sweep = new ChannelLoad([new ChannelBranch(new DriverModel(3.5))], 0.5).Sweep();
        Assert.All(sweep.Points,
            p => Assert.Equal((4, 0), (p.Ohm, p.PhaseDeg), (a, b) => Math.Abs(a.Item1 - b.Item1) + Math.Abs(a.Item2 - b.Item2) < 1e-9));
        Assert.Equal(20 * Math.Log10(3.5 / 4), sweep.LevelDb(0)[100], 1e-9);
        Assert.Equal(4, sweep.MinEpdrOhm, 1e-9); // without phase the dissipation is that of the resistance
        Assert.Equal(241, sweep.Points.Count);
        Assert.Equal((20, 20_000), (sweep.Points[0].Hz, sweep.Points[^1].Hz));
    }

    [Fact]
    public void The_motional_peak_stands_at_the_resonance()
    {
        var driver = new DriverModel(3.4, Fs: 65, Qms: 4.4, Qes: 0.96);
        Assert.Equal(3.4 * (1 + (4.4 / 0.96)), driver.Impedance(65).Real, 1e-9); // Zmax = Re*(1 + Qms/Qes), Small 1972
        Assert.Equal(0, driver.Impedance(65).Imaginary, 1e-9);
    }

    [Fact]
    public void The_motional_part_is_the_parallel_circuit_of_its_elements() =>
        Gen.Select(Driver, RandomNetworks.Hertz).Sample((driver, hz) =>
    {
        var jOmega = new Complex(0, 2 * Math.PI * hz);
        var motional = 1 / ((1 / driver.Res!.Value) + (1 / (jOmega * driver.Lces!.Value)) + (jOmega * driver.Cmes!.Value));
        var expected = driver.Re + (jOmega * driver.Le!.Value) + motional;
        Assert.True(Complex.Abs(expected - driver.Impedance(hz)) < 1e-9 * Complex.Abs(expected));
    });

    [Fact]
    public void A_driver_never_falls_below_its_resistance() =>
        Gen.Select(Driver, RandomNetworks.Hertz)
            .Sample((driver, hz) => Complex.Abs(driver.Impedance(hz)) >= driver.Re && driver.Impedance(hz).Real >= driver.Re);

    [Fact]
    public void The_lowest_impedance_is_no_higher_than_at_any_point() => Load.Sample(load =>
    {
        var sweep = load.Sweep();
        return sweep.States.All(
            s => sweep.MinOhm <= s.Ohm && sweep.MinEpdrOhm <= s.EpdrOhm && Math.Abs(sweep.LargestPhaseDeg) >= Math.Abs(s.PhaseDeg));
    }, iter: 40);

    [Fact]
    public void Drivers_take_no_more_power_than_the_source_gives() => Gen.Select(Load, RandomNetworks.Hertz).Sample((load, hz) =>
    {
        var state = load.Assemble().At(hz);
        return state.Drivers.Sum(d => d.PowerPerVoltSquared) <= state.PowerPerVoltSquared * (1 + 1e-9);
    });

    [Fact]
    public void Shares_of_programme_power_add_up_to_no_more_than_one() => Load.Sample(load =>
    {
        var sweep = load.Sweep();
        return Enumerable.Range(0, load.Branches.Count).Sum(sweep.ProgrammeShare) <= 1 + 1e-9;
    }, iter: 40);

    [Fact]
    public void All_the_power_goes_into_a_driver_on_a_wire_without_resistance()
    {
        var sweep = new ChannelLoad([new ChannelBranch(new DriverModel(4, 1e-4, 70, 4, 1))]).Sweep();
        Assert.Equal(1, sweep.ProgrammeShare(0), 1e-9);
        var resistor = new ChannelLoad([new ChannelBranch(new DriverModel(4))]).Sweep();
        Assert.Equal(25, resistor.ProgrammePower(0, 10), 1e-9); // 10 V into 4 ohm
    }

    [Fact]
    public void The_minimum_between_grid_points_is_found()
    {
        // A series resonance at 1 kHz, where |Z| is the resistance alone: 1.5 + 0.5 ohm.
        const double henry = 1e-3;
        var farad = 1 / (Math.Pow(2 * Math.PI * 1000, 2) * henry);
        var sweep = new ChannelLoad([new ChannelBranch(new DriverModel(1.5), [LadderElement.InLine(0.5, henry, farad)])]).Sweep();
        Assert.Equal(2, sweep.MinOhm, 1e-9);
        Assert.Equal(1000, sweep.MinHz, 0.1);
    }

    [Fact]
    public void The_tweeter_of_a_coaxial_driver_has_a_transfer_of_its_own()
    {
        var tweeter = new CoaxialTweeter(1 / (2 * Math.PI * 3000 * 4), 4);
        Assert.Equal(Math.Sqrt(0.5), Complex.Abs(tweeter.Transfer(3000)), 1e-12); // half power where 1/(ωC) = R
        Assert.True(Complex.Abs(new DriverModel(4) { Tweeter = tweeter }.Impedance(20_000)) < 4);
    }

    [Fact]
    public void Inductive_loads_have_a_positive_phase()
    {
        Assert.True(new ChannelLoad([new ChannelBranch(new DriverModel(4, 1e-3))]).Sweep().LargestPhaseDeg > 80);
        Assert.True(
            new ChannelLoad(
                [new ChannelBranch(new DriverModel(4), [LadderElement.InLine(capacitance: 1e-6)])]).Sweep().LargestPhaseDeg < -80);
    }

    [Fact]
    public void An_inductance_as_large_as_the_resistance_turns_by_forty_five_degrees()
    {
        var state = new ChannelLoad([new ChannelBranch(new DriverModel(4, 4 / (2 * Math.PI * 1000)))]).Assemble().At(1000); // ωL = R
        Assert.Equal(45, state.PhaseDeg, 1e-9);
        Assert.Equal(Math.Sqrt(32), state.Ohm, 1e-9);
        Assert.Equal(0.125, state.PowerPerVoltSquared, 1e-9); // R/(R² + X²) = 4/32
    }

    [Theory]
    [InlineData(null, 4.0, 1.0)]
    [InlineData(65.0, null, 1.0)]
    [InlineData(65.0, 4.0, null)]
    [InlineData(0.0, 4.0, 1.0)]
    public void Without_all_its_parameters_a_driver_is_its_voice_coil(double? fs, double? qms, double? qes)
    {
        var driver = new DriverModel(4, Fs: fs, Qms: qms, Qes: qes);
        Assert.Equal((false, null, null, null), (driver.HasMotionalPart, driver.Res, driver.Cmes, driver.Lces));
        Assert.Equal(4, driver.Impedance(65).Real);
    }

    [Fact]
    public void Drivers_in_series_share_the_voltage()
    {
        var load = new ChannelLoad([new ChannelBranch(new DriverModel(4)) { AlsoInSeries = [new DriverModel(8), new DriverModel(4)] }]);
        var state = load.Assemble().At(1000);
        Assert.Equal(16, state.Ohm, 1e-9);
        Assert.Equal(0.25, state.Drivers[0].Transfer.Real, 1e-9); // 4 of 16 ohm
    }

    [Fact]
    public void Impossible_channels_are_refused()
    {
        Assert.Throws<ArgumentException>(() => new ChannelLoad([]).Assemble());
        Assert.Throws<ArgumentException>(
            () => new ChannelLoad([new ChannelBranch(new DriverModel(4), [new LadderElement(Shunt: true)])]).Assemble());
        Assert.ThrowsAny<ArgumentException>(() => new ChannelLoad([new ChannelBranch(new DriverModel(0))]).Assemble());
        Assert.ThrowsAny<ArgumentException>(() => new ChannelLoad([new ChannelBranch(new DriverModel(4))], double.NaN).Assemble());
    }
}
