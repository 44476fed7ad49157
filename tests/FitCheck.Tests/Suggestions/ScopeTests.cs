using FitCheck.Catalog;
using FitCheck.Facts;
using FitCheck.Facts.Values;
using FitCheck.Foundation.Problems;
using FitCheck.Rules;
using FitCheck.Suggestions.Choices;
using FitCheck.Suggestions.Trials;
using Xunit;

namespace FitCheck.Tests.Suggestions;

/// <summary>The search leaves out what it believes to have no part in a finding; here that belief is tried, choice by choice.</summary>
public sealed class ScopeTests
{
    private static readonly string Builds = RepositoryRoot.Of("catalog", "builds");

    public static TheoryData<string> Names() =>
        [.. Directory.GetFiles(Builds, "*.yaml").Select(f => Path.GetFileNameWithoutExtension(f)).Order(StringComparer.Ordinal)];

    // Who rests on everything is looked for among all choices, together: an answer that is there comes too late.
    [Theory]
    [MemberData(nameof(Names))]
    public void What_is_said_of_a_place_an_output_or_a_device_rests_on_choices_that_are_named(string name)
    {
        var evaluator = Evaluator(name, out _, out var rules);
        var build = evaluator.Build;
        var said =
            from place in build.Placed.Select(p => (Subject.Position, p.Position.Id))
                .Concat(build.Channels.Select(c => (Subject.Channel, c.Id))).Concat(build.Devices.Select(d => (Subject.Device, d.Id)))
            from rule in rules.Rules
            where rule.Subject == place.Item1 && evaluator.Scopes.Of(rule, place.Id).Contains(BuildInputs.All)
            select $"{rule.Id} of {place.Id}";

        Assert.Empty(said);
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void A_change_moves_only_findings_that_rest_on_it(string name)
    {
        var evaluator = Evaluator(name, out var catalog, out _);
        var before = evaluator.Assess([]).Issues.ToDictionary(i => i.Id);
        var moved = new List<string>();
        foreach (var slot in Slots.Of(evaluator, catalog, currentOnly: false, keep: []))
        {
            // The first, the last and some between stand for all; of drivers the first of each sort too.
            for (var choice = 0; choice < slot.Options.Count; choice++)
            {
                if (choice % Math.Max(1, slot.Options.Count / 3) != 0 && !IsFirstOfItsSort(slot, choice))
                    continue;
                if (evaluator.Anew([new Change(slot, choice)]) is not { IsPossible: true } after)
                    continue;
                var now = after.Issues.ToDictionary(i => i.Id);
                moved.AddRange(now.Values.Concat(before.Values).DistinctBy(i => i.Id).Where(i => !i.RestsOn(slot))
                    .Where(i => before.GetValueOrDefault(i.Id)?.Status != now.GetValueOrDefault(i.Id)?.Status)
                    .Select(i => $"{slot.Key} = {slot.Options[choice].Value} moves {i.Rule.Id} of {i.Key}"));
            }
        }
        Assert.Equal("", string.Join('\n', moved));

        static bool IsFirstOfItsSort(Slot slot, int choice) =>
            SortOf(slot, choice) is { } sort && Enumerable.Range(0, choice).All(c => SortOf(slot, c) != sort);

        static string? SortOf(Slot slot, int choice) => slot.Options[choice].Parts is [Driver driver] ? driver.Type : null;
    }

    private static ProposalEvaluator Evaluator(string name, out PartsCatalog catalog, out RuleSet rules)
    {
        var problems = new ProblemList();
        catalog = PartsCatalog.Open([RepositoryRoot.Of("catalog")], problems);
        rules = RuleSet.Load([RepositoryRoot.Of("rules")], FactRegistry.Declarations, problems);
        return new ProposalEvaluator(name, File.ReadAllText(Path.Combine(Builds, name + ".yaml")), catalog, rules);
    }
}
