namespace FitCheck.Catalog;

/// <summary>The kinds of catalog entries and the folder in which each lives.</summary>
public static class Kinds
{
    public static readonly IReadOnlyList<(string Folder, string Kind)> All =
    [
        ("adapters", "adapter"), ("amplifiers", "amplifier"), ("converters", "line-converter"), ("crossovers", "crossover"), ("cups", "cup"),
        ("drivers", "driver"), ("harnesses", "harness"), ("sets", "component-set"), ("sources", "source-unit"), ("sundries", "sundry"),
        ("vehicles", "vehicle"), ("wiring", "wiring"),
    ];

    public static string? KindOf(string folder) => All.FirstOrDefault(k => k.Folder == folder).Kind;

    public static string? FolderOf(string kind) => All.FirstOrDefault(k => k.Kind == kind).Folder;
}
