using FitCheck.Evaluation;
using FitCheck.Facts.Values;
using Xunit;

namespace FitCheck.Tests.Facts;

/// <summary>A factory radio of 18 W into 4 ohm (8.49 V) before converters and amplifiers.</summary>
public sealed class SignalFactsTests
{
    private const string Fit = """
        kind: build
        name: trial
        vehicle: tansy-hatch
        fit:
          - {at: [front-door-left, front-door-right], driver: orrin-w165-4, adapter: spacer-165-tansy-18, harness: harness-duo-a-63-48}
        channels:
          - {id: left, output: amp.1, feeds: [front-door-left]}
          - {id: right, output: amp.2, feeds: [front-door-right]}

        """;

    [Theory]
    [InlineData("brannoch-lc4", 3.394)] // hand calculation: √(18 W · 4 ohm) · 0.4
    [InlineData("drayle-c4-6v", 3)] // half of 8.49 V, but no more than its sheet's 3 V
    [InlineData("kestow-hl4", 0.849)] // a tenth
    public void A_converter_gives_its_part_of_the_speaker_level(string converter, double volts) =>
        Assert.Equal(volts,
            Amplifier($"{{id: radio, part: factory}}, {{id: lines, part: {converter}, from: radio}}, {{id: amp, part: brannoch-b2-60, "
                + $"from: lines}}").Values["line_level"].Number!.Value.Value, 0.001);

    [Theory]
    [InlineData("{id: amp, part: kestow-d4-60, from: radio}", true)] // its speaker-level input senses the signal, by its sheet
    [InlineData("{id: amp, part: brannoch-b4-50, from: radio}", false)] // its input doesn't, and the radio has no remote output
    [InlineData("{id: amp, part: brannoch-b4-50, from: radio, remote: ignition}", true)] // a switched feed of the vehicle
    public void Something_must_switch_an_amplifier_on(string amplifier, bool on) =>
        Assert.Equal(on, Amplifier("{id: radio, part: factory}, " + amplifier).Values["has_turn_on"].Truth);

    [Theory]
    [InlineData("", 100)] // the converter alone, by its sheet
    [InlineData("extras: [{part: resistor-47ohm, packs: 1}]", 31.97)] // hand calculation: 100 · 47 / 147
    public void A_load_resistor_lies_beside_the_converters_input(string extras, double ohm)
    {
        var devices =
            "{id: radio, part: averstone-m7}, {id: lines, part: brannoch-lc2, from: radio}, {id: amp, part: brannoch-b2-60, from: lines}";
        Assert.Equal(ohm, Table(devices, "lines", extras).Values["source_load"].Number!.Value.Value, 0.01);
    }

    [Fact]
    public void A_remote_that_names_no_device_is_refused()
    {
        var failure =
            Assert.ThrowsAny<Exception>(
                () => Amplifier("{id: radio, part: factory}, {id: amp, part: kestow-d4-60, from: radio, remote: lines}"));
        Assert.Contains("no device `lines`", failure.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void The_gain_starts_from_what_the_weaker_of_output_and_driver_allows()
    {
        var limited =
            Trial.Of(Fit.Replace("amp.1,", "amp.1, limit: 25 W,", StringComparison.Ordinal)
                + "devices: [{id: radio, part: factory}, {id: amp, part: kestow-d4-100, from: radio}]");
        // The driver's 70 W into 4 ohm: √280 = 16.73 V, less than the amplifier's 20 V.
        Assert.Equal(16.73, limited.Facts.Single(t => t.Key == "right").Values["gain_target"].Number!.Value.Value, 0.01);
        // √(25 W · 2.6 to 4.8 ohm), whatever the leftover tweeter makes of the load
        Assert.InRange(limited.Facts.Single(t => t.Key == "left").Values["gain_target"].Number!.Value.Value, 8, 11);
    }

    private static FactTable Amplifier(string devices) => Table(devices, "amp", "");

    private static FactTable Table(string devices, string key, string extras) =>
        Trial.Of(Fit + $"devices: [{devices}]\n{extras}\n").Facts.Single(t => t.Subject == Subject.Device && t.Key == key);
}
