using FitCheck.Catalog;

namespace FitCheck.Charts;

/// <summary>What may carry a driver at a position: the panel itself, and every spacer or cup of the catalog that is for this place or universal.</summary>
internal sealed class Mounts(PartsCatalog catalog)
{
    // Cheapest first, so that of two that are as good the cheaper one is taken.
    private readonly List<Part> _adapters = ByPrice(catalog.IdsOf("adapter").Select(catalog.Find).OfType<Adapter>());
    private readonly List<Part> _cups = ByPrice(catalog.IdsOf("cup").Select(catalog.Find).OfType<Cup>());

    /// <summary>In the order in which they are preferred when nothing else tells them apart; null is the panel itself. Tweeters go into cups, others on spacers.</summary>
    public IReadOnlyList<Part?> For(Vehicle vehicle, Position position, bool tweeter)
    {
        var mounts = new List<Part?> { null };
        foreach (var part in tweeter ? _cups : _adapters)
        {
            if (Fit.Covers(part is Adapter adapter ? adapter.Fits : ((Cup)part).Fits, vehicle.Id, position.Id))
                mounts.Add(part);
        }
        return mounts;
    }

    private static List<Part> ByPrice(IEnumerable<Part> parts) => [.. parts.OrderBy(p => p.Price.Value.Amount).ThenBy(p => p.Id, StringComparer.Ordinal)];
}
