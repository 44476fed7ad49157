using FitCheck.Evaluation;
using FitCheck.Findings;
using FitCheck.Measuring;
using Xunit;
using Xunit.Abstractions;

namespace FitCheck.Tests.Facts;

/// <summary>
/// What the trade says of a build for a car of which only a similar one is known (common practice, no source): parts are chosen by the
/// similar one, nothing is bought before this car is measured, and a fault between two parts is one in any car.
/// </summary>
public sealed class StandInCasesTests(ITestOutputHelper output)
{
    // Behind the build: what the trade asks on the meant car, or says of it already.
    [Theory]
    // A swap that goes together in the Tansy: the glass of this car may be nearer.
    [InlineData("tansy-door-swap", "mount/glass-too-near", "front-door-left", "measure")]
    // Nobody knows whether this door carries a pressure sensor, or an airbag is near.
    [InlineData("tansy-door-swap", "seal/pressure-sensor-door", "front-door-left", "measure")]
    [InlineData("gannet-tweeter-swap", "seal/airbag-near", "front-tweeter-left", "measure")]
    // Its spacer is made for the Tansy, not for this car.
    [InlineData("tansy-door-swap", "mount/spacer-for-another-vehicle", "front-door-left", "warn")]
    // What the wire to its tweeter carries is not known, so that a bare tweeter is no clear fault yet.
    [InlineData("tansy-bare-tweeter", "tweeter/full-range-feed", "front-tweeter-left", "measure")]
    // Whether water runs down behind this panel decides whether fibreboard may stay there.
    [InlineData("tansy-mdf-rings", "seal/wood-in-a-wet-door", "front-door-left", "measure")]
    // What its factory driver had, decides what a driver of 4 ohm loses.
    [InlineData("larkspur-four-ohm", "power/level-lost-by-impedance", "front-door-left", "measure")]
    // Whose plug is in its door nobody has looked.
    [InlineData("tansy-wrong-harness", "wiring/splice-forbidden", "front-door-right", "measure")]
    // Screws that are too long for the spacer are so in any car.
    [InlineData("corvid-long-screws", "mount/screw-too-long", "front-door-left", "fail")]
    // Terminals that do not mate do so in no car, and a ring without holes has none in this one either.
    [InlineData("tansy-wrong-harness", "wiring/harness-for-other-terminals", "front-door-left", "fail")]
    [InlineData("sedge-shallow-box", "mount/blank-spacer", "cargo", "fail")]
    public void The_trade_says_so(string build, string rule, string at, string status)
    {
        var found = Meant(build).Findings.Where(f => f.Position == at).ToList();
        foreach (var finding in found)
            output.WriteLine($"{finding.Rule} {finding.Status.Word()}");

        Assert.Equal(status, found.SingleOrDefault(f => f.Rule == rule)?.Status.Word());
    }

    [Theory]
    [InlineData("tansy-door-swap", "tansy-hatch")]
    [InlineData("larkspur-four-ohm", "larkspur-wagon")]
    [InlineData("pellet-too-deep", "pellet-city")]
    [InlineData("ostler-hole-too-small", "ostler-pickup")]
    public void With_all_readings_answered_it_is_what_the_numbers_say(string build, string vehicle)
    {
        var own = Trial.Of(StandInText.Plain(build));
        var (text, result) = new StandInReadings(vehicle).Answered(StandInText.Meant(build));
        output.WriteLine(text[text.IndexOf("readings:", StringComparison.Ordinal)..]);

        var differing = own.Findings.Select(f => (f.Rule, f.Position, Was: f.Status,
                Is: result.Findings.FirstOrDefault(o => o.Rule == f.Rule && o.Position == f.Position)?.Status))
            // Made for the catalog's vehicle is not made for this one.
            .Where(f => f.Is != f.Was && f.Rule != "mount/spacer-for-another-vehicle").ToList();
        foreach (var left in result.Findings.Where(f => f.Status == Status.Measure))
            output.WriteLine($"{left.Rule} {left.Position}: {string.Join("; ", left.ToMeasure.Select(m => m.What + " " + m.ToFillIn))}");
        Assert.Empty(differing);
    }

    [Fact]
    public void Every_question_of_the_readings_has_its_line()
    {
        var result = Meant("tansy-door-swap");

        var open = OpenReadings.Of(result);
        Assert.All(open, r => Assert.StartsWith("{at: ", r.Line, StringComparison.Ordinal));
        Assert.Contains(open, r => r.Key is { At: "front-door-left", Of: "airbag_near" });
        Assert.Contains(open, r => r.Key is { At: "front-door-right", Of: "mounting.obstructions.window glass.depth" });
        // Nothing that was seen on this car belongs into another vehicle's entry.
        Assert.DoesNotContain(result.Findings.SelectMany(f => f.ToMeasure),
            m => m.How.Contains("tansy-hatch.yaml", StringComparison.Ordinal));
    }

    [Fact]
    public void The_parts_own_data_stay_what_they_are()
    {
        var own = Trial.Of(StandInText.Plain("tansy-door-swap"));
        var meant = Meant("tansy-door-swap");

        Assert.Equal(own.List.Select(l => l.ToString()), meant.List.Select(l => l.ToString()));
        string[] ofPartsAlone = ["mount/driver-holes-missed", "mount/spacer-opening-too-narrow",
            "wiring/harness-for-other-terminals", "seal/wood-in-a-wet-door"];
        foreach (var finding in own.Findings.Where(f => ofPartsAlone.Contains(f.Rule)))
        {
            Assert.Equal(finding.Status,
                meant.Findings.FirstOrDefault(f => f.Rule == finding.Rule && f.Position == finding.Position)?.Status);
        }
    }

    private static BuildResult Meant(string build) => Trial.Of(StandInText.Meant(build));
}
