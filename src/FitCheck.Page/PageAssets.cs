namespace FitCheck.Page;

/// <summary>Reads what the page refers to.</summary>
internal static class PageAssets
{
    private const string Css = "text/css; charset=utf-8";
    private const string Script = "text/javascript; charset=utf-8";

    // What the drawings need comes from the report's style sheet, so that they look alike everywhere.
    private static readonly (string Name, string[] Files, string Type)[] Served =
    [
        ("style.css", ["html/style.css", "page/plan.css", "page/style.css"], Css),
        ("report.css", ["html/style.css"], Css),
        ("sheet.css", ["sheet/style.css"], Css),
        ("page.js", ["page/page.js"], Script),
        ("htmx.min.js", ["page/vendor/htmx.min.js"], Script),
    ];

    public static IReadOnlyList<PageAsset> Read(string folder) =>
        [.. Served.Select(s => new PageAsset(s.Name, s.Type,
            string.Concat(s.Files.Select(f => File.ReadAllText(Path.Combine(folder, f)).ReplaceLineEndings("\n")))))];
}
