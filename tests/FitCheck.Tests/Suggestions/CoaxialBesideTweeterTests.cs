using FitCheck.Catalog;
using FitCheck.Cli.Commands;
using FitCheck.Evaluation;
using FitCheck.Facts;
using FitCheck.Findings;
using FitCheck.Foundation;
using FitCheck.Foundation.Problems;
using FitCheck.Rules;
using FitCheck.Suggestions;
using FitCheck.Suggestions.Choices;
using FitCheck.Suggestions.Searching;
using FitCheck.Suggestions.Trials;
using Xunit;

namespace FitCheck.Tests.Suggestions;

/// <summary>
/// Coaxials in the doors and tweeters beside them on one radio output: two tweeters and a woofer in parallel are too low a load (common
/// practice, no source). The trade's answers are a woofer in the coaxial's place, and one set for both places.
/// </summary>
public sealed class CoaxialBesideTweeterTests
{
    private const string Coaxials = """
        kind: build
        name: Tansy, coaxials and tweeters
        vehicle: tansy-hatch
        fit:
          - at: [front-door-left, front-door-right]
            driver: pellworth-c165
            adapter: spacer-165-tansy-18
            harness: harness-duo-a-48-28
            with: [foam-tape-3x12, ring-165-25]
          - at: [front-tweeter-left, front-tweeter-right]
            driver: pellworth-t25
            cup: cup-45-tansy
            harness: harness-mini-t-leads
            with: [capacitor-10uf]
        """;

    private static readonly Folders Folders = new([RepositoryRoot.Of("catalog")], [RepositoryRoot.Of("rules")]);

    [Fact]
    public void A_woofer_of_the_same_line_comes_where_the_tweeter_plays_the_treble()
    {
        using var folder = new TemporaryFolder();
        var suggestion = new Once(Folders, ValidationCache.In(folder.Path)).Suggest(folder.Write("build.yaml", Coaxials),
            new SuggestOptions { Time = TimeSpan.FromMinutes(5) }).Result!;

        Assert.Equal(Status.Fail, suggestion.Before.Verdict);
        var best = suggestion.Proposals[0];
        Assert.Equal(("driver", "pellworth-c165", "pellworth-p165"),
            Assert.Single(best.Changes) is var change ? (change.What, change.From, change.To) : default);
        Assert.All(suggestion.Proposals,
            p => Assert.True(
                new Once(Folders,
                    ValidationCache.In(folder.Path)).Check([folder.Write("changed.yaml", p.Yaml)]).Result!.Verdict < Status.Fail));
        Assert.Contains(suggestion.Coverage.Tried, t => t.Choices == "other coaxials or woofers");
    }

    [Fact]
    public void Where_no_driver_alone_may_change_one_set_takes_both_places()
    {
        var evaluator = Bench(Coaxials, out var catalog);
        var slots = Slots.Of(evaluator, catalog, currentOnly: false, keep: []).Where(s => s.What != "driver").ToList();

        var best = new Finder(evaluator, slots, new Goal(), TimeSpan.FromMinutes(5)).Best(3);

        Assert.All(best, a => Assert.Equal("component set", Assert.Single(a.Changes, c => c.Slot.IsVoice).Slot.What));
        // The set of the same woofer and tweeter, whose crossover stands in the wire beside the capacitor: a second high-pass warns, and
        // does not fail.
        Assert.Contains(best, a => a.Changes.Any(c => c.Option.Value == "pellworth-set-165"));
        foreach (var answer in best)
            Assert.True(
                BuildEvaluation.Judged(evaluator.ReadText(QuoteText.Renewed(evaluator, answer.Changes))!,
                    RuleSet.Load([RepositoryRoot.Of("rules")], FactRegistry.Declarations, new ProblemList())).Verdict < Status.Fail);
    }

    [Theory]
    [InlineData("pellworth-c165")]
    [InlineData("pellworth-t25")]
    [InlineData("front-tweeter-left")]
    public void What_is_kept_becomes_no_set(string kept)
    {
        var evaluator = Bench(Coaxials, out var catalog);
        Assert.Contains(Slots.Of(evaluator, catalog, currentOnly: false, keep: []), IsSet);
        Assert.DoesNotContain(Slots.Of(evaluator, catalog, currentOnly: false, keep: [kept]), IsSet);
    }

    [Fact]
    public void Without_a_tweeter_beside_it_a_coaxial_stays_one()
    {
        var evaluator = Bench(Coaxials[..Coaxials.IndexOf("  - at: [front-tweeter-left", StringComparison.Ordinal)], out var catalog);
        var slots = Slots.Of(evaluator, catalog, currentOnly: false, keep: []);

        Assert.All(slots.Single(s => s.What == "driver").Options, o => Assert.Equal("coaxial", Assert.IsType<Driver>(o.Parts[0]).Type));
        Assert.DoesNotContain(slots, IsSet);
    }

    private static bool IsSet(Slot slot) => slot.What == "component set";

    private static ProposalEvaluator Bench(string text, out PartsCatalog catalog)
    {
        var problems = new ProblemList();
        catalog = PartsCatalog.Open([RepositoryRoot.Of("catalog")], problems);
        return new ProposalEvaluator("build.yaml", text, catalog,
            RuleSet.Load([RepositoryRoot.Of("rules")], FactRegistry.Declarations, problems));
    }
}
