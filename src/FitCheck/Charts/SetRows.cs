using FitCheck.Catalog;
using FitCheck.Findings;
using FitCheck.Foundation.Problems;

namespace FitCheck.Charts;

/// <summary>Puts the pairs of drivers together to rows of the sets that they are sold in.</summary>
internal static class SetRows
{
    /// <summary>A set at a factory output is told when each of its drivers has a place on it.</summary>
    /// <param name="maker">Knows the pairs.</param>
    /// <param name="pairs">Those that suit.</param>
    /// <param name="asks">Whether a set of this status is told.</param>
    public static IEnumerable<SetRow> Of(RowMaker maker, IEnumerable<int> pairs, Func<Status, bool> asks)
    {
        var drivers = new Dictionary<string, Driver>(StringComparer.Ordinal);
        var outputs = pairs.Where(p => maker.Place(p).Position.FactoryChannel is not null)
            .GroupBy(p => (maker.Place(p).Vehicle.Id, maker.Place(p).Position.FactoryChannel!.Value));
        foreach (var output in outputs)
        {
            var byDriver = output.ToLookup(p => maker.DriverId(p), StringComparer.Ordinal);
            foreach (var set in maker.Sets)
            {
                var places = Of(set, byDriver, maker).ToList();
                if (places.Count > 0 && Has(set.Woofer, places, maker) && Has(set.Tweeter, places, maker)
                    && asks(StatusWords.Worst(places.Select(maker.Status))))
                    yield return new SetRow(set, maker.Place(places[0]).Vehicle, output.Key.Value, [.. places.Select(Place)]);
            }
        }

        SetPlace Place(int pair)
        {
            var driver = drivers.TryGetValue(maker.DriverId(pair), out var known) ? known
                : drivers[maker.DriverId(pair)] = maker.Driver(pair);
            return new SetPlace(maker.Place(pair).Position, driver, maker.Status(pair));
        }
    }

    private static IEnumerable<int> Of(ComponentSet set, ILookup<string, int> byDriver, RowMaker maker)
    {
        foreach (var member in new[] { set.Woofer, set.Tweeter }.OfType<Located<string>>())
        {
            foreach (var pair in byDriver[member.Value])
            {
                if ((maker.Place(pair).Position.Role == "tweeter") == (member == set.Tweeter))
                    yield return pair;
            }
        }
    }

    private static bool Has(Located<string>? member, List<int> places, RowMaker maker) =>
        member is null || places.Exists(p => maker.DriverId(p) == member.Value);
}
