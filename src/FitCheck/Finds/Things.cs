using FitCheck.Catalog;
using FitCheck.Rules;

namespace FitCheck.Finds;

/// <summary>Finds parts, vehicles, places and rules by words.</summary>
internal static class Things
{
    // What people call a kind or a type besides its own word.
    private static readonly Dictionary<string, string[]> Called = new(StringComparer.Ordinal)
    {
        ["adapter"] = ["spacer", "ring", "plate"],
        ["driver"] = ["speaker", "loudspeaker"],
        ["component-set"] = ["set", "kit"],
        ["source-unit"] = ["radio"],
        ["line-converter"] = ["converter"],
        ["harness"] = ["plug", "loom"],
        ["vehicle"] = ["car", "van"],
        ["wiring"] = ["cable", "fuse", "wire"],
        ["place"] = ["position"],
    };

    /// <summary>
    /// Those that have every word, as the beginning of one of theirs; those that have most of them in id and name first, then by kind and
    /// id.
    /// </summary>
    /// <param name="words">The words; a word of several tokens counts as these.</param>
    /// <param name="kind">Only of this kind; null for any.</param>
    /// <param name="most">Of a price up to this; null for any.</param>
    /// <param name="catalog">The parts and vehicles.</param>
    /// <param name="rules">The rules.</param>
    public static IReadOnlyList<Thing> Found(IReadOnlyList<string> words, string? kind, decimal? most, PartsCatalog catalog, RuleSet rules)
    {
        var wanted = words.SelectMany(QuoteImport.PartTokens.Of).Distinct(StringComparer.Ordinal).ToList();
        return [.. All(catalog, rules)
            .Where(t => (kind is null || t.Kind == kind) && (most is null || t.Price?.Amount <= most))
            .Select(t => (Thing: t, Known: Tokens(t.Id).Concat(Tokens(t.Name)).ToHashSet(StringComparer.Ordinal)))
            .Where(t => wanted.TrueForAll(w => Has(t.Known, w)
                || Has(t.Thing.Words.SelectMany(Tokens).Append(t.Thing.Kind).Concat(Called.GetValueOrDefault(t.Thing.Kind) ?? []), w)))
            .OrderByDescending(t => words is [var id] && t.Thing.Id == id).ThenByDescending(t => wanted.Count(t.Known.Contains))
            .ThenBy(t => t.Thing.Kind, StringComparer.Ordinal).ThenBy(t => t.Thing.Id, StringComparer.Ordinal).Select(t => t.Thing)];
    }

    private static IEnumerable<Thing> All(PartsCatalog catalog, RuleSet rules)
    {
        foreach (var id in catalog.Ids.Order(StringComparer.Ordinal))
        {
            if (catalog.Find(id) is Part part)
                yield return new Thing(id, catalog.KindOf(id)!, part.Name, part.HasPrice ? part.Price.Value : null, [.. Of(part)],
                    part.At.File);
            else if (catalog.Find(id) is Vehicle vehicle)
            {
                yield return new Thing(id, "vehicle", vehicle.Name, null, [], vehicle.At.File);
                foreach (var position in vehicle.Positions)
                    yield return new Thing($"{id}/{position.Id}", "place", $"{position.Name} of {vehicle.Name}", null,
                        [position.Role, position.Place], position.At.File);
            }
        }
        foreach (var rule in rules.Rules)
            yield return new Thing(rule.Id, "rule", rule.Title, null, [], rule.At.File);
    }

    private static IEnumerable<string> Of(Part part) => part switch
    {
        Driver driver => [driver.Type, driver.Size?.ToString() ?? ""],
        Adapter adapter => WhatFits(adapter.Fits),
        Cup cup => WhatFits(cup.Fits),
        WiringPart wiring => [wiring.Type],
        Sundry sundry => [sundry.Type],
        _ => [],
    };

    private static IEnumerable<string> WhatFits(IReadOnlyList<Fit> fits) =>
        fits.SelectMany(f => f.Positions.Select(p => p.Value).Prepend(f.Vehicle.Value));

    private static bool Has(IEnumerable<string> known, string word) => known.Any(k => k.StartsWith(word, StringComparison.Ordinal));

    /// <summary>The words of a text, each also as it is compared.</summary>
    internal static IEnumerable<string> Tokens(string text) => QuoteImport.PartTokens.Of(text).Concat(
        text.ToLowerInvariant().Split([' ', '-', '/', ',', '.', '(', ')'], StringSplitOptions.RemoveEmptyEntries));
}
