using System.Numerics;
using FitCheck.Physics.Acoustics;
using FitCheck.Physics.Electrical.Loads;
using FitCheck.Physics.Electrical.Networks;
using Xunit;

namespace FitCheck.Tests.Physics.Electrical;

/// <summary>
/// Each channel stands here twice: as a netlist for ngspice and as a load for the program. Both must agree at every point.
/// </summary>
public class NgspiceTests
{
    private const double Within = 1e-6;

    private static readonly DriverModel Woofer = new(3.4, 0.25e-3, 65, 4.4, 0.96);
    private static readonly DriverModel Tweeter = new(3.3, 30e-6, 1200, 2.0, 1.4);
    private const string WooferText = "driver re=3.4 le=0.25m fs=65 qms=4.4 qes=0.96";
    private const string TweeterText = "driver re=3.3 le=30u fs=1200 qms=2 qes=1.4";

    private static readonly Dictionary<string, Circuit> Circuits = new(StringComparer.Ordinal)
    {
        ["woofer alone"] = new(
            $"XW in 0 {WooferText}", "v(in)",
            new([new(Woofer)])),

        ["two woofers in parallel behind one wire"] = new(
            $"""
            Rw in a 0.2
            XA a 0 {WooferText}
            Rx a b 0.15
            XB b 0 driver re=3.6 le=0.3m fs=58 qms=5 qes=0.7
            """, "v(b)",
            new([new(Woofer), new(new(3.6, 0.3e-3, 58, 5, 0.7), WireResistance: 0.15)], 0.2), Branch: 1),

        ["two-way set of 12 dB/octave with wire"] = new(
            $"""
            Rw in a 0.25
            Rl a b 0.3
            Ll b w 0.424m
            Cl w 0 6.63u
            XW w 0 {WooferText}
            Rt a c 0.1
            Ch c t 6.63u
            Rh t d 0.25
            Lh d 0 0.424m
            XT t 0 {TweeterText}
            """, "v(t)",
            new(
            [
                new(Woofer, [LadderElement.InLine(0.3, 0.424e-3), LadderElement.Across(capacitance: 6.63e-6)]),
                new(Tweeter, [LadderElement.InLine(capacitance: 6.63e-6), LadderElement.Across(0.25, 0.424e-3)], 0.1),
            ], 0.25), Branch: 1),

        ["tweeter with a series capacitor"] = new(
            $"""
            C1 in t 4.7u
            XT t 0 {TweeterText}
            """, "v(t)",
            new([new(Tweeter, [LadderElement.InLine(capacitance: 4.7e-6)])])),

        ["coaxial driver"] = new(
            $"""
            Rw in a 0.3
            XW a 0 {WooferText}
            Cc a b 3.3u
            Rc b 0 4.2
            """, "v(a)",
            new([new(Woofer with { Tweeter = new CoaxialTweeter(3.3e-6, 4.2) })], 0.3)),

        ["tweeter behind a capacitor and an L-pad"] = new(
            $"""
            C1 in a 5.6u
            R1 a t 1.5
            R2 t 0 4.7
            XT t 0 {TweeterText}
            """, "v(t)",
            new([new(Tweeter, [LadderElement.InLine(capacitance: 5.6e-6), LadderElement.InLine(1.5), LadderElement.Across(4.7)])])),

        ["three branches"] = new(
            $"""
            Rw in a 0.1
            L1 a w 1.2m
            XW w 0 {WooferText}
            C2 a b 47u
            L2 b m 0.3m
            XM m 0 driver re=3.5 le=0.1m fs=250 qms=3 qes=0.9
            C3 a t 3.3u
            XT t 0 {TweeterText}
            """, "v(t)",
            new(
            [
                new(Woofer, [LadderElement.InLine(inductance: 1.2e-3)]),
                new(new(3.5, 0.1e-3, 250, 3, 0.9), [LadderElement.InLine(capacitance: 47e-6), LadderElement.InLine(inductance: 0.3e-3)]),
                new(Tweeter, [LadderElement.InLine(capacitance: 3.3e-6)]),
            ], 0.1), Branch: 2),

        ["two-way set of 18 dB/octave"] = new(
            $"""
            L1 in b 0.31831m
            C2 b 0 17.684u
            L3 b w 0.1061m
            XW w 0 {WooferText}
            C1 in c 8.8419u
            L2 c 0 0.15915m
            C3 c t 26.526u
            XT t 0 {TweeterText}
            """, "v(t)",
            new(
            [
                new(Woofer,
                    [LadderElement.InLine(inductance: 0.31831e-3), LadderElement.Across(capacitance: 17.684e-6),
                        LadderElement.InLine(inductance: 0.1061e-3)]),
                new(Tweeter,
                    [LadderElement.InLine(capacitance: 8.8419e-6), LadderElement.Across(inductance: 0.15915e-3),
                        LadderElement.InLine(capacitance: 26.526e-6)]),
            ]), Branch: 1),

        ["two-way set of 24 dB/octave"] = new(
            $"""
            L1 in b 0.40014m
            C2 b 0 21.101u
            L3 b w 0.20007m
            C4 w 0 4.6891u
            XW w 0 {WooferText}
            C1 in c 7.0337u
            L2 c 0 0.13338m
            C3 c t 14.067u
            L4 t 0 0.60021m
            XT t 0 {TweeterText}
            """, "v(t)",
            new(
            [
                new(Woofer,
                [
                    LadderElement.InLine(inductance: 0.40014e-3), LadderElement.Across(capacitance: 21.101e-6),
                    LadderElement.InLine(inductance: 0.20007e-3), LadderElement.Across(capacitance: 4.6891e-6),
                ]),
                new(Tweeter,
                [
                    LadderElement.InLine(capacitance: 7.0337e-6), LadderElement.Across(inductance: 0.13338e-3),
                    LadderElement.InLine(capacitance: 14.067e-6), LadderElement.Across(inductance: 0.60021e-3),
                ]),
            ]), Branch: 1),

        // The box adds its stiffness to the suspension: only Lces falls, by 1 + 12/9.
        ["woofer in a closed box"] = new(
            """
            Rdc in a 3.4
            Lvc a b 0.25m
            Rmot b 0 {3.4*4.4/0.96}
            Lmot b 0 {3.4/(2*3.14159265358979*65*0.96)/(1+12/9)}
            Cmot b 0 {0.96/(2*3.14159265358979*65*3.4)}
            """, "v(in)",
            new([new(Woofer.InClosedBox(12e-3, 9e-3))])),

        ["factory door of 2 ohm with its dash tweeter"] = new(
            $"""
            Rw in a 0.12
            XW a 0 driver re=1.7 le=0.15m fs=80 qms=4 qes=1.1
            Rt a b 0.2
            C1 b t 8.2u
            XT t 0 {TweeterText}
            """, "v(t)",
            new([new(new(1.7, 0.15e-3, 80, 4, 1.1)), new(Tweeter, [LadderElement.InLine(capacitance: 8.2e-6)], 0.2)], 0.12), Branch: 1),

        ["factory capacitor left in front of a new crossover"] = new(
            $"""
            Cf in a 4.7u
            C1 a t 4.7u
            L1 t 0 0.3m
            XT t 0 {TweeterText}
            """, "v(t)",
            new([new(Tweeter,
                [LadderElement.InLine(capacitance: 4.7e-6), LadderElement.InLine(capacitance: 4.7e-6),
                    LadderElement.Across(inductance: 0.3e-3)])])),

        ["two woofers in series with an impedance correction"] = new(
            $"""
            Rz in a 6.8
            Cz a 0 10u
            XA in b {WooferText}
            XB b 0 driver re=3.6 le=0.3m fs=58 qms=5 qes=0.7
            """, "v(in,b)",
            new([new(Woofer, [LadderElement.Across(6.8, capacitance: 10e-6)]) { AlsoInSeries = [new(3.6, 0.3e-3, 58, 5, 0.7)] }])),

        ["driver of which only Re and Le are known"] = new(
            """
            Rw in a 0.4
            Rdc a b 3.1
            Lvc b 0 0.2m
            """, "v(a)",
            new([new(new DriverModel(3.1, 0.2e-3))], 0.4)),
    };

    public static TheoryData<string> Names => [.. Circuits.Keys];

    [Theory]
    [MemberData(nameof(Names))]
    public void Agrees_with_ngspice(string name)
    {
        var circuit = Circuits[name];
        var network = circuit.Load.Assemble();
        var reference = Ngspice.Run(circuit.Netlist, circuit.Probe);
        Assert.InRange(reference.Count, 120, 130);
        foreach (var (hz, impedance, transfer) in reference)
        {
            var ours = network.At(hz);
            Near(Complex.Abs(impedance), ours.Ohm, $"|Z| at {hz:F1} Hz");
            Near(impedance.Phase, ours.Impedance.Phase, $"phase at {hz:F1} Hz");
            Near(Complex.Abs(transfer), Complex.Abs(ours.Drivers[circuit.Branch].Transfer), $"transfer at {hz:F1} Hz");
        }
    }

    private static void Near(double expected, double actual, string what) =>
        Assert.True(Math.Abs(actual - expected) <= Within * Math.Max(Math.Abs(expected), 1e-3), $"{what}: {actual} instead of {expected}");

    private sealed record Circuit(string Netlist, string Probe, ChannelLoad Load, int Branch = 0);
}
