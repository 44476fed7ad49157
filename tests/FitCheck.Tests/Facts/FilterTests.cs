using FitCheck.Evaluation;
using FitCheck.Findings;
using Xunit;

namespace FitCheck.Tests.Facts;

/// <summary>
/// A filter that a build sets is there only when a device can make it (common practice, no source: a knob that ends at 400 Hz does not
/// reach 3.5 kHz). Tansy, an active front: woofers on the outputs 1 and 2 of an amplifier, tweeters on 3 and 4, a factory radio without
/// filters before it.
/// </summary>
public sealed class FilterTests
{
    private const string BareTweeter = "tweeter/full-range-feed", NoHighPass = "signal/high-pass-out-of-reach", NoLowPass =
        "signal/low-pass-out-of-reach", NoSlope = "signal/filter-slope-not-offered";

    [Theory]
    [InlineData("[40 Hz, 400 Hz]", Status.Fail)] // ends three octaves below
    [InlineData("[50 Hz, 5 kHz]", Status.Pass)]
    [InlineData("[50 Hz, 3500 Hz]", Status.Pass)] // its end exactly
    [InlineData("[3500 Hz, 8 kHz]", Status.Pass)] // its beginning exactly
    [InlineData("[50 Hz, 3.4 kHz]", Status.Fail)]
    [InlineData("[4 kHz, 8 kHz]", Status.Fail)] // begins above
    [InlineData("[50 Hz, 5 kHz (estimated)]", Status.Measure)] // a guess
    [InlineData("none", Status.Fail)] // the sheet says that there is none
    [InlineData(null, Status.Measure)] // nobody wrote anything: read the manual
    public void A_tweeter_hangs_on_a_high_pass_that_its_amplifier_must_have(string? range, Status expected)
    {
        var result = Active(Amplifier(high: range));

        Assert.Equal(expected, Of(result, BareTweeter, "front-tweeter-left"));
        Assert.Equal(expected switch { Status.Fail => true, Status.Pass => false, _ => null },
            Truth(result, "front-tweeter-left", "tweeter_full_range"));
        // Said once, at the tweeter.
        Assert.Equal(expected == Status.Pass ? Status.Pass : null, Of(result, NoHighPass, "tweeter-left"));
        // Of a tweeter that is bare for certain no corner is asked.
        Assert.Equal(expected != Status.Fail, result.Findings.Any(f => f.Rule == "tweeter/crossover-below-limit"));
    }

    [Fact]
    public void The_finding_names_the_device_the_filter_and_its_end()
    {
        var message = Assert.Single(Active(Amplifier(high: "[40 Hz, 400 Hz]")).Findings,
            f => f is { Rule: BareTweeter, Position: "front-tweeter-left" }).Message;

        Assert.Contains("3500 Hz", message, StringComparison.Ordinal);
        Assert.Contains("40 Hz to 400 Hz", message, StringComparison.Ordinal);
        Assert.Contains("Kestow D4-60 compact amplifier", message, StringComparison.Ordinal);
    }

    [Fact]
    public void Beside_a_capacitor_the_tweeter_is_not_bare_but_the_filter_is_still_not_there()
    {
        var result = Trial.Of(Build(Radio, "in_line: [capacitor-6-8uf], "), Amplifier(high: "[40 Hz, 400 Hz]"));

        Assert.Equal(Status.Pass, Of(result, BareTweeter, "front-tweeter-left"));
        Assert.Equal(Status.Fail, Of(result, NoHighPass, "tweeter-left"));
        Assert.Equal(Status.Pass, Of(result, "tweeter/second-high-pass", "front-tweeter-left")); // the capacitor is the only one
    }

    [Theory]
    [InlineData("[40 Hz, 250 Hz]", Status.Fail)]
    [InlineData("[40 Hz, 3 kHz]", Status.Pass)] // its end exactly
    [InlineData("none", Status.Fail)]
    [InlineData(null, Status.Measure)]
    public void A_woofers_low_pass_must_be_there_too(string? range, Status expected) =>
        Assert.Equal(expected, Of(Active(Amplifier(high: "[50 Hz, 5 kHz]", low: range)), NoLowPass, "woofer-left"));

    [Theory]
    [InlineData("[40 Hz, 400 Hz]", Status.Pass)]
    [InlineData("[100 Hz, 400 Hz]", Status.Fail)] // 80 Hz lie below its beginning
    [InlineData("none", Status.Fail)]
    [InlineData(null, Status.Measure)]
    public void A_woofers_high_pass_keeps_the_cone_in_bounds_only_when_it_is_there(string? range, Status expected)
    {
        var (result, without) =
            (Active(Amplifier(high: range)),
                Trial.Of(Build(Radio).Replace("high_pass: 80 Hz @ 12 dB/octave, ", "", StringComparison.Ordinal), Amplifier(high: range)));

        Assert.Equal(expected, Of(result, NoHighPass, "woofer-left"));
        Assert.Equal(expected switch { Status.Pass => true, Status.Fail => false, _ => null },
            Truth(result, "front-door-left", "has_high_pass"));
        var (with, bare) = (Number(result, "front-door-left", "excursion_ratio"), Number(without, "front-door-left", "excursion_ratio"));
        Assert.True(expected == Status.Fail ? with == bare : with < bare, $"{with} against {bare}");
        // As far as it is not known, it is no reason to be content.
        Assert.Equal(expected == Status.Measure, Of(result, "power/excursion-beyond-linear", "front-door-left") == Status.Measure);
    }

    [Theory]
    [InlineData("filters: false", Status.Fail, Status.Fail)]
    [InlineData("filters: true", Status.Measure, Status.Measure)] // it has some; how far they go stands in its manual
    [InlineData("", Status.Measure, Status.Measure)] // nobody wrote whether it has any
    [InlineData("filters: true\nhigh_pass_range: [50 Hz, 10 kHz]\nfilter_slopes: [12 dB/octave]", Status.Pass, Status.Pass)]
    [InlineData("filters: true\nhigh_pass_range: [50 Hz, 10 kHz]\nfilter_slopes: [24 dB/octave]", Status.Fail, Status.Pass)]
    [InlineData("filters: true\nhigh_pass_range: [50 Hz, 10 kHz]", Status.Measure, Status.Pass)] // how steep is not known
    [InlineData("filters: true\nhigh_pass_range: [50 Hz, 200 Hz]", Status.Fail, Status.Pass)] // enough for the woofers' 80 Hz
    [InlineData("high_pass_range: none", Status.Fail, Status.Fail)]
    public void A_radio_has_the_filter_or_not(string filters, Status expected, Status woofer)
    {
        var radio = Trial.Entry("sources/kestrin-dm1.yaml").Replace("filters: false", filters, StringComparison.Ordinal);
        var build = Build("{id: amp, part: kestrin-dm1}").Replace("amp.1,", "amp.front-left,", StringComparison.Ordinal)
            .Replace("amp.2,", "amp.front-right,", StringComparison.Ordinal)
            .Replace("amp.3,", "amp.rear-left,", StringComparison.Ordinal).Replace("amp.4,", "amp.rear-right,", StringComparison.Ordinal);
        var result = Trial.Of(build, ("sources/kestrin-dm1.yaml", radio));

        Assert.Equal(expected, Of(result, BareTweeter, "front-tweeter-left"));
        Assert.Equal(woofer, Of(result, NoHighPass, "woofer-left"));
    }

    // A processor before the amplifier makes the filter for it, where each output gets a signal of its own (common practice, no source).
    [Theory]
    [InlineData(4, "high_pass_range: [20 Hz, 10 kHz]\nfilter_slopes: [12 dB/octave]", Status.Pass)]
    [InlineData(4, "high_pass_range: [20 Hz, 10 kHz]\nfilter_slopes: [48 dB/octave]", Status.Fail)]
    [InlineData(4, "high_pass_range: [20 Hz, 10 kHz]", Status.Measure)] // how steep is not known
    [InlineData(4, "high_pass_range: [20 Hz, 500 Hz]", Status.Fail)]
    [InlineData(2, "high_pass_range: [20 Hz, 10 kHz]", Status.Fail)] // two signals for four outputs: woofers and tweeters share them
    [InlineData(4, "filters: false", Status.Fail)]
    [InlineData(4, "filters: true", Status.Measure)]
    [InlineData(4, "", Status.Measure)] // nobody wrote whether it has any
    public void A_processor_before_the_amplifier_may_make_it(int channels, string filters, Status expected)
    {
        var lines = string.Join('\n',
            Trial.Entry("converters/brannoch-lc4.yaml").Split('\n').Where(l => !l.StartsWith("filters:", StringComparison.Ordinal)))
            .Replace("channels: 4", $"channels: {channels}\n{filters}", StringComparison.Ordinal);
        var result =
            Trial.Of(Build(
                "{id: radio, part: factory}, {id: lines, part: brannoch-lc4, from: radio}, {id: amp, part: kestow-d4-60, from: lines}"),
            ("converters/brannoch-lc4.yaml", lines), Amplifier(high: "[40 Hz, 400 Hz]"));

        Assert.Equal(expected, Of(result, BareTweeter, "front-tweeter-left"));
    }

    [Theory]
    [InlineData("[12 dB/octave]", Status.Pass)]
    [InlineData("[6 dB/octave, 12 dB/octave]", Status.Pass)]
    [InlineData("[24 dB/octave]", Status.Fail)]
    [InlineData(null, Status.Measure)] // nobody wrote how steep they are
    public void A_filter_must_be_as_steep_as_it_is_set(string? slopes, Status expected)
    {
        var result = Active(Amplifier(high: "[40 Hz, 400 Hz]", low: "[40 Hz, 3 kHz]", slopes));

        Assert.Equal(expected, Of(result, NoSlope, "woofer-left"));
        // Where the corner can't be set there is no slope to ask for.
        Assert.Null(Of(result, NoSlope, "tweeter-left"));
    }

    // The amplifier's own high-pass reaches 80 Hz, but not at 12 dB/octave.
    [Theory]
    [InlineData("filters: true\nhigh_pass_range: [20 Hz, 10 kHz]\nfilter_slopes: [12 dB/octave]", Status.Pass)]
    [InlineData("filters: true\nhigh_pass_range: [20 Hz, 10 kHz]\nfilter_slopes: [48 dB/octave]", Status.Fail)]
    [InlineData("filters: true\nhigh_pass_range: [20 Hz, 10 kHz]", Status.Measure)]
    [InlineData("filters: true", Status.Measure)]
    [InlineData("filters: false", Status.Fail)]
    public void A_processor_before_the_amplifier_may_have_the_slope(string filters, Status expected)
    {
        var lines = Trial.Entry("converters/brannoch-lc4.yaml").Replace("filters: false", filters, StringComparison.Ordinal);
        var build = Build(
            "{id: radio, part: factory}, {id: lines, part: brannoch-lc4, from: radio}, {id: amp, part: kestow-d4-60, from: lines}")
            .Replace("low_pass: 3000 Hz @ 12 dB/octave, ", "", StringComparison.Ordinal);
        var result = Trial.Of(build, ("converters/brannoch-lc4.yaml", lines),
            Amplifier(high: "[40 Hz, 400 Hz]", slopes: "[24 dB/octave]"));

        Assert.Equal(expected, Of(result, NoSlope, "woofer-left"));
    }

    [Fact]
    public void What_a_factory_radio_shapes_nobody_can_set() => Assert.Equal(Status.Fail,
        Of(Trial.Of(Build(Radio),
            ("sources/merrow-r4.yaml",
                Trial.Entry("sources/merrow-r4.yaml").Replace("filters: false", "filters: true", StringComparison.Ordinal)),
                    Amplifier(high: "[40 Hz, 400 Hz]")), BareTweeter, "front-tweeter-left"));

    private const string Radio = "{id: radio, part: factory}, {id: amp, part: kestow-d4-60, from: radio}";

    private static string Build(string devices, string beforeTweeter = "") => $$"""
        kind: build
        name: trial
        vehicle: tansy-hatch
        fit:
          - {at: [front-door-left, front-door-right], driver: orrin-w165-4, adapter: spacer-165-tansy-18, harness: harness-duo-a-63-48}
          - {at: [front-tweeter-left, front-tweeter-right], driver: orrin-t25, cup: cup-45-tansy}
        devices: [{{devices}}]
        channels:
          - {id: woofer-left, output: amp.1, high_pass: 80 Hz @ 12 dB/octave, low_pass: 3000 Hz @ 12 dB/octave, feeds: [front-door-left]}
          - {id: woofer-right, output: amp.2, high_pass: 80 Hz @ 12 dB/octave, low_pass: 3000 Hz @ 12 dB/octave, feeds: [front-door-right]}
          - {id: tweeter-left, output: amp.3, high_pass: 3500 Hz @ 12 dB/octave, {{beforeTweeter}}feeds: [front-tweeter-left]}
          - {id: tweeter-right, output: amp.4, high_pass: 3500 Hz @ 12 dB/octave, {{beforeTweeter}}feeds: [front-tweeter-right]}

        """;

    private static BuildResult Active((string, string) amplifier) => Trial.Of(Build(Radio), amplifier);

    private static (string File, string Text) Amplifier(string? high, string? low = "[40 Hz, 4 kHz]",
        string? slopes = "[12 dB/octave, 24 dB/octave]")
    {
        var lines = Trial.Entry("amplifiers/kestow-d4-60.yaml").Split('\n')
            .Where(l => !l.Contains("_pass_range", StringComparison.Ordinal) && !l.Contains("filter_slopes", StringComparison.Ordinal))
            .ToList();
        if (slopes is not null)
            lines.Insert(lines.Count - 1, "filter_slopes: " + slopes);
        if (high is not null)
            lines.Insert(lines.Count - 1, "high_pass_range: " + high);
        if (low is not null)
            lines.Insert(lines.Count - 1, "low_pass_range: " + low);
        return ("amplifiers/kestow-d4-60.yaml", string.Join('\n', lines));
    }

    private static Status? Of(BuildResult result, string rule, string place) =>
        result.Findings.SingleOrDefault(f => f.Rule == rule && f.Position == place)?.Status;

    private static bool? Truth(BuildResult result, string place, string fact) =>
        result.Facts.Single(t => t.Key == place).Values[fact].Truth;

    private static double Number(BuildResult result, string place, string fact) =>
        result.Facts.Single(t => t.Key == place).Values[fact].Number!.Value.Value;
}
