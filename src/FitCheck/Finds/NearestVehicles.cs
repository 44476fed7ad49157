using FitCheck.Catalog;

namespace FitCheck.Finds;

/// <summary>The vehicles that somebody may mean by a few words, or that come nearest to the one that is meant.</summary>
internal static class NearestVehicles
{
    // A shorter word stands in too many names to say anything alone.
    private const int LeastLetters = 3;

    // What people call one shape of a body.
    private static readonly string[][] Shapes =
    [
        ["estate", "wagon"], ["saloon", "sedan"], ["hatch", "hatchback"], ["mpv", "minivan", "carrier"], ["pickup", "truck"],
        ["suv", "off-roader"], ["city", "small"], ["coupe", "coupé"],
    ];

    /// <inheritdoc cref="Of(string, IReadOnlyList{Vehicle})"/>
    public static IReadOnlyList<Vehicle> Of(string words, PartsCatalog catalog) =>
        Of(words, [.. catalog.IdsOf("vehicle").Order(StringComparer.Ordinal).Select(catalog.Find).OfType<Vehicle>()]);

    /// <summary>
    /// Those that have every word in id or name; where none has, those that have some of them, in another word for the same shape of body
    /// or misspelt, most first; else the one whose id is written most alike. None where nothing is near.
    /// </summary>
    /// <param name="words">As typed.</param>
    /// <param name="vehicles">Among which.</param>
    public static IReadOnlyList<Vehicle> Of(string words, IReadOnlyList<Vehicle> vehicles)
    {
        string[] typed = words.Split([' ', '-', ',', '.', '/', '\t', '\n'], StringSplitOptions.RemoveEmptyEntries);
        var all = vehicles.Where(v => typed.Length > 0 && Array.TrueForAll(typed, w => Has(v, w))).ToList();
        if (all.Count > 0)
            return [.. all.OrderByDescending(v => string.Equals(v.Id, words.Trim(), StringComparison.OrdinalIgnoreCase))];
        var some = vehicles.Select(v => (Vehicle: v, Likeness: typed.Sum(w => Likeness(v, w)))).Where(v => v.Likeness > 0)
            .OrderByDescending(v => v.Likeness).Select(v => v.Vehicle).ToList();
        return some.Count > 0 ? some
            : Foundation.Problems.Nearest.To(words, vehicles.Select(v => v.Id)) is { } nearest
            ? [.. vehicles.Where(v => v.Id == nearest)] : [];
    }

    private static bool Has(Vehicle vehicle, string word) =>
        $"{vehicle.Id} {vehicle.Name}".Contains(word, StringComparison.OrdinalIgnoreCase);

    // A word that is there counts most, then another word for it, then one that is nearly written so.
    private static int Likeness(Vehicle vehicle, string word)
    {
        if (word.Length < LeastLetters)
            return 0;
        if (Has(vehicle, word))
            return 4;
        var typed = word.ToLowerInvariant();
        if (Shapes.Any(s => s.Contains(typed, StringComparer.Ordinal) && s.Any(other => Has(vehicle, other))))
            return 3;
        return Foundation.Problems.Nearest.To(typed, Things.Tokens($"{vehicle.Id} {vehicle.Name}").Where(t => t.Length > LeastLetters))
            is null ? 0 : 1;
    }
}
