using FitCheck.Catalog;

namespace FitCheck.Charts.Pairs;

/// <summary>
/// What may carry a driver at a position: the panel itself, and every spacer or cup of the catalog that is for this place or universal.
/// </summary>
internal sealed class Mounts
{
    /// <param name="catalog">What there is.</param>
    /// <param name="places">The places that are asked about; null for all. What is for none of them is not kept.</param>
    /// <param name="cancel">Looked at between two parts.</param>
    public Mounts(PartsCatalog catalog, IReadOnlyList<(Vehicle Vehicle, Position Position)>? places = null,
        CancellationToken cancel = default)
    {
        Adapters = ByPrice(All<Adapter>("adapter"));
        Cups = ByPrice(All<Cup>("cup"));

        IEnumerable<T> All<T>(string kind) where T : Part => catalog.IdsOf(kind).Chunk(ChartSlice.AtOnce)
            .SelectMany(some => catalog.InPassing(some, cancel)).OfType<T>()
            .Where(p => places is null || places.Any(at => Covers(p, at.Vehicle, at.Position)));
    }

    /// <summary>Cheapest first, so that of two that are as good the cheaper one is taken.</summary>
    public IReadOnlyList<Part> Adapters { get; }

    /// <summary>Cheapest first.</summary>
    public IReadOnlyList<Part> Cups { get; }

    /// <summary>
    /// In the order in which they are preferred when nothing else tells them apart; null is the panel itself. Tweeters go into cups,
    /// others on spacers.
    /// </summary>
    public IReadOnlyList<Part?> For(Vehicle vehicle, Position position, bool tweeter) =>
        [null, .. (tweeter ? Cups : Adapters).Where(p => Covers(p, vehicle, position))];

    /// <summary>True when a spacer or cup is made for this position or is universal.</summary>
    public static bool Covers(Part part, Vehicle vehicle, Position position) => Fit.Covers(FitsOf(part), vehicle.Id, position.Id);

    /// <summary>What it is made for; nothing when it is universal.</summary>
    public static IReadOnlyList<Fit> FitsOf(Part part) => part is Adapter adapter ? adapter.Fits : ((Cup)part).Fits;

    private static List<Part> ByPrice(IEnumerable<Part> parts) =>
        [.. parts.OrderBy(p => p.Price.Value.Amount).ThenBy(p => p.Id, StringComparer.Ordinal)];
}
