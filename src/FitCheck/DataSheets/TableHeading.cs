using System.Text.RegularExpressions;
using FitCheck.Foundation.Problems;

namespace FitCheck.DataSheets;

/// <summary>What a heading means: a key, and the unit of the figures below it.</summary>
/// <param name="Path">The key.</param>
/// <param name="Unit">As it is written; empty for none.</param>
internal sealed partial record TableHeading(KeyPath Path, string Unit)
{
    // What data sheets call some keys.
    private static readonly Dictionary<string, string> Called = new(StringComparer.Ordinal)
    {
        ["rms_power"] = "power.continuous",
        ["nominal_power"] = "power.continuous",
        ["max_power"] = "power.peak",
        ["peak_power"] = "power.peak",
        ["mounting_depth"] = "dimensions.depth",
        ["cutout_diameter"] = "dimensions.cutout",
        ["outer_diameter"] = "dimensions.flange",
        ["article"] = "articles",
        ["article_number"] = "articles",
        ["sku"] = "articles",
    };

    /// <summary>The heading; null, and told, where it is no key, or may be several.</summary>
    public static TableHeading? Of(Located<string> cell, string kind, IReadOnlyList<KeyPath> paths, ProblemList? problems)
    {
        var (name, unit) = Bracketed().Match(cell.Value) is { Success: true } m ? (m.Groups["name"].Value, m.Groups["unit"].Value.Trim())
            : (cell.Value, "");
        var found = Found(Plain(name), paths);
        // `Fs Hz`: the last word is the unit.
        if (found.Count == 0 && unit.Length == 0 && name.TrimEnd().LastIndexOf(' ') is > 0 and var at)
        {
            found = [.. Found(Plain(name[..at]), paths).Where(p => p.Figure is not null)];
            unit = found.Count > 0 ? name[(at + 1)..].Trim() : "";
        }
        if (found is [var only])
            return new TableHeading(only, unit);
        problems?.Warn(cell.At, found.Count > 1
            ? $"`{cell.Value}` may be {string.Join(" or ", found.Select(p => $"`{p.Path}`"))}; write the whole key. The column is not read"
            : $"`{cell.Value}` is no key of {Catalog.PartsCatalog.Article(kind)}"
                + $"{Nearest.Hint(Plain(name), paths.SelectMany(p => new[] { p.Path, p.Keys[^1] }))}; the column is not read",
                    ProblemKind.UnknownName);
        return null;
    }

    private static IReadOnlyList<KeyPath> Found(string name, IReadOnlyList<KeyPath> paths)
    {
        var path = Called.GetValueOrDefault(name, name);
        var exact = paths.Where(p => p.Path == path).ToList();
        return exact.Count > 0 ? exact : [.. paths.Where(p => p.Path.EndsWith("." + path, StringComparison.Ordinal))];
    }

    private static string Plain(string name) => Gaps().Replace(name.Trim().ToLowerInvariant(), "_");

    [GeneratedRegex(@"^(?<name>[^\[(]+)[\[(](?<unit>[^\])]+)[\])]\s*$", RegexOptions.CultureInvariant | RegexOptions.ExplicitCapture
        | RegexOptions.NonBacktracking)]
    private static partial Regex Bracketed();

    [GeneratedRegex(@"[\s_-]+", RegexOptions.CultureInvariant | RegexOptions.NonBacktracking)]
    private static partial Regex Gaps();
}
