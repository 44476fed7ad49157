namespace FitCheck.Page;

/// <summary>Reads what the page refers to.</summary>
internal static class PageAssets
{
    private static readonly (string File, string Type)[] Files =
    [
        ("style.css", "text/css; charset=utf-8"),
        ("page.js", "text/javascript; charset=utf-8"),
        ("vendor/htmx.min.js", "text/javascript; charset=utf-8"),
    ];

    public static IReadOnlyList<PageAsset> Read(string folder) =>
        [.. Files.Select(f => new PageAsset(Path.GetFileName(f.File), f.Type, File.ReadAllText(Path.Combine(folder, f.File))))];
}
