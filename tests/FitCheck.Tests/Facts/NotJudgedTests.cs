using FitCheck.Evaluation;
using FitCheck.Findings;
using Xunit;

namespace FitCheck.Tests.Facts;

/// <summary>A rule that does not apply is listed, with the part of its condition that is false in a few words.</summary>
public sealed class NotJudgedTests
{
    private static readonly BuildResult DoorSwap = Of("tansy-door-swap");

    // What the build is, read from its file: coaxials in two doors on the factory radio, nothing accepted, tweeters unplugged.
    [Theory]
    [InlineData("tweeter/full-range-feed", "front-door-left", "not a tweeter")]
    [InlineData("tweeter/cup-too-shallow", "front-door-left", "no cup")]
    [InlineData("wiring/door-passage-unprotected", "front-door-right", "no new wire")]
    [InlineData("mount/driver-holes-to-drill", "front-door-left", "drilling is not accepted")]
    [InlineData("wiring/splice-forbidden", "front-door-left", "has a harness adapter")]
    [InlineData("power/limit-above-rating", "front-door-left", "no power limit")]
    [InlineData("load/bridging-not-allowed", "front-left", "not bridged")]
    [InlineData("supply/alternator-overloaded", "build", "no amplifier")]
    [InlineData("list/missing-from-quote", "build", "no seller's list")]
    [InlineData("seal/gap-to-the-door-card", "front-tweeter-left", "no driver")]
    public void The_reason_is_what_is_false(string rule, string position, string reason) =>
        Assert.Equal(reason, Assert.Single(DoorSwap.NotJudged, n => n.Rule == rule && n.Position == position).Reason);

    [Fact]
    public void A_gap_to_a_door_card_is_asked_of_doors_alone() =>
        Assert.Equal("not a door", Assert.Single(Of("corvid-shelf-6x9").NotJudged,
            n => n.Rule == "seal/gap-to-the-door-card" && n.Position == "rear-shelf-left").Reason);

    [Fact]
    public void A_rule_is_judged_or_listed_and_never_both()
    {
        var judged = DoorSwap.Findings.Select(f => (f.Rule, f.Position)).ToHashSet();
        Assert.DoesNotContain(DoorSwap.NotJudged, n => judged.Contains((n.Rule, n.Position)));
        Assert.Equal(DoorSwap.NotJudged.Count, DoorSwap.NotJudged.Select(n => (n.Rule, n.Position)).Distinct().Count());
    }

    [Fact]
    public void Every_reason_is_a_few_words()
    {
        var wordy = Directory.GetFiles(RepositoryRoot.Of("catalog", "builds"), "*.yaml").Order(StringComparer.Ordinal).Take(12)
            .SelectMany(f => Of(Path.GetFileNameWithoutExtension(f)).NotJudged).Where(n => n.Reason.Length > 80)
            .Select(n => $"{n.Rule}: {n.Reason}").Distinct(StringComparer.Ordinal).ToList();
        Assert.True(wordy.Count == 0, string.Join('\n', wordy));
    }

    private static BuildResult Of(string build) =>
        Trial.Of(File.ReadAllText(RepositoryRoot.Of("catalog", "builds", build + ".yaml")));
}
