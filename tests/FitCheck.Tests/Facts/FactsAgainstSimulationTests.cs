using System.Numerics;
using FitCheck.Facts.Values;
using FitCheck.Tests.Physics.Electrical;
using Xunit;

namespace FitCheck.Tests.Facts;

/// <summary>
/// Facts of whole builds against ngspice, a circuit simulator: each circuit is written out by hand from the figures of the catalog's
/// entries, and the simulator's voltages and impedances are weighed here, with nothing of FitCheck's physics.
/// </summary>
public sealed class FactsAgainstSimulationTests
{
    // IEC 60268-1:1985, Table II: third octaves from 20 Hz to 20 kHz, dB against the loudest (as transcribed in a general acoustics
    // library).
    private static readonly double[] TableII =
    [
        -13.5, -10.2, -7.4, -5.2, -3.5, -2.3, -1.4, -0.9, -0.5, -0.2, -0.1, 0, 0, 0, 0, 0, 0, -0.1, -0.3, -0.6, -1.0, -1.6, -2.5, -3.7,
        -5.1, -7.0, -9.4, -11.9, -14.8, -18.2, -21.6,
    ];

    // ASTM B258: 16 AWG is 1.291 mm in diameter; IEC 60228's copper of 1.7241e-8 ohm·m gives 13.18 mohm/m; 5 m there and back.
    private const double Wire = 0.1318;

    // 60 W into 4 ohm, and no limit of current before 2 ohm: √240 V.
    private const double Volts = 15.492;

    private const string Build = """
        kind: build
        name: trial
        vehicle: tansy-hatch
        fit:
          - at: [front-tweeter-left]
            driver: orrin-t25
            cup: cup-45-tansy
            with: [capacitor-4-7uf]
            new_wire: {cable: speaker-cable-16awg-10m, length: 5 m}
          - at: [front-door-left]
            driver: orrin-w165-4
            adapter: spacer-165-tansy-18
            new_wire: {cable: speaker-cable-16awg-10m, length: 5 m}
        devices:
          - {id: radio, part: factory}
          - {id: amp, part: kestow-d4-60, from: radio}
        channels:
          - {id: treble, output: amp.1, feeds: [front-tweeter-left]}
          - {id: bass, output: amp.2, feeds: [front-door-left]}
        """;

    private static readonly Lazy<IReadOnlyList<FactTable>> Facts = new(() => Trial.Of(Build).Facts);

    [Theory]
    [InlineData("treble", "Rw in a 0.1318\nC1 a t 4.7u\nXT t 0 driver re=3.4 le=0.02m fs=1250 qms=2.6 qes=1.45")]
    [InlineData("bass", "Rw in a 0.1318\nXW a 0 driver re=3.3 le=0.37m fs=56 qms=4.34 qes=0.85")]
    public void Load_min_is_the_lowest_impedance_of_the_circuit(string channel, string circuit)
    {
        var lowest = Ngspice.Run(circuit, "v(a)").Min(p => Complex.Abs(p.Impedance));
        Assert.Equal(lowest, Number(channel, "load_min"), 0.002 * lowest);
    }

    [Fact]
    public void Tweeter_power_is_that_of_programme_noise_through_the_circuit()
    {
        var perVolt = PowerPerVoltSquared();
        var expected = Volts * Volts * Mean(perVolt);
        Assert.Equal(expected, Number("front-tweeter-left", "tweeter_power"), 0.005 * expected);
    }

    [Fact]
    public void Clipped_tweeter_power_is_that_of_the_turned_up_programme_with_its_treble_doubled()
    {
        // Above some 5 kHz clipping doubles the power (ClippedProgrammeTests: MathNet's transform of hard-clipped noise gives 1.9 to 2.2);
        // the midrange gains less than four times, and never less than the 1.28 of all that remains.
        var clean = Number("front-tweeter-left", "tweeter_power");
        Assert.InRange(Number("front-tweeter-left", "tweeter_power_clipped") / clean, 1.28, 2.2);
    }

    [Fact]
    public void Excursion_peak_is_the_motional_voltage_over_force_factor_and_angular_frequency()
    {
        // Voltage across the motional branch is Bl times velocity (Beranek, Acoustics); Bl is 4.25 T·m by the sheet. Peaks of the noise
        // reach √2·V, its rms is V/√2.
        var motional = Ngspice.Run(
            """
            Rw in a 0.1318
            Rdc a b 3.3
            Lvc b m 0.37m
            Rmot m 0 {3.3*4.34/0.85}
            Lmot m 0 {3.3/(2*3.14159265358979*56*0.85)}
            Cmot m 0 {0.85/(2*3.14159265358979*56*3.3)}
            """,
            "v(m)");
        var square = Mean([.. motional.Select(p => (p.Hz, Math.Pow(Complex.Abs(p.Transfer) / (4.25 * 2 * Math.PI * p.Hz), 2)))]);
        var peak = 2 * Volts / Math.Sqrt(2) * Math.Sqrt(square);
        Assert.Equal(peak, Number("front-door-left", "excursion_peak"), 0.006 * peak); // Bl of the sheet is rounded by 0.3 %
    }

    [Fact]
    public void Loudest_level_adds_up_what_each_driver_gives_at_the_seat()
    {
        // Sheet levels at 1 W into 4 ohm are 3.01 dB higher at 2.83 V; places by the vehicle's entry, the ear at its origin; A-weighting by
        // IEC 61672-1.
        var woofer = Level(87, new(0.65f, 0.72f, -0.75f),
            Ngspice.Run("Rw in a 0.1318\nXW a 0 driver re=3.3 le=0.37m fs=56 qms=4.34 qes=0.85", "v(a)"));
        var tweeter = Level(91, new(0.74f, 0.65f, -0.29f),
            Ngspice.Run("Rw in a 0.1318\nC1 a t 4.7u\nXT t 0 driver re=3.4 le=0.02m fs=1250 qms=2.6 qes=1.45", "v(t)"));
        var both = 10 * Math.Log10(Math.Pow(10, woofer / 10) + Math.Pow(10, tweeter / 10));
        Assert.Equal(both, Number("build", "loudest_level"), 0.1);
    }

    private static double Level(double sheet, Vector3 place, IReadOnlyList<(double Hz, Complex Impedance, Complex Transfer)> circuit)
    {
        var weighted = Mean([.. circuit.Select(p => (p.Hz, Math.Pow(Complex.Abs(p.Transfer), 2) * Math.Pow(10, AWeighting(p.Hz) / 10)))]);
        return sheet + (10 * Math.Log10(2)) + (10 * Math.Log10(weighted)) - (20 * Math.Log10(place.Length()))
            + (20 * Math.Log10(Volts / Math.Sqrt(8)));
    }

    // IEC 61672-1, annex E: poles at 20.6, 107.7, 737.9 and 12,194 Hz, 0 dB at 1 kHz.
    private static double AWeighting(double hz)
    {
        return 20 * Math.Log10(Response(hz) / Response(1000));

        static double Response(double f)
        {
            var square = f * f;
            return Math.Pow(12_194, 2) * square * square
                / ((square + Math.Pow(20.6, 2)) * Math.Sqrt((square + Math.Pow(107.7, 2)) * (square + Math.Pow(737.9, 2)))
                    * (square + Math.Pow(12_194, 2)));
        }
    }

    // |Vt|²·Re(1/Zt): what the tweeter takes for each volt squared at the output.
    private static List<(double Hz, double Value)> PowerPerVoltSquared()
    {
        const string tweeter = "driver re=3.4 le=0.02m fs=1250 qms=2.6 qes=1.45";
        var through = Ngspice.Run($"Rw in a {Wire}\nC1 a t 4.7u\nXT t 0 {tweeter}", "v(t)");
        var alone = Ngspice.Run($"XT in 0 {tweeter}", "v(in)");
        return [.. through.Zip(alone, (a, b) => (a.Hz, Math.Pow(Complex.Abs(a.Transfer), 2) * (1 / b.Impedance).Real))];
    }

    // Each third octave with its power, looked at in its lower, middle and upper third.
    private static double Mean(IReadOnlyList<(double Hz, double Value)> points)
    {
        double sum = 0, all = 0;
        for (var band = 0; band < TableII.Length; band++)
        {
            var power = Math.Pow(10, TableII[band] / 10);
            foreach (var third in new[] { -1, 0, 1 })
                sum += power / 3 * Between(points, 1000 * Math.Pow(10, ((band - 17) / 10.0) + (third / 30.0)));
            all += power;
        }
        return sum / all;
    }

    private static double Between(IReadOnlyList<(double Hz, double Value)> points, double hz)
    {
        var above = Math.Clamp(points.TakeWhile(p => p.Hz < hz).Count(), 1, points.Count - 1);
        var ((low, atLow), (high, atHigh)) = (points[above - 1], points[above]);
        return atLow + ((atHigh - atLow) * Math.Log(hz / low) / Math.Log(high / low));
    }

    private static double Number(string key, string fact) =>
        Facts.Value.First(t => t.Key == key && t.Values.ContainsKey(fact)).Values[fact].Number!.Value.Value;
}
