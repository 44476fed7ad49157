using FitCheck.Findings;
using Xunit;

namespace FitCheck.Tests.Facts;

public sealed class GuessedTiltTests
{
    private const string Build = """
        name: tilted ring
        vehicle: tansy-hatch
        fit:
          - {at: [front-door-left], driver: orrin-w165-4, adapter: spacer-165-tansy-tilt-8-left}
        """;

    // A spacer whose figures are all guessed, its tilt among them: what has to be measured is told, and no tilt is tried that can't be.
    [Fact]
    public void A_guessed_tilt_is_measured_and_no_reading_in_millimetres_is_told_for_it()
    {
        const string file = "adapters/spacer-165-tansy-tilt-8-left.yaml";
        var guessed = Trial.Entry(file).Replace("provenance: datasheet", "provenance: estimated", StringComparison.Ordinal)
            .Replace("provenance: measured", "provenance: estimated", StringComparison.Ordinal);

        var depth = Assert.Single(Trial.Of(Build, (file, guessed)).Findings, f => f.Rule == "mount/too-deep");

        Assert.Equal(Status.Measure, depth.Status);
        Assert.Contains(depth.ToMeasure, m => m.What == "tilt of the spacer" && m.Passing is null);
    }
}
