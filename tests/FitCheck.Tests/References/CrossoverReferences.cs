using System.Numerics;
using FitCheck.Physics.Acoustics;
using FitCheck.Physics.Electrical.Filters;
using FitCheck.Physics.Electrical.Loads;
using FitCheck.Physics.Electrical.Networks;
using FitCheck.Physics.Quantities;
using Xunit;

namespace FitCheck.Tests.References;

/// <summary>Published element values, solved as ladders into a resistor, must have the level of their alignment.</summary>
public class CrossoverReferences
{
    [Theory]
    [InlineData("xo.ex.4ohm.3000Hz.BW1", "derived from Some Cross Over Equations, colomar.com", 4.0, 3000.0, 13.263, 0.21221)]
    [InlineData("xo.ex.8ohm.1200Hz.BW1", "derived from Some Cross Over Equations, colomar.com", 8.0, 1200.0, 16.579, 1.061)]
    [InlineData("xo.ex.2ohm.120Hz.BW1", "derived from Some Cross Over Equations, colomar.com", 2.0, 120.0, 663.15, 2.6526)]
    [InlineData("xo.pub.p564", "derived from textbook problem P5.64", 8.0, 1200.0, 16.579, 1.061)]
    [InlineData("xo.const.BW1", "derived from Some Cross Over Equations, colomar.com", 1.0, 1.0, 159155.0, 159.155)]
    public void First_order(string id, string source, double ohm, double hz, double microfarad, double millihenry)
    {
        Reference.Close(id, source, -3.0103, Level(ohm, hz, InLine(c: microfarad)), 0.001); // xo.level.BW1, from memory
        Reference.Close(id, source, -3.0103, Level(ohm, hz, InLine(l: millihenry)), 0.001);
    }

    [Theory]
    [InlineData("xo.ex.4ohm.3000Hz.LR2", "derived from Some Cross Over Equations, colomar.com", "LR2", 4.0, 3000.0, 6.6315, 0.42441)]
    [InlineData("xo.ex.4ohm.3500Hz.LR2", "derived from Some Cross Over Equations, colomar.com", "LR2", 4.0, 3500.0, 5.6841, 0.36378)]
    [InlineData("xo.ex.4ohm.3500Hz.Bessel2", "derived from the formula, from memory", "Bessel2", 4.0, 3500.0, 6.5634, 0.31505)]
    [InlineData("xo.ex.4ohm.100Hz.Bessel2", "derived from the formula, from memory", "Bessel2", 4.0, 100.0, 229.72, 11.027)]
    [InlineData("xo.ex.8ohm.3000Hz.BW2", "derived from the formula, from memory", "BW2", 8.0, 3000.0, 4.6891, 0.60021)]
    [InlineData("xo.ex.8ohm.3000Hz.LR2", "derived from Some Cross Over Equations, colomar.com", "LR2", 8.0, 3000.0, 3.3157, 0.84883)]
    [InlineData("xo.ex.8ohm.3000Hz.Bessel2", "derived from the formula, from memory", "Bessel2", 8.0, 3000.0, 3.8287, 0.73511)]
    [InlineData("xo.ex.8ohm.1200Hz.BW2", "derived from the formula, from memory", "BW2", 8.0, 1200.0, 11.723, 1.5005)]
    [InlineData("xo.ex.8ohm.1200Hz.LR2", "derived from Some Cross Over Equations, colomar.com", "LR2", 8.0, 1200.0, 8.2893, 2.1221)]
    [InlineData("xo.ex.3.4ohm.2500Hz.BW2", "derived from the formula, from memory", "BW2", 3.4, 2500.0, 13.24, 0.30611)]
    [InlineData("xo.ex.3.4ohm.2500Hz.LR2", "derived from Some Cross Over Equations, colomar.com", "LR2", 3.4, 2500.0, 9.3621, 0.4329)]
    [InlineData("xo.ex.3.4ohm.2500Hz.Bessel2", "derived from the formula, from memory", "Bessel2", 3.4, 2500.0, 10.81, 0.3749)]
    [InlineData("xo.ex.2ohm.120Hz.Bessel2", "derived from the formula, from memory", "Bessel2", 2.0, 120.0, 382.87, 4.5944)]
    public void Second_order(string id, string source, string alignment, double ohm, double hz, double microfarad, double millihenry)
    {
        Reference.Close(id, source, AtCorner(alignment), Level(ohm, hz, InLine(c: microfarad), Across(l: millihenry)), 0.002);
        Reference.Close(id, source, AtCorner(alignment), Level(ohm, hz, InLine(l: millihenry), Across(c: microfarad)), 0.002);
        Reference.Close(id, source, OctaveOut(alignment), Level(ohm, hz / 2, InLine(c: microfarad), Across(l: millihenry)), 0.002);
        Reference.Close(id, source, OctaveOut(alignment), Level(ohm, hz * 2, InLine(l: millihenry), Across(c: microfarad)), 0.002);
    }

    [Theory]
    [InlineData("xo.ex.4ohm.3500Hz.BW3.LP", "derived from Some Cross Over Equations, colomar.com", "BW3", "low", 4.0, 3500.0, 0.27284,
        15.158, 0.090946)]
    [InlineData("xo.ex.4ohm.100Hz.BW3.HP", "derived from Some Cross Over Equations, colomar.com", "BW3", "high", 4.0, 100.0, 265.26,
        4.7746, 795.77)]
    [InlineData("xo.ex.8ohm.1200Hz.BW3.LP", "derived from Some Cross Over Equations, colomar.com", "BW3", "low", 8.0, 1200.0, 1.5915,
        22.105, 0.53052)]
    [InlineData("xo.ex.8ohm.1200Hz.BW3.HP", "derived from Some Cross Over Equations, colomar.com", "BW3", "high", 8.0, 1200.0, 11.052,
        0.79577, 33.157)]
    [InlineData("xo.ex.3.4ohm.2500Hz.BW3.LP", "derived from Some Cross Over Equations, colomar.com", "BW3", "low", 3.4, 2500.0, 0.32468,
        24.965, 0.10823)]
    [InlineData("xo.ex.3.4ohm.2500Hz.BW3.HP", "derived from Some Cross Over Equations, colomar.com", "BW3", "high", 3.4, 2500.0, 12.483,
        0.16234, 37.448)]
    [InlineData("xo.ex.2ohm.120Hz.BW3.HP", "derived from Some Cross Over Equations, colomar.com", "BW3", "high", 2.0, 120.0, 442.1, 1.9894,
        1326.3)]
    [InlineData("xo.const.BW3.LP", "derived from Some Cross Over Equations, colomar.com", "BW3", "low", 1.0, 1.0, 238.732, 212207.0,
        79.5775)]
    [InlineData("xo.const.BW3.HP", "derived from Some Cross Over Equations, colomar.com", "BW3", "high", 1.0, 1.0, 106103.0, 119.366,
        318310.0)]
    public void Third_order(string id, string source, string alignment, string pass, double ohm, double hz, double first, double second,
        double third)
    {
        LadderElement[] ladder = pass == "high"
            ? [InLine(c: first), Across(l: second), InLine(c: third)]
            : [InLine(l: first), Across(c: second), InLine(l: third)];
        Reference.Close(id, source, AtCorner(alignment), Level(ohm, hz, ladder), 0.002);
        Reference.Close(id, source, OctaveOut(alignment), Level(ohm, pass == "high" ? hz / 2 : hz * 2, ladder), 0.002);
    }

    [Theory]
    [InlineData("xo.ex.4ohm.3000Hz.LR4.LP", "derived from Some Cross Over Equations, colomar.com", "LR4", "low", 4.0, 3000.0, 0.40014,
        21.101, 0.20007, 4.6891)]
    [InlineData("xo.ex.4ohm.3000Hz.LR4.HP", "derived from Some Cross Over Equations, colomar.com", "LR4", "high", 4.0, 3000.0, 7.0337,
        0.13338, 14.067, 0.60021)]
    [InlineData("xo.ex.4ohm.3500Hz.LR4.LP", "derived from Some Cross Over Equations, colomar.com", "LR4", "low", 4.0, 3500.0, 0.34298,
        18.087, 0.17149, 4.0193)]
    [InlineData("xo.ex.8ohm.3000Hz.LR4.HP", "derived from Some Cross Over Equations, colomar.com", "LR4", "high", 8.0, 3000.0, 3.5169,
        0.26676, 7.0337, 1.2004)]
    [InlineData("xo.ex.3.4ohm.2500Hz.LR4.LP", "derived from Some Cross Over Equations, colomar.com", "LR4", "low", 3.4, 2500.0, 0.40814,
        29.79, 0.20407, 6.62)]
    [InlineData("xo.ex.3.4ohm.2500Hz.LR4.HP", "derived from Some Cross Over Equations, colomar.com", "LR4", "high", 3.4, 2500.0, 9.93,
        0.13605, 19.86, 0.61222)]
    [InlineData("xo.ex.2ohm.120Hz.LR4.LP", "derived from Some Cross Over Equations, colomar.com", "LR4", "low", 2.0, 120.0, 5.0018, 1055.1,
        2.5009, 234.46)]
    [InlineData("xo.const.LR4.LP", "derived from Some Cross Over Equations, colomar.com", "LR4", "low", 1.0, 1.0, 300.105, 253214.0,
        150.053, 56269.8)]
    [InlineData("xo.const.LR4.HP", "derived from Some Cross Over Equations, colomar.com", "LR4", "high", 1.0, 1.0, 84404.7, 100.035,
        168809.0, 450.158)]
    public void Fourth_order(string id, string source, string alignment, string pass, double ohm, double hz, double first, double second,
        double third, double fourth)
    {
        LadderElement[] ladder = pass == "high"
            ? [InLine(c: first), Across(l: second), InLine(c: third), Across(l: fourth)]
            : [InLine(l: first), Across(c: second), InLine(l: third), Across(c: fourth)];
        Reference.Close(id, source, AtCorner(alignment), Level(ohm, hz, ladder), 0.002);
        Reference.Close(id, source, OctaveOut(alignment), Level(ohm, pass == "high" ? hz / 2 : hz * 2, ladder), 0.002);
    }

    [Theory]
    [InlineData("xo.level.LR2", "derived from the formula, from memory", 1.0, -6.0206)]
    [InlineData("xo.oct.LR2", "derived from the formula, from memory", 0.5, -1.9382)]
    [InlineData("xo.oct.LR2", "derived from the formula, from memory", 2.0, -13.979)]
    [InlineData("xo.oct.LR2", "derived from the formula, from memory", 4.0, -24.609)]
    public void Linkwitz_Riley_active_filter(string id, string source, double ratio, double db) =>
        Reference.Close(id, source, db, Decibel.OfAmplitude(ActiveFilter.LinkwitzRileyLowPass(ratio, 1, 2)), 0.001);

    [Theory]
    [InlineData("xo.level.BW1", "derived from the formula, from memory", 1, 1.0, -3.0103)]
    [InlineData("xo.level.BW2", "derived from the formula, from memory", 2, 1.0, -3.0103)]
    [InlineData("xo.level.BW3.LP", "derived from the formula, from memory", 3, 1.0, -3.0103)]
    [InlineData("xo.oct.BW3.LP", "derived from the formula, from memory", 3, 0.5, -0.067334)]
    [InlineData("xo.oct.BW3.LP", "derived from the formula, from memory", 3, 2.0, -18.129)]
    [InlineData("xo.oct.BW3.LP", "derived from the formula, from memory", 3, 4.0, -36.125)]
    public void Butterworth_active_filter(string id, string source, int order, double ratio, double db)
    {
        Reference.Close(id, source, db, Decibel.OfAmplitude(ActiveFilter.ButterworthLowPass(ratio, 1, order)), 0.001);
        Reference.Close(id, source, db, Decibel.OfAmplitude(ActiveFilter.ButterworthHighPass(1 / ratio, 1, order)), 0.001);
    }

    [Theory]
    [InlineData("xo.mismatch.lvl", "derived from the formula, from memory", 3.0103)]
    public void A_driver_of_twice_the_impedance_peaks_at_the_corner(string id, string source, double db)
    {
        // BW2 for 4 ohm, 3 kHz: Q = 0.7071, so C = Q/(ω·R) and L = R/(ω·Q). Into 8 ohm Q doubles to 1.4142.
        double omega = 2 * Math.PI * 3000, q = Math.Sqrt(0.5);
        Reference.Close(id, source, db,
            Level(8, 3000, LadderElement.InLine(capacitance: q / (omega * 4)), LadderElement.Across(inductance: 4 / (omega * q))), 0.001);
    }

    [Theory]
    [InlineData("xo.zin.bw2", "derived from the formula, from memory", 4.0)]
    public void Input_of_a_two_way_second_order_network(string id, string source, double lowestOhm)
    {
        double omega = 2 * Math.PI * 3000, q = Math.Sqrt(0.5), c = q / (omega * 4), l = 4 / (omega * q);
        var load = new ChannelLoad(
        [
            new ChannelBranch(new DriverModel(4), [LadderElement.InLine(inductance: l), LadderElement.Across(capacitance: c)]),
            new ChannelBranch(new DriverModel(4), [LadderElement.InLine(capacitance: c), LadderElement.Across(inductance: l)]),
        ]);
        Reference.Near(id, source, lowestOhm, load.Sweep().MinOhm, 1e-4);
    }

    [Fact]
    // xo.zin.bw2, note: exactly 4 ohm at all frequencies; derived from the formula, from memory
    public void Complementary_first_and_third_order_networks_stay_resistive()
    {
        var omega = 2 * Math.PI * 3000;
        double C(double normalised) => normalised / (omega * 4);
        double L(double normalised) => normalised * 4 / omega;
        LadderElement[] low = [LadderElement.InLine(inductance: L(1.5)), LadderElement.Across(capacitance: C(4 / 3.0)),
            LadderElement.InLine(inductance: L(0.5))];
        LadderElement[] high = [LadderElement.InLine(capacitance: C(2 / 3.0)), LadderElement.Across(inductance: L(0.75)),
            LadderElement.InLine(capacitance: C(2))];
        foreach (var (woofer, tweeter) in new[] { ([LadderElement.InLine(inductance: L(1))], [LadderElement.InLine(capacitance: C(1))]),
            (low, high) })
        {
            var sweep = new ChannelLoad(
                [new ChannelBranch(new DriverModel(4), woofer), new ChannelBranch(new DriverModel(4), tweeter)]).Sweep();
            Assert.All(sweep.States, s => Assert.Equal(4, s.Ohm, 1e-9));
        }
    }

    private static LadderElement InLine(double? l = null, double? c = null) =>
        LadderElement.InLine(inductance: l * 1e-3, capacitance: c * 1e-6);

    private static LadderElement Across(double? l = null, double? c = null) =>
        LadderElement.Across(inductance: l * 1e-3, capacitance: c * 1e-6);

    private static double Level(double ohm, double hz, params LadderElement[] ladder)
    {
        var network = new Network();
        network.SetSource(1);
        var end = Ladder.Stamp(network, ladder, from: 1);
        network.AddResistor(end, 0, ohm);
        return 20 * Math.Log10(Complex.Abs(network.Solve(hz).Voltage(end)));
    }

    private static double AtCorner(string alignment) => alignment switch
    {
        "BW2" => -3.0103, // xo.level.BW2, derived from the formula, from memory
        "LR2" => -6.0206, // xo.level.LR2, derived from the formula, from memory
        "Bessel2" => -4.7712, // xo.level.Bessel2, derived from the formula, from memory
        "BW3" => -3.0103, // xo.level.BW3.LP, derived from the formula, from memory
        "LR4" => -6.0206, // two Butterworth sections in a row: twice -3.0103
        _ => throw new ArgumentOutOfRangeException(nameof(alignment), alignment, "not known"),
    };

    private static double OctaveOut(string alignment) => alignment switch
    {
        "BW2" => -12.3045, // 10 lg(1/(1 + 2^4))
        "LR2" => -13.979, // xo.oct.LR2, derived from the formula, from memory
        "Bessel2" => -13.2222, // 10 lg(1/((1 - 4)^2 + 4*3)), Q = 1/sqrt 3
        "BW3" => -18.129, // xo.oct.BW3.LP, derived from the formula, from memory
        "LR4" => -24.6090, // 20 lg(1/(1 + 2^4))
        _ => throw new ArgumentOutOfRangeException(nameof(alignment), alignment, "not known"),
    };
}
