using FitCheck.Findings;
using Xunit;

namespace FitCheck.Tests.Facts;

/// <summary>What nobody looked for is not absent.</summary>
public sealed class AirbagTests
{
    private const string Build = """
        kind: build
        name: One door
        vehicle: tansy-hatch
        fit:
          - {at: [front-door-left], driver: orrin-w165-4, adapter: spacer-165-tansy-18}
        """;

    [Theory]
    [InlineData("seal/airbag-near", "airbag_near")]
    [InlineData("seal/pressure-sensor-door", "pressure_sensor")]
    public void Not_recorded_is_to_be_looked_for(string rule, string key)
    {
        var vehicle = Trial.Entry("vehicles/tansy-hatch.yaml");
        var silent = string.Join('\n', vehicle.Split('\n').Where(l => !l.Contains(key + ":", StringComparison.Ordinal)));

        Assert.Equal(Status.Pass, StatusOf(vehicle));
        Assert.Equal(Status.Measure, StatusOf(silent));
        Assert.Equal(Status.Warn, StatusOf(vehicle.Replace(key + ": false", key + ": true", StringComparison.Ordinal)));

        Status StatusOf(string text) =>
            Assert.Single(Trial.Of(Build, ("vehicles/tansy-hatch.yaml", text)).Findings, f => f.Rule == rule).Status;
    }
}
