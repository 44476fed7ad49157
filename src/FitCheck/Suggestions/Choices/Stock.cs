using FitCheck.Catalog;

namespace FitCheck.Suggestions.Choices;

/// <summary>What may be bought: the catalog without what is no longer made, or only what is on the shelf.</summary>
internal sealed class Stock(PartsCatalog catalog, bool currentOnly)
{
    private readonly Dictionary<(string Kind, string? Word), IReadOnlyList<Part>> _parts = [];

    public PartsCatalog Catalog => catalog;

    /// <summary>Which parts are looked at; null for all.</summary>
    public Sample? Sample { get; init; }

    /// <summary>The parts of a kind, cheapest first; of a sample the likeliest.</summary>
    public IEnumerable<T> All<T>(string kind) where T : Part => Cheapest<T>(kind, null, () => catalog.IdsOf(kind));

    /// <summary>
    /// Those that can be of one of these types or families: the word stands in their text. Of a large catalog the others need not be read.
    /// </summary>
    public IEnumerable<T> With<T>(string kind, params string[] words) where T : Part =>
        Cheapest<T>(kind, string.Join(' ', words),
            () => words.SelectMany(w => catalog.IdsMentioning(kind, [w])).Distinct(StringComparer.Ordinal));

    /// <summary>Those that can be made for a vehicle, or for any, whether that is written or nobody wrote for which.</summary>
    public IEnumerable<T> For<T>(string kind, string vehicle) where T : Part =>
        Cheapest<T>(kind, vehicle, () => catalog.IdsMentioning(kind, [vehicle, Fit.Any], orWithout: "fits"));

    /// <summary>The part with this id, when it is sold.</summary>
    public T? Find<T>(string id) where T : Part => catalog.Find(id) is T part && Sold(part) ? part : null;

    private IEnumerable<T> Cheapest<T>(string kind, string? word, Func<IEnumerable<string>> ids) where T : Part
    {
        if (!_parts.TryGetValue((kind, word), out var parts))
        {
            var sold = catalog.FindAll(Sampled(kind, [.. ids()])).OfType<Part>().Where(Sold);
            _parts[(kind, word)] =
                parts = [.. Sample is null ? sold.OrderBy(p => p.Price.Value.Amount).ThenBy(p => p.Id, StringComparer.Ordinal) : sold];
        }
        return parts.OfType<T>();
    }

    private IReadOnlyList<string> Sampled(string kind, IReadOnlyList<string> ids)
    {
        if (Sample is null)
            return ids;
        var wanted = ids.ToHashSet(StringComparer.Ordinal);
        return [.. Sample.Ranked(catalog, kind).Where(wanted.Contains).Take(Sample.Most)];
    }

    private bool Sold(Part part) => part.Availability.Value switch
    {
        "current" => true,
        "discontinued" => false,
        _ => !currentOnly,
    };
}
