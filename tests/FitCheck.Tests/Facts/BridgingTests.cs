using FitCheck.Evaluation;
using FitCheck.Findings;
using Xunit;

namespace FitCheck.Tests.Facts;

/// <summary>
/// Which outputs may be bridged stands on the amplifier beside its terminals; two outputs that are not made as a pair may both be of the
/// same polarity, and then nothing or smoke comes of them (common practice, no source). A subwoofer on a four-channel amplifier.
/// </summary>
public sealed class BridgingTests
{
    private const string Named = "bridgeable: true\nbridges: [[1, 2], [3, 4]]";

    [Theory]
    [InlineData("1+2", Named, Status.Pass)]
    [InlineData("2+1", Named, Status.Pass)] // the same pair
    [InlineData("3+4", Named, Status.Pass)]
    [InlineData("1+4", Named, Status.Fail)]
    [InlineData("2+3", Named, Status.Fail)]
    [InlineData("1+2+3+4", Named, Status.Fail)]
    [InlineData("1+4", "bridgeable: true\nbridges: [[1, 4], [2, 3]]", Status.Pass)] // what the sheet says counts, not what is usual
    [InlineData("1+2", "bridgeable: true\nbridges: [[1, 4], [2, 3]]", Status.Fail)]
    [InlineData("1+2", "bridges: [[1, 2]]", Status.Pass)] // who names the pair says that it may be bridged
    [InlineData("3+4", "bridges: [[1, 2]]", Status.Fail)]
    [InlineData("1+2", "bridges: []", Status.Fail)] // there is none
    [InlineData("1+2", "bridgeable: true", Status.Measure)] // usual, but the manual has to say so
    [InlineData("3+4", "bridgeable: true", Status.Measure)]
    [InlineData("1+3", "bridgeable: true", Status.Fail)]
    [InlineData("1+4", "bridgeable: true", Status.Fail)]
    [InlineData("2+3", "bridgeable: true", Status.Fail)]
    [InlineData("1+2+3+4", "bridgeable: true", Status.Fail)]
    [InlineData("1+2", "", Status.Measure)] // nobody wrote anything
    [InlineData("1+4", "", Status.Fail)]
    [InlineData("1+2", "bridgeable: false", Status.Fail)]
    public void Only_a_pair_that_the_amplifier_names_is_bridged(string outputs, string bridging, Status expected)
    {
        var amplifier = Trial.Entry("amplifiers/kestow-d4-60.yaml");
        var lines = amplifier.Split('\n').Where(l => !l.StartsWith("bridge", StringComparison.Ordinal)).ToList();
        lines.Insert(lines.Count - 1, bridging);
        var result = Trial.Of(Build.Replace("amp.1+2", "amp." + outputs, StringComparison.Ordinal),
            ("amplifiers/kestow-d4-60.yaml", string.Join('\n', lines)));

        var finding = Assert.Single(result.Findings, f => f.Rule == "load/bridging-not-allowed");
        Assert.Equal(expected, finding.Status);
        if (expected != Status.Pass)
            Assert.Contains(
                outputs.Replace("+", " and ", StringComparison.Ordinal)
                    .Replace("1 and 2 and 3 and 4", "1, 2, 3 and 4", StringComparison.Ordinal), finding.Message, StringComparison.Ordinal);
    }

    private const string Build = """
        kind: build
        name: trial
        vehicle: sedge-suv
        fit:
          - {at: [cargo], driver: halvard-s250-4, adapter: ring-250-cargo-18, box: 30 L}
        devices: [{id: radio, part: factory}, {id: amp, part: kestow-d4-60, from: radio}]
        channels:
          - {id: sub, output: amp.1+2, low_pass: 80 Hz @ 24 dB/octave, feeds: [cargo]}

        """;
}
