using FitCheck.Catalog;

namespace FitCheck.Suggestions.Choices;

/// <summary>
/// A look at some parts of a large catalog only: those that are in the build or name its vehicle, then those that are described in the same
/// words as one that is.
/// </summary>
/// <param name="Most">So many of a kind.</param>
/// <param name="Vehicle">Its id.</param>
/// <param name="InBuild">Ids of the parts of the build.</param>
internal sealed record Sample(int Most, string Vehicle, IReadOnlySet<string> InBuild)
{
    private readonly Dictionary<string, IReadOnlyList<string>> _ranked = new(StringComparer.Ordinal);

    /// <summary>All ids of a kind, the likeliest first.</summary>
    public IReadOnlyList<string> Ranked(PartsCatalog catalog, string kind)
    {
        if (!_ranked.TryGetValue(kind, out var ranked))
        {
            // One look-up of the kind's ids serves all: the likeliest have the highest rank, and those of one rank keep their order.
            string[] ids = [.. catalog.IdsOf(kind)];
            var ranks = catalog.SharedLines(ids, kind, InBuild);
            var near = catalog.IdsMentioning(kind, [Vehicle]).Concat(InBuild).ToHashSet(StringComparer.Ordinal);
            for (var i = 0; i < ids.Length; i++)
                ranks[i] = (near.Contains(ids[i]) ? -1_000_000 : 0) - ranks[i];
            _ranked[kind] = ranked = [.. Enumerable.Range(0, ids.Length).OrderBy(i => ranks[i]).Select(i => ids[i])];
        }
        return ranked;
    }
}
