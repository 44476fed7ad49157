using FitCheck.Catalog;
using FitCheck.Charts;
using FitCheck.Charts.BestMount;
using FitCheck.Charts.Pairs;
using FitCheck.Facts.Fitting;
using FitCheck.Foundation.Problems;

namespace FitCheck.Impacts;

/// <summary>Compares the charts of two sides.</summary>
internal static class PairDifferences
{
    /// <summary>The pairs that are on both sides and flip, worse first, and how many are on both.</summary>
    public static (IReadOnlyList<PairChange> Flipped, int Compared) Of(InputState from, InputState to)
    {
        var (before, after) = (Charted.Of(from), Charted.Of(to));
        var places = before.Places.Select((p, i) => (Key: Key(p), Index: i)).ToDictionary(p => p.Key, p => p.Index);
        var drivers = before.Drivers.Select((d, i) => (d.Id, Index: i)).ToDictionary(d => d.Id, d => d.Index, StringComparer.Ordinal);
        var flipped = new List<PairChange>();
        var compared = 0;
        for (var place = 0; place < after.Places.Count; place++)
        {
            if (!places.TryGetValue(Key(after.Places[place]), out var oldPlace))
                continue;
            for (var driver = 0; driver < after.Drivers.Count; driver++)
            {
                if (!drivers.TryGetValue(after.Drivers[driver].Id, out var oldDriver)
                    || !PlaceFacts.Suits(after.Drivers[driver].Type, after.Places[place].Position.Role))
                    continue;
                compared++;
                var (was, now) = (before.At(oldPlace, oldDriver), after.At(place, driver));
                if (was.Outcome.Status != now.Outcome.Status)
                    flipped.Add(Flip(before, oldPlace, oldDriver, after, place, driver));
            }
        }
        return ([.. flipped.OrderByDescending(f => f.IsWorse).ThenByDescending(f => f.After)], compared);
    }

    private static PairChange Flip(Charted before, int oldPlace, int oldDriver, Charted after, int place, int driver)
    {
        var (was, now) = (before.At(oldPlace, oldDriver), after.At(place, driver));
        var ((vehicle, position), part) = (after.Places[place], after.Drivers[driver]);
        // The side that is worse tells why.
        var reason = now.Outcome.Status > was.Outcome.Status ? after.Reason(place, driver) : before.Reason(oldPlace, oldDriver);
        return new PairChange(vehicle.Id, vehicle.Name, position.Id, position.Name, part.Id, part.Name, was.Outcome.Status,
            now.Outcome.Status, was.Mount?.Name, now.Mount?.Name, reason);
    }

    private static (string, string) Key((Vehicle Vehicle, Position Position) place) => (place.Vehicle.Id, place.Position.Id);

    private sealed record Charted(IReadOnlyList<(Vehicle Vehicle, Position Position)> Places, IReadOnlyList<Driver> Drivers,
        (Part? Mount, PairVerdict Outcome)[] Found, PairJudge Judge)
    {
        public (Part? Mount, PairVerdict Outcome) At(int place, int driver) => Found[(place * Drivers.Count) + driver];

        public string Reason(int place, int driver)
        {
            var (vehicle, position) = Places[place];
            var findings = Judge.Findings(new Pair(vehicle, position, Drivers[driver], At(place, driver).Mount));
            return findings.Count > 0 ? findings[0].Message : "";
        }

        public static Charted Of(InputState side)
        {
            var (catalog, rules) = (side.Workshop.Catalog, PairRules.Of(side.Rules));
            var accepts = ChartSlice.Work.ToHashSet(StringComparer.Ordinal);
            var slice = new ChartSlice();
            var problems = new Foundation.Problems.ProblemList();
            var (places, drivers) = (slice.PlacesIn(catalog, problems),
                catalog.FindAll(slice.DriversIn(catalog, problems)).OfType<Driver>().ToList());
            return new Charted(places, drivers, new PairFinder(rules, accepts, places, new Mounts(catalog)).Find(drivers),
                new PairJudge(rules, accepts));
        }
    }
}
