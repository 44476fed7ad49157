using FitCheck.Evaluation;
using FitCheck.Facts.Values;
using FitCheck.Findings;
using Xunit;

namespace FitCheck.Tests.Facts;

/// <summary>
/// One amplifier of 81 % efficiency behind a factory radio of 18 W into 4 ohm; each of its two channels is limited to 40 W.
/// </summary>
public sealed class SupplyFactsTests
{
    internal const string Fit = """
        kind: build
        name: trial
        vehicle: tansy-hatch
        fit:
          - {at: [front-door-left, front-door-right], driver: orrin-w165-4, adapter: spacer-165-tansy-18, harness: harness-duo-a-63-48}
          - {at: [front-tweeter-left, front-tweeter-right], disconnected: true}
        channels:
          - {id: left, output: amp.1, limit: 40 W, feeds: [front-door-left]}
          - {id: right, output: amp.2, limit: 40 W, feeds: [front-door-right]}

        """;

    private const string Amplifier = "devices: [{id: radio, part: factory}, {id: amp, part: kestow-d4-60, from: radio";

    [Fact]
    public void The_demand_is_the_output_power_over_efficiency_and_voltage() =>
        Assert.Equal(7.157, Number("}]", "demand")!.Value, 0.001); // hand calculation: 2 x 40 W / (0.81 x 13.8 V)

    [Fact]
    public void The_drop_counts_the_way_there_and_the_ground_cable() =>
        // 8 AWG has 0.6282 ohm per 1000 ft at 20 °C (ASTM B258 tables): 2.061 mohm/m, x 1.1572 at 60 °C, x 4.5 m x 7.157 A.
        Assert.Equal(0.0768, Number(", power_cable: power-kit-8awg, power_length: 4 m, ground_length: 0.5 m}]", "voltage_drop")!.Value,
            0.0002);

    [Fact]
    public void A_way_that_nobody_measured_is_to_be_measured_and_told_how_long_it_may_be()
    {
        var finding = Find(", power_cable: power-kit-8awg, ground_length: 0.5 m}]", "supply/voltage-drop-too-high");
        Assert.Equal(Status.Measure, finding.Status);
        // (0.5 V / 7.157 A - 0.5 m x 2.385 mohm/m) / 2.385 mohm/m = 28.8 m, rounded down to what a tape reads.
        Assert.Equal("28.7 m or less", Assert.Single(finding.ToMeasure).Passing);
    }

    [Fact]
    public void A_kit_on_the_list_counts_where_no_cable_is_named() =>
        // 60 A fuse, cable for 60 A
        Assert.Equal(Status.Pass, Find("}]\nextras: [{part: power-kit-8awg, packs: 1}]", "supply/fuse-above-cable-limit").Status);

    [Fact]
    public void A_kit_that_stands_for_a_cable_is_bought_once_and_what_it_holds_is_not_bought_again()
    {
        var list = Result(", power_cable: power-kit-8awg, power_length: 4 m}]").List;
        Assert.Equal(1, Assert.Single(list, l => l.Part == "power-kit-8awg").Packs);
        Assert.DoesNotContain(list, l => l.Part is "fuse-maxi-60" or "power-cable-8awg-5m" or "power-cable-8awg-ground-1m");
    }

    [Fact]
    public void An_amplifier_brings_the_cautions_of_its_trade()
    {
        var cautions = Result("}]").Cautions;
        foreach (var begin in new[] { "Battery:", "Fuse before power:", "Cables:", "Hearing:" })
            Assert.Contains(cautions, c => c.StartsWith(begin, StringComparison.Ordinal));
    }

    private static double? Number(string rest, string fact) =>
        Result(rest).Facts.Single(t => t.Subject == Subject.Device && t.Key == "amp").Values[fact].Number?.Value;

    private static Finding Find(string rest, string rule) => Result(rest).Findings.Single(f => f.Rule == rule && f.Position == "amp");

    private static BuildResult Result(string rest) => Trial.Of(Fit + Amplifier + rest);
}
