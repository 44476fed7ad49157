using FitCheck.Catalog;
using FitCheck.Charts;
using FitCheck.Charts.BestMount;
using FitCheck.Charts.Pairs;
using FitCheck.Facts;
using FitCheck.Facts.Fitting;
using FitCheck.Foundation.Problems;
using FitCheck.Rules;
using Xunit;

namespace FitCheck.Tests.Charts;

/// <summary>
/// Of most spacers one number tells that they are no better than another. A rule that comes before it by its name must not take that away.
/// </summary>
public sealed class FirstLookTests
{
    [Fact]
    public void The_room_before_a_driver_is_looked_at_before_a_spacer_is_judged()
    {
        var problems = new ProblemList();
        var catalog = PartsCatalog.Open([RepositoryRoot.Of("catalog")], problems);
        var all = RuleSet.Load([RepositoryRoot.Of("rules")], FactRegistry.Declarations, problems);
        var rules = PairRules.Of(all);
        var driver = catalog.IdsOf("driver").Select(catalog.Find).OfType<Driver>().First(d => !d.IsTweeter);
        var vehicle = catalog.IdsOf("vehicle").Select(catalog.Find).OfType<Vehicle>().First();
        var pair = new Pair(vehicle, vehicle.Positions[0], driver, new Mounts(catalog).Adapters[0]);
        var facts = pair.Facts(ChartSlice.Work.ToHashSet(StringComparer.Ordinal), all.Practice);

        var onSpacer = new KindRules(rules, facts, PlacedPairFacts.OnSpacer, mounts: true, new HashSet<int>());
        var onPanel = new KindRules(rules, facts, PlacedPairFacts.OnPanel, mounts: false, new HashSet<int>());

        Assert.NotNull(onSpacer.FirstLook);
        Assert.Equal(MountingFacts.FrontMargin.Name, rules.Judged[onSpacer.FirstLook.Order].Fact.Text);
        Assert.Null(onPanel.FirstLook);
    }
}
