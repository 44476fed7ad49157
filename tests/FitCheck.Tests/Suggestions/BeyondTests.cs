using FitCheck.Catalog;
using FitCheck.Cli.Commands;
using FitCheck.Evaluation;
using FitCheck.Facts;
using FitCheck.Findings;
using FitCheck.Foundation;
using FitCheck.Foundation.Problems;
using FitCheck.Rules;
using FitCheck.Suggestions;
using FitCheck.Suggestions.Searching;
using FitCheck.Suggestions.Trials;
using FitCheck.Yaml;
using Xunit;

namespace FitCheck.Tests.Suggestions;

/// <summary>What the trade does where no exchange helps: something is added (common practice, no source).</summary>
public sealed class BeyondTests
{
    private const string SubwooferAlone = """
        kind: build
        name: Sedge, a subwoofer alone
        vehicle: sedge-suv
        accepts: [drill]
        fit:
          - at: [cargo]
            driver: orrin-s250s-4
            adapter: ring-250-cargo-18
            box: 30 L
            new_wire: {cable: speaker-cable-2-5mm2-10m, length: 2 m}
        """;

    private const string Coaxials = """
        kind: build
        name: Tansy, coaxials
        vehicle: tansy-hatch
        fit:
          - at: [front-door-left, front-door-right]
            driver: pellworth-c165
            adapter: spacer-165-tansy-18
          - at: [front-tweeter-left, front-tweeter-right]
            disconnected: true
        """;

    private static readonly Folders Folders = new([RepositoryRoot.Of("catalog")], [RepositoryRoot.Of("rules")]);
    private static readonly PartsCatalog Catalog = PartsCatalog.Open([RepositoryRoot.Of("catalog")], new ProblemList());
    private static readonly RuleSet Rules = RuleSet.Load([RepositoryRoot.Of("rules")], FactRegistry.Declarations, new ProblemList());

    private static Suggestion Suggested(string text, params string[] keep)
    {
        using var folder = new TemporaryFolder();
        return new Once(Folders, ValidationCache.In(folder.Path)).Suggest(folder.Write("build.yaml", text),
            new SuggestOptions { Keep = keep, Time = TimeSpan.FromMinutes(5) }).Result!;
    }

    [Fact]
    public void A_subwoofer_that_nothing_feeds_gets_an_amplifier()
    {
        var suggestion = Suggested(SubwooferAlone);

        Assert.Equal(Status.Fail, suggestion.Before.Verdict);
        Assert.NotEmpty(suggestion.Proposals);
        Assert.All(suggestion.Proposals, p =>
        {
            Assert.IsType<Amplifier>(Catalog.Find(p.Changes[0].To!));
            Assert.True(p.After.Verdict < Status.Fail);
        });
        Assert.Contains(suggestion.Coverage.Tried, t => t.What == "amplifier");
        Assert.DoesNotContain(suggestion.Coverage.NotTried, t => t.Contains("an amplifier", StringComparison.Ordinal));
    }

    [Fact]
    public void What_was_not_tried_is_not_said_to_have_been()
    {
        var text = File.ReadAllText(RepositoryRoot.Of("catalog", "builds", "tansy-wrong-harness.yaml"));
        var suggestion = Suggested(text);

        Assert.NotEmpty(suggestion.Proposals);
        Assert.DoesNotContain(suggestion.Coverage.Tried, t => t.What == "amplifier");
        Assert.Contains(suggestion.Coverage.NotTried, t => t.Contains("an amplifier", StringComparison.Ordinal));
    }

    [Fact]
    public void A_set_takes_the_place_of_a_coaxial_and_of_the_tweeters_that_were_unplugged()
    {
        var evaluator = new ProposalEvaluator("build.yaml", Coaxials, Catalog, Rules);
        var beyond = new Beyond(evaluator, Catalog, Rules, BuildEvaluation.Judged(evaluator.Build, Rules), new Goal(), false, []);
        var slot = Assert.Single(beyond.Slots(), s => s.What == "component set");

        foreach (var option in slot.Options)
        {
            var build = evaluator.ReadText(TextEdit.Apply(Coaxials, option.Edits)!)!;
            var set = (ComponentSet)option.Parts[0];
            Assert.Equal([set.Woofer!.Value, set.Woofer.Value, set.Tweeter!.Value, set.Tweeter.Value],
                build.Placed.Select(p => p.Driver!.Part.Id));
        }
        var kept = new Beyond(evaluator, Catalog, Rules, BuildEvaluation.Judged(evaluator.Build, Rules), new Goal(), false,
            ["pellworth-c165"]);
        Assert.DoesNotContain(kept.Slots(), s => s.What == "component set");
    }

    /// <summary>
    /// Where nothing is said to pass, no amplifier and no set that is added makes it pass, alone or with one change more.
    /// </summary>
    [Theory]
    [MemberData(nameof(ReferenceSuggestionTests.Failing), MemberType = typeof(ReferenceSuggestionTests))]
    public void Where_nothing_passes_nothing_that_is_added_makes_it_pass(string name)
    {
        var text = File.ReadAllText(RepositoryRoot.Of("catalog", "builds", name + ".yaml"));
        var suggestion = Suggested(text);
        if (suggestion.Passes || !suggestion.Proof.Complete)
            return;
        NothingAddedPasses(text);
    }

    /// <summary>Nothing that is added makes a build pass, alone and with one change more by lot.</summary>
    internal static void NothingAddedPasses(string text)
    {
        var evaluator = new ProposalEvaluator("build.yaml", text, Catalog, Rules);
        var beyond = new Beyond(evaluator, Catalog, Rules, BuildEvaluation.Judged(evaluator.Build, Rules), new Goal(), false, []);
        var dice = new Random(text.Length);
        foreach (var added in beyond.Slots().SelectMany(s => s.Options).Select(o => TextEdit.Apply(text, o.Edits)).OfType<string>())
        {
            if (evaluator.ReadText(added) is not { } build)
                continue;
            Assert.False(Passes(build), added);
            var with = new ProposalEvaluator("build.yaml", added, Catalog, Rules);
            var changes = Slots.Of(with, Catalog, currentOnly: false, keep: []).SelectMany(s => s.Options).ToList();
            foreach (var option in Enumerable.Range(0, 20).Select(_ => changes[dice.Next(changes.Count)]))
            {
                if (TextEdit.Apply(added, option.Edits) is { } both && with.ReadText(both) is { } read)
                    Assert.False(Passes(read), both);
            }
        }
    }

    // A list that was not written anew is no reason.
    private static bool Passes(FitCheck.Builds.Build build) => BuildEvaluation.Judged(build, Rules).Findings.All(
        f => f.Status < Status.Fail || f.Waived is not null || f.Rule.StartsWith("list/", StringComparison.Ordinal));
}
