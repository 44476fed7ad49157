using FitCheck.Catalog;
using FitCheck.Charts;
using FitCheck.Charts.Pairs;
using FitCheck.Facts;
using FitCheck.Facts.Values;
using FitCheck.Rules.Files;
using Xunit;

namespace FitCheck.Tests.Charts;

/// <summary>A fact says truly what it rests on: it stays the same when anything else changes.</summary>
public sealed class RestsOnTests
{
    private static readonly HashSet<string> Work = [.. ChartSlice.Work];

    [Fact]
    public void A_fact_changes_only_with_what_it_rests_on()
    {
        using var folder = new TemporaryFolder();
        var catalog = ShakenCatalog.Open(11, folder);
        var mounts = new Mounts(catalog);
        var drivers = catalog.IdsOf("driver").Select(catalog.Find).OfType<Driver>().ToList();
        var places = catalog.IdsOf("vehicle").Select(catalog.Find).OfType<Vehicle>()
            .SelectMany(v => v.Positions.Select(p => (Vehicle: v, Position: p))).ToList();
        var random = new Random(11);
        for (var n = 0; n < 400; n++)
        {
            var driver = drivers[random.Next(drivers.Count)];
            var others = drivers.FindAll(d => d.IsTweeter == driver.IsTweeter);
            var carriers = driver.IsTweeter ? mounts.Cups : mounts.Adapters;
            var ((vehicle, position), mount) = (places[random.Next(places.Count)], carriers[random.Next(carriers.Count)]);
            var one = new Pair(vehicle, position, driver, mount);
            var place = places[random.Next(places.Count)];
            AssertSame(one, one with { Driver = others[random.Next(others.Count)] }, RestsOn.Driver);
            AssertSame(one, one with { Mount = carriers[random.Next(carriers.Count)] }, RestsOn.Mount);
            AssertSame(one, one with { Vehicle = place.Vehicle, Position = place.Position }, RestsOn.Place);
        }
    }

    private static void AssertSame(Pair one, Pair other, RestsOn changed)
    {
        var practice = PracticeReader.OfProgram;
        var (before, after) = (one.Facts(Work, practice).Values, other.Facts(Work, practice).Values);
        foreach (var fact in FactRegistry.Declarations.Where(
            d => d.Subject == Subject.Position && (d.RestsOn & (changed | RestsOn.Build)) == RestsOn.Nothing))
            Assert.True(Text(before, fact.Name) == Text(after, fact.Name),
                $"{fact.Name} rests on {fact.RestsOn}, but changes with the {changed}: {one.Driver.Id}, {one.Mount?.Id} → "
                    + $"{other.Driver.Id}, {other.Mount?.Id}: {Text(before, fact.Name)}, {Text(after, fact.Name)}");
    }

    private static string Text(IReadOnlyDictionary<string, FactValue> facts, string name) =>
        facts.GetValueOrDefault(name) is { IsKnown: true } f ? $"{f.Number} {f.Truth} {f.Word} {f.Unsure.Count > 0}" : "unknown";
}
