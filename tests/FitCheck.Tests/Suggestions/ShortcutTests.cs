using FitCheck.Builds;
using FitCheck.Catalog;
using FitCheck.Facts;
using FitCheck.Foundation.Problems;
using FitCheck.Rules;
using FitCheck.Suggestions.Choices;
using FitCheck.Suggestions.Searching;
using FitCheck.Suggestions.Trials;
using Xunit;

namespace FitCheck.Tests.Suggestions;

/// <summary>
/// The answer that is told before the search has ended has to be one: judged anew, without what was seen of other combinations.
/// </summary>
public sealed class ShortcutTests
{
    [Theory]
    [InlineData("gannet-spacers-swapped")]
    [InlineData("pellet-parts-bin")]
    [InlineData("tansy-cheap-converter")]
    [InlineData("tansy-quote")]
    [InlineData("tansy-wrong-harness")]
    [InlineData("ostler-hole-too-small")]
    public void What_is_found_soon_passes_and_needs_each_of_its_changes(string name)
    {
        var (evaluator, catalog) = Opened(name);
        var goal = new Goal();
        var few = Slots.Of(evaluator, catalog, currentOnly: false, keep: [], SampleOf(evaluator, 50));

        var answer = new Shortcut(evaluator, few, goal, TimeSpan.FromMinutes(5)).Find();

        Assert.NotNull(answer);
        Assert.True(Passes(answer.Changes));
        Assert.DoesNotContain(answer.Changes, c => Passes([.. answer.Changes.Where(o => o != c)]));

        bool Passes(IReadOnlyList<Change> changes) =>
            evaluator.Anew(changes) is { IsPossible: true } assessment && !assessment.Issues.Any(goal.IsBad);
    }

    [Fact]
    public void Where_nothing_passes_nothing_is_found()
    {
        // Every ring for 250 mm drivers comes without holes, and drilling is not accepted.
        var (evaluator, catalog) = Opened("sedge-shallow-box");

        Assert.Null(
            new Shortcut(evaluator, Slots.Of(evaluator, catalog, currentOnly: false, keep: []), new Goal(),
                TimeSpan.FromMinutes(5)).Find());
    }

    [Fact]
    public void A_sample_begins_with_what_is_in_the_build_or_names_its_vehicle()
    {
        var (evaluator, catalog) = Opened("gannet-spacers-swapped");

        var ranked = SampleOf(evaluator, 1).Ranked(catalog, "adapter");

        Assert.Equal(catalog.IdsOf("adapter").Order(StringComparer.Ordinal), ranked.Order(StringComparer.Ordinal));
        Assert.Equal(["spacer-165-gannet-tilt-5-left", "spacer-165-gannet-tilt-5-right"], ranked.Take(2).Order(StringComparer.Ordinal));
    }

    private static (ProposalEvaluator, PartsCatalog) Opened(string name)
    {
        var problems = new ProblemList();
        var catalog = PartsCatalog.Open([RepositoryRoot.Of("catalog")], problems);
        var text = File.ReadAllText(RepositoryRoot.Of("catalog", "builds", name + ".yaml"));
        return (new ProposalEvaluator(name, text, catalog,
            RuleSet.Load([RepositoryRoot.Of("rules")], FactRegistry.Declarations, problems)), catalog);
    }

    private static Sample SampleOf(ProposalEvaluator evaluator, int most) =>
        new(most, evaluator.Build.Vehicle.Id, Shopping.List(evaluator.Build).Select(l => l.Part).ToHashSet(StringComparer.Ordinal));
}
