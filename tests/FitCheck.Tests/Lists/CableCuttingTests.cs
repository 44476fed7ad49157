using FitCheck.Builds;
using FitCheck.Evaluation;
using FitCheck.Findings;
using FitCheck.Lists;
using Xunit;

namespace FitCheck.Tests.Lists;

/// <summary>
/// Cable is cut from rolls: each run is one piece, and rests of several rolls make none. All examples are worked by hand.
/// </summary>
public sealed class CableCuttingTests
{
    private const string Start = """
        kind: build
        name: trial
        vehicle: tansy-hatch
        fit:
          - {at: [front-door-left, front-door-right], driver: orrin-w165-4, adapter: spacer-165-tansy-18, harness: harness-duo-a-63-48}
          - {at: [front-tweeter-left, front-tweeter-right], disconnected: true}

        """;

    [Theory]
    [InlineData(10, 6, "6 6 6 6 6 6")] // 36 m, but a roll of 10 m gives one piece of 6 m
    [InlineData(10, 1, "4 3 3")] // 10 m exactly
    [InlineData(10, 2, "5 5 5")] // two in the first
    // 5 + 3 + 2 and 4 + 3 + 3; the longest first on the first roll that takes it would need three: 5 + 4, 3 + 3 + 3, 2
    [InlineData(10, 2, "5 4 3 3 3 2")]
    [InlineData(1, 2, "0.5 0.5 0.5")] // as a ground cable is cut
    [InlineData(1, 3, "0.4 0.4 0.4 0.4 0.4")] // 2 m, but two of 0.4 m a roll
    [InlineData(5, 2, "9.9")] // a whole roll and a piece of 4.9 m: counted, though it would have a joint
    [InlineData(5, 2, "5.5 4.5")] // a whole roll; 0.5 and 4.5 m from the second
    [InlineData(5, 1, "5")]
    [InlineData(10, 1, "0.1 0.2 9.7")] // sums of decimals are exact
    [InlineData(10, 0, "")]
    public void Each_run_is_one_piece(double roll, int rolls, string runs) =>
        Assert.Equal(rolls,
            CableCutting.Rolls(
                runs.Split(' ', StringSplitOptions.RemoveEmptyEntries)
                    .Select(r => double.Parse(r, System.Globalization.CultureInfo.InvariantCulture)), roll));

    [Fact]
    public void No_other_way_to_cut_needs_less()
    {
        // Against every way to put runs on rolls, tried one by one.
        var dice = new Random(20);
        for (var i = 0; i < 300; i++)
        {
            double[] runs = [.. Enumerable.Range(0, dice.Next(1, 7)).Select(_ => dice.Next(1, 11) / 2.0)];
            Assert.Equal(
                Ways(runs.Length).Where(w => w.Zip(runs).GroupBy(x => x.First, x => x.Second).All(g => g.Sum() <= 5))
                    .Min(w => w.Distinct().Count()), CableCutting.Rolls(runs, 5));
        }

        static IEnumerable<int[]> Ways(int runs) =>
            runs == 0 ? [[]] : Ways(runs - 1).SelectMany(w => Enumerable.Range(0, runs).Select(r => (int[])[.. w, r]));
    }

    [Fact]
    public void Six_speaker_runs_of_6_m_take_six_rolls_of_10_m()
    {
        var list = Listed.Of("""
            kind: build
            name: six runs
            vehicle: tansy-hatch
            accepts: [cut-wires]
            fit:
              - at: [front-door-left, front-door-right, rear-door-left, rear-door-right]
                driver: orrin-w165-4
                new_wire: {cable: speaker-cable-16awg-10m, length: 6 m}
              - at: [front-tweeter-left, front-tweeter-right]
                driver: orrin-t25
                new_wire: {cable: speaker-cable-16awg-10m, length: 6 m}
            extras:
              - {part: speaker-cable-16awg-10m, packs: 2}
            """);

        var line = list.Line("speaker-cable-16awg-10m");
        Assert.Equal(6, line.Packs); // two of them bought besides
        Assert.Equal(24, line.LeftMetres!.Value, 9); // six rests of 4 m
    }

    [Fact]
    public void A_roll_that_is_bought_besides_is_the_one_that_the_run_is_cut_from()
    {
        var list = Listed.Of("""
            kind: build
            name: one run
            vehicle: tansy-hatch
            fit:
              - at: [front-door-left]
                driver: orrin-w165-4
                adapter: spacer-165-tansy-18
                new_wire: {cable: speaker-cable-16awg-10m, length: 6 m}
            extras: [{part: speaker-cable-16awg-10m, packs: 1}]
            """);

        Assert.Equal((1, 4.0),
            (list.Line("speaker-cable-16awg-10m").Packs, Math.Round(list.Line("speaker-cable-16awg-10m").LeftMetres!.Value, 6)));
    }

    [Theory]
    [InlineData("4.2 m", 1, 0)] // 5 m in the kit
    [InlineData("9.9 m", 1, 1)] // 5 m in the kit and a further roll, once
    public void A_kit_that_is_named_for_a_cable_and_bought_besides_is_one_kit(string way, int kits, int rolls)
    {
        var list = Listed.Of(
            Start + $"devices: [{{id: radio, part: factory}}, {{id: amp, part: kestow-d4-60, from: radio}}]\nsupply: {{cable: "
                + $"power-kit-8awg, length: {way}}}\nextras: [{{part: power-kit-8awg, packs: 1}}]\n");

        Assert.Equal(kits, list.Line("power-kit-8awg").Packs);
        Assert.Equal(rolls, list.Lines.SingleOrDefault(l => l.Part == "power-cable-8awg-5m")?.Packs ?? 0);
    }

    [Fact]
    public void What_lies_in_a_kit_that_is_named_twice_is_counted_once()
    {
        // The kit holds one signal cable of two channels.
        var result =
            Trial.Of(Start
                + "devices: [{id: radio, part: factory}, {id: amp, part: kestow-d4-60, from: radio, power_cable: power-kit-8awg, "
                + "power_length: 4 m}]\nextras: [{part: power-kit-8awg, packs: 1}]\n");

        Assert.Equal(2,
            result.Facts.Single(
                t => t.Subject == FitCheck.Facts.Values.Subject.Build).Values["signal_channels_listed"].Number!.Value.Value);
    }

    [Fact]
    public void Two_amplifiers_on_kits_of_which_one_is_bought_besides_need_two()
    {
        var list = Listed.Of(Start + """
            devices:
              - {id: radio, part: factory}
              - {id: one, part: kestow-d4-60, from: radio, power_cable: power-kit-8awg, power_length: 4 m, ground_length: 0.5 m}
              - {id: two, part: kestow-d2-90, from: radio, power_cable: power-kit-8awg, power_length: 4 m, ground_length: 0.5 m}
            extras: [{part: power-kit-8awg, packs: 1}]

            """);

        Assert.Equal(2, list.Line("power-kit-8awg").Packs);
        Assert.DoesNotContain(list.Lines, l => l.Part.StartsWith("power-cable", StringComparison.Ordinal));
    }

    [Theory]
    // the kit's cables are 5 m and 1 m
    [InlineData("power_cable: power-kit-8awg, power_length: 5 m, ground_length: 1 m", Status.Pass, Status.Pass)]
    // two pieces of 5 m would have a joint
    [InlineData("power_cable: power-kit-8awg, power_length: 9.9 m, ground_length: 1 m", Status.Fail, Status.Pass)]
    [InlineData("power_cable: power-cable-8awg-7m, power_length: 5.5 m, ground_cable: power-cable-8awg-ground-1m, ground_length: 1.2 m",
        Status.Pass, Status.Fail)]
    [InlineData("power_cable: power-kit-8awg", Status.Measure, Status.Measure)] // the vehicle's usual way is none that was measured
    public void A_power_cable_reaches_in_one_piece(string wiring, Status power, Status ground)
    {
        var findings =
            Trial.Of(Start + $"devices: [{{id: radio, part: factory}}, {{id: amp, part: kestow-d4-60, from: radio, {wiring}}}]\n").Findings;

        Assert.Equal(power, findings.Single(f => f.Rule == "supply/cable-too-short").Status);
        Assert.Equal(ground, findings.Single(f => f.Rule == "supply/ground-cable-too-short").Status);
    }

    [Theory]
    [InlineData("10 m", Status.Pass)]
    [InlineData("12 m", Status.Warn)] // on a roll of 10 m
    public void A_speaker_cable_that_has_to_be_joined_is_told(string way, Status status)
    {
        var findings = Trial.Of("""
            kind: build
            name: trial
            vehicle: tansy-hatch
            fit:
              - at: [front-door-left]
                driver: orrin-w165-4
                adapter: spacer-165-tansy-18
                new_wire: {cable: speaker-cable-16awg-10m, length: WAY}
            """.Replace("WAY", way, StringComparison.Ordinal)).Findings;

        Assert.Equal(status, findings.Single(f => f.Rule == "wiring/speaker-cable-too-short").Status);
    }
}
