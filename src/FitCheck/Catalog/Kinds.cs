namespace FitCheck.Catalog;

/// <summary>The kinds of catalog entries and the folder in which each lives.</summary>
internal static class Kinds
{
    public static readonly IReadOnlyList<CatalogKind> All =
    [
        new("adapters", "adapter"), new("amplifiers", "amplifier"), new("converters", "line-converter"), new("crossovers", "crossover"),
        new("cups", "cup"), new("drivers", "driver"), new("harnesses", "harness"), new("sets", "component-set"),
        new("sources", "source-unit"),
        new("sundries", "sundry"), new("vehicles", "vehicle"), new("wiring", "wiring"),
    ];

    public static string? KindOf(string folder)
    {
        foreach (var kind in All)
        {
            if (kind.Folder == folder)
                return kind.Kind;
        }
        return null;
    }
}

/// <summary>A kind, and its folder in the catalog.</summary>
internal sealed record CatalogKind(string Folder, string Kind);
