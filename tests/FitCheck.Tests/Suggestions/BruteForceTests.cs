using FitCheck.Catalog;
using FitCheck.Facts;
using FitCheck.Findings;
using FitCheck.Foundation.Problems;
using FitCheck.Rules;
using FitCheck.Suggestions.Choices;
using FitCheck.Suggestions.Searching;
using FitCheck.Suggestions.Trials;
using Xunit;

namespace FitCheck.Tests.Suggestions;

/// <summary>
/// On catalogs of a few parts, every combination of choices is judged in full; the search must name the best of those that pass, and no
/// worse.
/// </summary>
public sealed class BruteForceTests
{
    private const string Start = """
        kind: build
        name: Coaxials for a Tansy
        vehicle: tansy-hatch
        budget: 150.00 EUR
        fit:
          - at: [front-door-left, front-door-right]
            driver: DRIVER
            adapter: ADAPTER
            harness: HARNESS
            with: [foam-tape-3x12, ring-165-25]
          - at: [front-tweeter-left, front-tweeter-right]
            disconnected: true
        """;

    private static readonly string[] Drivers = ["orrin-c165", "pellworth-c165", "tamsin-t165-heavy", "halvard-m165-2"];
    private static readonly string[] Adapters = ["spacer-165-tansy-18", "spacer-165-flat-10", "spacer-165-flat-6", "spacer-165-flat-20"];
    private static readonly string[] Harnesses = ["harness-duo-a-48-28", "harness-duo-a-63-48", "harness-duo-b-48-28"];
    private static readonly string[] Others = ["foam-tape-3x12", "ring-165-25", "ring-165-20", "merrow-r4", "tansy-hatch"];

    private const string WithTweeters = """
        kind: build
        name: Coaxials and tweeters for a Tansy
        vehicle: tansy-hatch
        budget: 170.00 EUR
        fit:
          - at: [front-door-left, front-door-right]
            driver: DRIVER
            adapter: ADAPTER
            harness: HARNESS
            with: [foam-tape-3x12, ring-165-25]
          - at: [front-tweeter-left, front-tweeter-right]
            driver: pellworth-t25
            cup: cup-45-tansy
            harness: harness-mini-t-28-28
            with: [capacitor-10uf]
        """;

    private static readonly string[] SetParts =
    [
        "pellworth-c165", "pellworth-p165", "pellworth-t25", "pellworth-set-165", "pellworth-x165", "spacer-165-tansy-18",
        "spacer-165-flat-10", "harness-duo-a-48-28", "harness-duo-a-63-48",
        "harness-mini-t-28-28", "harness-mini-t-leads", "cup-45-tansy", "capacitor-10uf", "capacitor-4-7uf", "foam-tape-3x12",
        "ring-165-25", "merrow-r4", "tansy-hatch",
    ];

    [Theory]
    [InlineData("pellworth-c165", "spacer-165-tansy-18", "harness-duo-a-48-28", Preference.Price, 1)]
    [InlineData("pellworth-c165", "spacer-165-flat-10", "harness-duo-a-63-48", Preference.Price, 2)]
    [InlineData("pellworth-c165", "spacer-165-tansy-18", "harness-duo-a-63-48", Preference.Margin, 2)]
    [InlineData("pellworth-p165", "spacer-165-flat-10", "harness-duo-a-48-28", Preference.Changes, 2)]
    public void So_it_does_where_single_drivers_may_become_a_set(string driver, string adapter, string harness, Preference prefer,
        int voices)
    {
        using var folder = SmallCatalog(SetParts);
        AssertFound(folder, Filled(WithTweeters, driver, adapter, harness), prefer, voices);
    }

    public static TheoryData<string, string, string, Preference> Starts()
    {
        var starts = new TheoryData<string, string, string, Preference>();
        foreach (var driver in Drivers)
        {
            foreach (var adapter in Adapters)
                starts.Add(driver, adapter, Harnesses[(driver.Length + adapter.Length) % 3],
                    (Preference)((driver.Length + adapter.Length) % 4));
        }
        return starts;
    }

    [Theory]
    [MemberData(nameof(Starts))]
    public void The_search_finds_what_trying_everything_finds(string driver, string adapter, string harness, Preference prefer)
    {
        using var folder = SmallCatalog([.. Drivers, .. Adapters, .. Harnesses, .. Others]);
        AssertFound(folder, Filled(Start, driver, adapter, harness), prefer, 1);
    }

    private static string Filled(string start, string driver, string adapter, string harness) =>
        start.Replace("DRIVER", driver, StringComparison.Ordinal).Replace("ADAPTER", adapter, StringComparison.Ordinal)
            .Replace("HARNESS", harness, StringComparison.Ordinal);

    private static void AssertFound(TemporaryFolder folder, string text, Preference prefer, int voices)
    {
        var problems = new ProblemList();
        var catalog = PartsCatalog.Open([folder.Path], problems);
        var rules = RuleSet.Load([RepositoryRoot.Of("rules")], FactRegistry.Declarations, problems);
        var evaluator = new ProposalEvaluator("build.yaml", text, catalog, rules);
        var slots = Slots.Of(evaluator, catalog, currentOnly: false, keep: []);
        var goal = new Goal { Prefer = prefer, Voices = voices };

        var found = new Search(evaluator, slots, goal, 1, TimeSpan.FromMinutes(10)).Run();

        Assert.True(found.Effort.Finished);
        var every = Every(new ProposalEvaluator("build.yaml", text, catalog, rules), slots, goal).ToList();
        // Irreducible: no part of it passes already.
        var least = every.Where(a => !every.Exists(b => b.Changes.Count < a.Changes.Count && b.Changes.All(c => a.Changes.Contains(c))))
            .ToList();
        Assert.Equal(least.Count > 0, found.Answers.Count > 0);
        if (least.Count > 0)
            Assert.Equal(least.Min(a => Measure(a, prefer)), Measure(found.Answers[0], prefer));
        AssertAddsNothingWhereItCan(folder, text, goal, every);
    }

    // Of everything that passes, what adds nothing to be looked at comes first: the search for that finds the best of it, and the whole of
    // `suggest` proposes nothing else where there is any, and says that there is none only where there is none.
    private static void AssertAddsNothingWhereItCan(TemporaryFolder folder, string text, Goal goal, IReadOnlyList<Answer> every)
    {
        var problems = new ProblemList();
        var catalog = PartsCatalog.Open([folder.Path], problems);
        var evaluator = new ProposalEvaluator("build.yaml", text, catalog,
            RuleSet.Load([RepositoryRoot.Of("rules")], FactRegistry.Declarations, problems));
        var slots = Slots.Of(evaluator, catalog, currentOnly: false, keep: []);
        var before = evaluator.Assess([]).Issues.Where(i => i.Status != Status.Pass && !i.IsWaived).ToDictionary(i => i.Id, i => i.Status);
        var clean = every.Where(a => !a.Assessment.Issues.Any(i => Adds(i, before))).ToList();
        var least = clean.Where(a => !clean.Exists(b => b.Changes.Count < a.Changes.Count && b.Changes.All(c => a.Changes.Contains(c))))
            .ToList();

        var strict = new Search(evaluator, slots, goal with { AddsNothing = true, Before = before }, 1, TimeSpan.FromMinutes(10)).Run();
        Assert.True(strict.Effort.Finished);
        Assert.Equal(least.Count > 0, strict.Answers.Count > 0);
        if (least.Count > 0)
            Assert.Equal(least.Min(a => Measure(a, goal.Prefer)), Measure(strict.Answers[0], goal.Prefer));

        var finder = new Finder(evaluator, slots, new Goal { Prefer = goal.Prefer }, TimeSpan.FromMinutes(10));
        var proposed = finder.Best(3);
        if (finder.AddsNothing == true)
            Assert.All(proposed, a => Assert.DoesNotContain(a.Assessment.Issues, i => Adds(i, before)));
        else if (proposed.Count > 0)
            Assert.DoesNotContain(clean, _ => finder.AddsNothing == false);
        if (finder is { AddsNothing: true, Proof.Complete: true } && least.Count > 0 && proposed[0].Voices <= goal.Voices)
            Assert.Equal(least.Min(a => Measure(a, goal.Prefer)), Measure(proposed[0], goal.Prefer));
    }

    // What came upon nothing that adds anything knows the best already; looking again would only take time.
    [Fact]
    public void A_search_that_met_nothing_that_adds_is_the_only_one()
    {
        using var folder = SmallCatalog([.. Drivers, .. Adapters, .. Harnesses, .. Others]);
        var (problems, clean) = (new ProblemList(), 0);
        var catalog = PartsCatalog.Open([folder.Path], problems);
        var rules = RuleSet.Load([RepositoryRoot.Of("rules")], FactRegistry.Declarations, problems);
        foreach (var text in from driver in Drivers
                             from adapter in Adapters
                             from harness in Harnesses
                             select Filled(Start, driver, adapter, harness))
        {
            var (one, other) = (Tried(), Tried());
            var slots = Slots.Of(one, catalog, currentOnly: false, keep: []);
            var before = one.Assess([]).Issues.Where(i => i.Status != Status.Pass && !i.IsWaived).ToDictionary(i => i.Id, i => i.Status);
            var (answers, effort) = new Search(one, slots, new Goal { Before = before }, 3, TimeSpan.FromMinutes(10)).Run();
            if (answers.Count == 0 || effort.MetAdding)
                continue;
            clean++;
            var finder = new Finder(other, Slots.Of(other, catalog, currentOnly: false, keep: []), new Goal(), TimeSpan.FromMinutes(10));
            Assert.Equal(answers.Select(a => a.Words), finder.Best(3).Select(a => a.Words));
            Assert.True(finder.AddsNothing);
            Assert.Equal(new Proof(effort.Judged, effort.Foreseen, effort.TooDear, Complete: true), finder.Proof);

            ProposalEvaluator Tried() => new("build.yaml", text, catalog, rules);
        }
        Assert.True(clean > 0, "nowhere was an answer found without one that adds something");
    }

    // By what the report would tell: no pass, and nothing as bad was there before but what had to go; the seller's list aside.
    private static bool Adds(RuleVerdict issue, Dictionary<(string, string), Status> before) =>
        issue.Status != Status.Pass && !issue.IsWaived && issue.Rule.Id is not ("list/missing-from-quote" or "list/unused-on-quote")
        && (!before.TryGetValue(issue.Id, out var was) || was < issue.Status || was == Status.Fail);

    // As the preference says; an answer that keeps the driver comes before one that does not.
    private static (int, double, double) Measure(Answer answer, Preference prefer) => (answer.Voices, prefer switch
    {
        Preference.Changes => answer.Changes.Count,
        Preference.Work => answer.Assessment.Work,
        Preference.Margin => -answer.Assessment.LeastClearance,
        _ => (double)answer.Assessment.Price,
    }, (double)answer.Assessment.Price);

    private static IEnumerable<Answer> Every(ProposalEvaluator evaluator, IReadOnlyList<Slot> slots, Goal goal)
    {
        var combinations = new List<List<Change>> { new() };
        foreach (var slot in slots)
            combinations = [.. combinations.SelectMany(
                c => Enumerable.Range(-1, slot.Options.Count + 1).Select(o => o < 0 ? c : [.. c, new Change(slot, o)]))];
        foreach (var changes in combinations.Where(c => c.Sum(x => x.Slot.Voices) <= goal.Voices))
        {
            var assessment = evaluator.Anew(changes);
            if (assessment.IsPossible && !assessment.Issues.Any(goal.IsBad))
                yield return new Answer(changes, assessment);
        }
    }

    private static TemporaryFolder SmallCatalog(IReadOnlyCollection<string> ids)
    {
        var folder = new TemporaryFolder();
        foreach (var file in Directory.GetFiles(RepositoryRoot.Of("catalog"), "*.yaml", SearchOption.AllDirectories))
        {
            if (ids.Contains(Path.GetFileNameWithoutExtension(file)))
                folder.Write(Path.GetRelativePath(RepositoryRoot.Of("catalog"), file).Replace('\\', '/'), File.ReadAllText(file));
        }
        return folder;
    }
}
