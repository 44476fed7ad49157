using FitCheck.Cli.Commands;
using FitCheck.Evaluation;
using FitCheck.Findings;
using FitCheck.Foundation;
using FitCheck.Suggestions;
using Xunit;

namespace FitCheck.Tests.Suggestions;

/// <summary>
/// Each reference build that fails is made to pass, or it is proved that nothing of the catalog does; what would be written is checked as a
/// file.
/// </summary>
public sealed class ReferenceSuggestionTests
{
    private static readonly Folders Folders = new([RepositoryRoot.Of("catalog")], [RepositoryRoot.Of("rules")]);
    private static readonly TimeSpan Enough = TimeSpan.FromMinutes(10);

    // Why nothing of the catalog helps, worked out by hand from the catalog's figures.
    private static readonly Dictionary<string, string> NothingHelps = new(StringComparer.Ordinal)
    {
        ["sedge-shallow-box"] = "every ring for 250 mm drivers comes without holes, and drilling is not accepted",
        ["sedge-desk-supply"] = "a wire whose way is written as 0 m reaches nothing, and other lengths are not tried",
    };

    public static TheoryData<string> Failing() =>
        [.. Builds().Where(b => b.Verdict == Status.Fail).Select(b => Path.GetFileNameWithoutExtension(b.File))];

    [Theory]
    [MemberData(nameof(Failing))]
    public void A_failing_build_is_made_to_pass_or_proved_hopeless(string name)
    {
        var outcome = new Once(Folders, ValidationCache.Nothing).Suggest(RepositoryRoot.Of("catalog", "builds", name + ".yaml"),
            new SuggestOptions { Time = Enough });
        Assert.Empty(outcome.Problems);
        var suggestion = outcome.Result!;

        // That nothing else is better among what adds no warning may take too long to prove; that there is such an answer is shown.
        Assert.True(suggestion.Proof.Complete || suggestion.WithoutNewWarning == true);
        Assert.All(suggestion.Proposals, p => Assert.Equal(suggestion.WithoutNewWarning == true, p.New.Count == 0));
        Assert.Equal(NothingHelps.ContainsKey(name), !suggestion.Passes);
        Assert.All(suggestion.Proposals, Passes);
        if (!suggestion.Passes)
            Assert.NotEmpty(suggestion.Conflict!.Obstacles);
    }

    [Theory]
    [InlineData("gannet-spacers-swapped", "spacer-165-gannet-tilt-5-left", "spacer-165-gannet-tilt-5-right")] // each hand on its own side
    // plug Duo-A, tabs 4.8 and 2.8 mm; the cheaper of the two spacers made for the door
    [InlineData("tansy-wrong-harness", "harness-duo-a-48-28", "harness-duo-a-48-28", "spacer-165-tansy-18")]
    [InlineData("pellet-too-deep", "spacer-130-pellet-18")] // 56 mm on 44 mm: 12 mm and more, on the Pellet's holes
    // 4 mm of flange and the ring of 6 mm take 10 mm of screw; the length of ISO 1478 below is 9.5 mm (value from memory)
    [InlineData("corvid-long-screws", "screws-st39x9-5")]
    [InlineData("larkspur-thick-screws", "screws-st39x9-5")] // 3.5 mm of flange and the ring of 8 mm take 11.5 mm, holes for 3.9 mm
    // the only converter with filters: what was chosen for its sound, the amplifier, stays
    [InlineData("tansy-active-out-of-reach", "radio through kestow-hl5-dsp")]
    [InlineData("sedge-bridged-sub", "sub-amp.1")] // 2.2 ohm not bridged, on an amplifier for 2 ohm
    public void The_best_answer_is_what_a_fitter_would_do(string name, params string[] choices)
    {
        var best = new Once(Folders, ValidationCache.Nothing).Suggest(RepositoryRoot.Of("catalog", "builds", name + ".yaml"),
            new SuggestOptions { Time = Enough }).Result!.Proposals[0];

        Assert.Equal(choices, best.Changes.Select(c => c.To));
    }

    // In the engine space 4 AWG carries 136 A and 2 AWG 178.5 A (33 CFR 183.425, table 5, 105 °C); 1/0 AWG copper-clad carries 285 x 0.7931
    // x 0.85 = 192 A, and is the cheapest in the catalog that carries 150 A.
    [Fact]
    public void A_fuse_that_is_to_stay_gets_a_cable_that_carries_it()
    {
        var options = new SuggestOptions { Time = Enough, Keep = ["fuse-anl-150"] };

        Assert.Equal(["power-cable-1-0awg-cca-5m"],
            new Once(Folders, ValidationCache.Nothing).Suggest(RepositoryRoot.Of("catalog", "builds", "sedge-bold-cable.yaml"),
                options).Result!.Proposals[0].Changes.Select(c => c.To));
    }

    private static void Passes(Proposal proposal)
    {
        using var folder = new TemporaryFolder();
        folder.Write("changed.yaml", proposal.Yaml);
        var check = new Once(Folders, ValidationCache.Nothing).Check([Path.Combine(folder.Path, "changed.yaml")]);
        Assert.Empty(check.Problems);
        Assert.NotEqual(Status.Fail, check.Result!.Verdict);
        Assert.Equal(proposal.After.Totals, check.Result.Builds[0].Totals);
    }

    private static IReadOnlyList<BuildResult> Builds() =>
        new Once(Folders,
            ValidationCache.Nothing).Check(
                [.. Directory.GetFiles(RepositoryRoot.Of("catalog", "builds"), "*.yaml").Order(StringComparer.Ordinal)]).Result!.Builds;
}
