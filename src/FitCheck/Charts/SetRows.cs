using FitCheck.Catalog;
using FitCheck.Foundation.Problems;

namespace FitCheck.Charts;

/// <summary>Puts the pairs of drivers together to rows of the sets that they are sold in.</summary>
internal static class SetRows
{
    /// <summary>A set at a factory output is told when each of its drivers has a place on it.</summary>
    public static IEnumerable<SetRow> Of(RowMaker maker, IEnumerable<int> pairs)
    {
        var outputs = pairs.Where(p => maker.Place(p).Position.FactoryChannel is not null)
            .GroupBy(p => (maker.Place(p).Vehicle.Id, maker.Place(p).Position.FactoryChannel!.Value));
        foreach (var output in outputs)
        {
            var byDriver = output.ToLookup(p => maker.Driver(p).Id, StringComparer.Ordinal);
            foreach (var set in maker.Sets)
            {
                var places = Of(set, byDriver, maker).ToList();
                if (places.Count > 0 && Has(set.Woofer, places) && Has(set.Tweeter, places))
                    yield return new SetRow(set, maker.Place(output.First()).Vehicle, output.Key.Value, places);
            }
        }
    }

    private static IEnumerable<SetPlace> Of(ComponentSet set, ILookup<string, int> byDriver, RowMaker maker)
    {
        foreach (var member in new[] { set.Woofer, set.Tweeter }.OfType<Located<string>>())
        {
            foreach (var pair in byDriver[member.Value])
            {
                if ((maker.Place(pair).Position.Role == "tweeter") == (member == set.Tweeter))
                    yield return new SetPlace(maker.Place(pair).Position, maker.Driver(pair), maker.Status(pair));
            }
        }
    }

    private static bool Has(Located<string>? member, List<SetPlace> places) =>
        member is null || places.Exists(p => p.Driver.Id == member.Value);
}
