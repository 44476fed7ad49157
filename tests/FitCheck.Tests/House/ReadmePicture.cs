using System.Text.RegularExpressions;
using FitCheck.Cli.Commands;
using FitCheck.Evaluation;
using FitCheck.Foundation;
using FitCheck.Foundation.Files;
using FitCheck.Reports.Svg;

namespace FitCheck.Tests.House;

/// <summary>The section of a door as a picture that stands alone: the report's drawing, with the style of drawings inside.</summary>
internal static class ReadmePicture
{
    private const string Build = "catalog/builds/tansy-angled-rings.yaml";

    public static string Drawn()
    {
        var folders = new Folders([RepositoryRoot.Of("catalog")], [RepositoryRoot.Of("rules")]);
        var result = new Once(folders, ValidationCache.Nothing).Check([RepositoryRoot.Of(Build)]).Result!;
        var drawing = result.Builds[0].Drawings.First(d => d.Position == "front-door-left");
        return SectionDrawing.Draw("door", drawing).ToString()
            .Replace("<svg ", "<svg xmlns=\"http://www.w3.org/2000/svg\" ", StringComparison.Ordinal)
            .Replace("</desc>", $"</desc><style>{Style()}</style>", StringComparison.Ordinal) + "\n";
    }

    // Fonts, both palettes, and all from what says "Drawings" to where narrow windows begin; the ground is the sheet's in light and dark.
    private static string Style()
    {
        var css = File.ReadAllText(RepositoryRoot.Of("reports", "html", "style.css"));
        var palettes = Regex.Match(css, @"^html \{.*?^\}\n\n@media \(prefers-color-scheme: dark\) \{.*?^\}\n",
            RegexOptions.Singleline | RegexOptions.Multiline).Value.Replace("html {", ":root {", StringComparison.Ordinal);
        var drawings = Regex.Match(css, @"^svg text \{.*?(?=^@media)", RegexOptions.Singleline | RegexOptions.Multiline).Value;
        return $"\n{palettes}{drawings.TrimEnd()}\n:root {{ background: var(--sheet); }}\n";
    }
}
