using FitCheck.Catalog;
using FitCheck.Charts.BestMount;
using FitCheck.Charts.Pairs;
using FitCheck.Evaluation;
using FitCheck.Facts;
using FitCheck.Facts.Values;
using FitCheck.Findings;
using FitCheck.Foundation.Problems;
using FitCheck.Rules;
using Xunit;

namespace FitCheck.Tests.Charts;

/// <summary>The chart says of a pair what `check` says of a build with that pair and nothing else.</summary>
public sealed class ChartAgainstCheckTests
{
    private static readonly RuleSet Everything = RuleSet.Load([RepositoryRoot.Of("rules")], FactRegistry.Declarations, new ProblemList());
    private static readonly PairRules Rules = PairRules.Of(Everything);

    public static TheoryData<int, string> Trials => new()
    {
        { 0, "drill enlarge-holes trim-parts" }, { 1, "drill enlarge-holes trim-parts" }, { 2, "" }, { 3, "enlarge-holes" },
        { 4, "drill" }, { 5, "trim-parts" },
    };

    [Theory]
    [MemberData(nameof(Trials))]
    public void Found_fast_is_what_check_says(int seed, string work)
    {
        using var folder = new TemporaryFolder();
        var (catalog, accepts) = (Catalog(seed, folder), Words(work));
        var mounts = new Mounts(catalog);
        var places = Places(catalog);
        var drivers = All<Driver>(catalog, "driver");
        var found = new PairFinder(Rules, accepts, places, mounts).Find(drivers);
        var judge = new PairJudge(Rules, accepts);
        var random = new Random(seed);

        for (var n = 0; n < 250; n++)
        {
            var i = random.Next(found.Length);
            var ((vehicle, position), driver) = (places[i / drivers.Count], drivers[i % drivers.Count]);
            var mountings = mounts.For(vehicle, position, driver.IsTweeter).Select(m => new Pair(vehicle, position, driver, m)).ToList();
            var (best, outcome) = judge.Best(mountings);
            Assert.True((mountings[best].Mount, outcome) == found[i],
                $"{driver.Id} at {position.Id} of {vehicle.Id}: {mountings[best].Mount?.Id} {outcome}, found {found[i].Mount?.Id} "
                    + $"{found[i].Outcome}");
            var status =
                StatusWords.Worst(
                    Checked(mountings[best], accepts).Where(f => Rules.Judged.Any(r => r.Id == f.Rule)).Select(f => f.Status));
            Assert.Equal(status, found[i].Outcome.Status);
        }
    }

    [Fact]
    public void No_mounting_of_the_catalog_is_better_than_the_one_that_is_told()
    {
        using var folder = new TemporaryFolder();
        var (catalog, accepts) = (Catalog(6, folder), Words("drill enlarge-holes"));
        var mounts = new Mounts(catalog);
        var places = Places(catalog);
        var drivers = All<Driver>(catalog, "driver");
        var found = new PairFinder(Rules, accepts, places, mounts).Find(drivers);
        var random = new Random(6);
        for (var n = 0; n < 60; n++)
        {
            var i = random.Next(found.Length);
            var ((vehicle, position), driver) = (places[i / drivers.Count], drivers[i % drivers.Count]);
            foreach (var mount in mounts.For(vehicle, position, driver.IsTweeter))
            {
                var findings = Checked(new Pair(vehicle, position, driver, mount), accepts)
                    .Where(f => Rules.Judged.Any(r => r.Id == f.Rule));
                Assert.True(StatusWords.Worst(findings.Select(f => f.Status)) >= found[i].Outcome.Status);
            }
        }
    }

    [Fact]
    public void A_row_tells_the_findings_of_check_word_for_word()
    {
        using var folder = new TemporaryFolder();
        var (catalog, accepts) = (Catalog(7, folder), Words("drill"));
        var mounts = new Mounts(catalog);
        var places = Places(catalog);
        var drivers = All<Driver>(catalog, "driver");
        var judge = new PairJudge(Rules, accepts);
        var random = new Random(7);
        for (var n = 0; n < 60; n++)
        {
            var ((vehicle, position), driver) = (places[random.Next(places.Count)], drivers[random.Next(drivers.Count)]);
            var choices = mounts.For(vehicle, position, driver.IsTweeter);
            var pair = new Pair(vehicle, position, driver, choices[random.Next(choices.Count)]);
            var told = judge.Findings(pair).Select(Words).Order(StringComparer.Ordinal);
            var says = Checked(pair, accepts).Where(f => Rules.Judged.Any(r => r.Id == f.Rule)).Select(Words).Order(StringComparer.Ordinal);
            Assert.Equal(says, told);
        }
    }

    [Fact]
    public void Every_rule_about_a_position_is_judged_or_says_what_it_needs()
    {
        var told = Rules.Judged.Select(r => r.Id).Concat(Rules.LeftOut.Select(l => l.Rule)).Order(StringComparer.Ordinal);
        Assert.Equal(Everything.Rules.Where(r => r.Subject == Subject.Position).Select(r => r.Id), told);
        Assert.All(Rules.LeftOut, l => Assert.NotEmpty(l.Needs));
        Assert.Contains(Rules.LeftOut, l => l.Rule == "tweeter/full-range-feed" && l.Needs.Contains("tweeter_full_range"));
        Assert.Contains(Rules.Judged, r => r.Id == "mount/too-deep");
    }

    private static IReadOnlyList<Finding> Checked(Pair pair, IReadOnlySet<string> accepts) =>
        [.. BuildEvaluation.Judged(pair.Build(accepts), Everything).Findings.Where(f => f.Position == pair.Position.Id)];

    private static string Words(Finding f) => $"{f.Rule} {f.Status} {f.ValueText} {f.Limit} {f.Margin} {f.Message}";

    private static HashSet<string> Words(string work) => [.. work.Split(' ', StringSplitOptions.RemoveEmptyEntries)];

    private static PartsCatalog Catalog(int seed, TemporaryFolder folder)
    {
        if (seed > 0)
            return ShakenCatalog.Open(seed, folder);
        return PartsCatalog.Open([RepositoryRoot.Of("catalog")], new ProblemList());
    }

    private static List<(Vehicle Vehicle, Position Position)> Places(PartsCatalog catalog) =>
        [.. All<Vehicle>(catalog, "vehicle").SelectMany(v => v.Positions.Select(p => (v, p)))];

    private static List<T> All<T>(PartsCatalog catalog, string kind) where T : Entry =>
        [.. catalog.IdsOf(kind).Select(catalog.Find).OfType<T>()];
}
