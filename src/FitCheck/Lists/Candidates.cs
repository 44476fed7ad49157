using FitCheck.Catalog;
using FitCheck.Rules.Model;

namespace FitCheck.Lists;

/// <summary>What the catalog has of a sort of part. What is no longer made is not offered.</summary>
internal static class Candidates
{
    // A few packs of small parts; more of them belong on a list that a person has thought about.
    private const int MostPacks = 4;

    /// <summary>Parts and packs, in ordinal order of the parts' ids.</summary>
    public static IEnumerable<(Part Part, int Packs)> Of(AskedPart asked, PartsCatalog catalog) =>
        catalog.IdsOf(asked.Kind).Select(catalog.Find).OfType<Part>()
        .Where(p => p.Availability.Value != "discontinued" && IsOf(p, asked))
        .SelectMany(p => Enumerable.Range(1, asked.Goes == "extras" ? MostPacks : 1).Select(packs => (p, packs)));

    private static bool IsOf(Part part, AskedPart asked)
    {
        var (type, length) = part switch
        {
            Sundry sundry => (sundry.Type, sundry.Length),
            WiringPart wiring => (wiring.Type, wiring.Length),
            Driver driver => (driver.Type, null),
            _ => ("", null),
        };
        return (asked.Types.Count == 0 || asked.Types.Contains(type))
            && (asked.Length is not { } least || (length is { } known && known.Si >= least - 1e-9));
    }
}
