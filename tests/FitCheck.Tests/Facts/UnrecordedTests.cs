using FitCheck.Evaluation;
using FitCheck.Findings;
using Xunit;

namespace FitCheck.Tests.Facts;

/// <summary>A key that nobody wrote is not "there is none".</summary>
public sealed class UnrecordedTests
{
    private const string Line = "low_level_input: {lowest: 0.2 V, highest: 4 V}", Speaker =
        "high_level_input: {highest: 16 V, senses_signal: true}";

    // What goes together: speaker wires into a speaker-level input, a converter or a line output into a line input (common practice, no
    // source).
    [Theory]
    [InlineData("factory", Line + "\n" + Speaker, Status.Pass)]
    [InlineData("factory", Speaker, Status.Pass)] // speaker level it has for certain
    [InlineData("factory", Line, Status.Measure)] // whether it takes speaker level too stands in its manual
    [InlineData("factory", Line + "\nhigh_level_input: none", Status.Fail)]
    [InlineData("factory", "", Status.Measure)]
    [InlineData("factory", "low_level_input: none\nhigh_level_input: none", Status.Fail)]
    [InlineData("factory", "high_level_input: {load: 47 ohm}", Status.Pass)] // it is there, whatever it stands
    [InlineData("brannoch-lc4", Line, Status.Pass)]
    [InlineData("brannoch-lc4", "low_level_input: {highest: 4 V}", Status.Pass)]
    [InlineData("brannoch-lc4", Speaker, Status.Measure)]
    [InlineData("brannoch-lc4", "low_level_input: none\n" + Speaker, Status.Fail)]
    [InlineData("kestrin-dm3", Line, Status.Pass)] // four line outputs
    [InlineData("kestrin-dm3", "low_level_input: none\n" + Speaker, Status.Pass)] // its speaker outputs
    public void An_amplifier_takes_what_it_is_given_or_it_is_to_be_looked_up(string feeder, string inputs, Status expected) =>
        Assert.Equal(expected, Matching(feeder, inputs));

    [Theory]
    [InlineData("low_level_outputs: 2", Status.Pass)] // outputs are there; their voltage is another matter
    [InlineData("low_level_outputs: none", Status.Fail)]
    [InlineData("", Status.Measure)]
    public void A_source_has_line_outputs_or_it_is_to_be_looked_up(string outputs, Status expected)
    {
        var source =
            string.Join('\n',
                Trial.Entry("sources/kestrin-dm1.yaml").Split('\n').Where(l => !l.StartsWith("low_level", StringComparison.Ordinal)))
                    + outputs + "\n";
        Assert.Equal(expected, Matching("kestrin-dm1", Line + "\nhigh_level_input: none", ("sources/kestrin-dm1.yaml", source)));
    }

    private static Status Matching(string feeder, string inputs, params (string, string)[] more)
    {
        var lines = Trial.Entry("amplifiers/kestow-d2-90.yaml").Split('\n').Where(l => !l.Contains("level_input", StringComparison.Ordinal))
            .ToList();
        lines.Insert(lines.Count - 1, inputs);
        var devices = feeder == "brannoch-lc4"
            ? "{id: radio, part: factory}, {id: lines, part: brannoch-lc4, from: radio}, {id: amp, part: kestow-d2-90, from: lines}"
            : $"{{id: radio, part: {feeder}}}, {{id: amp, part: kestow-d2-90, from: radio}}";
        var build = $$"""
            kind: build
            name: trial
            vehicle: tansy-hatch
            fit:
              - {at: [front-door-left, front-door-right], driver: orrin-w165-4, adapter: spacer-165-tansy-18, harness: harness-duo-a-63-48}
            devices: [{{devices}}]
            channels:
              - {id: left, output: amp.1, feeds: [front-door-left]}
              - {id: right, output: amp.2, feeds: [front-door-right]}

            """;
        return Assert.Single(Trial.Of(build, [("amplifiers/kestow-d2-90.yaml", string.Join('\n', lines)), .. more]).Findings,
            f => f.Rule == "signal/input-of-another-kind").Status;
    }

    // Least |Z| / 0.8 by hand. A voice coil of 3.3 ohm alone is like one rated 4.1 ohm; its tweeter of 3.4 ohm behind 3.3 uF has 4.2 ohm at
    // 20 kHz. With next to no inductance both in parallel: about 1.9 ohm, rated 2.4. With 0.2 mH and more the coil has 25 ohm there, and
    // the least lies above the resonance. A rated impedance is that of the whole coaxial, its tweeter included (IEC 60268-5 clause 16.1),
    // so that one of which no sheet gives the inductance is not held to have none.
    [Theory]
    [InlineData("re: 3.3 ohm", "le: 0.31 mH", 4, Status.Pass)]
    [InlineData("re: 3.3 ohm", "", 4, Status.Pass)] // 4.1 ohm at low frequencies, and at high ones as it is rated
    [InlineData("re: 3.3 ohm", "", 2, Status.Pass)] // whatever the coil has: 2.4 ohm at the very least
    [InlineData("re: 1.7 ohm", "", 4, Status.Fail)] // 1.7 / 0.8 = 2.1 ohm at low frequencies, whatever the coil has
    [InlineData("re: 1.7 ohm", "le: 0.2 mH", 4, Status.Fail)]
    [InlineData("re: 3.3 ohm", "le: 0.001 mH", 4, Status.Fail)] // recorded, and it is next to none
    public void A_coaxial_without_inductance_is_judged_as_it_is_rated(string resistance, string inductance, int lowest,
        Status expected)
    {
        var driver = Trial.Entry("drivers/orrin-c165.yaml").Replace("re: 3.3 ohm", resistance, StringComparison.Ordinal)
            .Replace("  le: 0.31 mH\n", inductance.Length == 0 ? "" : $"  {inductance}\n", StringComparison.Ordinal);
        var radio = Trial.Entry("sources/merrow-r4.yaml")
            .Replace("lowest_load: 4 ohm", $"lowest_load: {lowest} ohm", StringComparison.Ordinal);
        var result = Trial.Of("""
            kind: build
            name: trial
            vehicle: tansy-hatch
            fit:
              - {at: [rear-door-left, rear-door-right], driver: orrin-c165, adapter: spacer-165-rear-8}
            """, ("drivers/orrin-c165.yaml", driver), ("sources/merrow-r4.yaml", radio));

        var finding = Assert.Single(result.Findings, f => f is { Rule: "load/below-rated-load", Position: "rear-left" });
        Assert.Equal(expected, finding.Status);
    }
}
