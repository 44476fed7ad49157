using System.Globalization;
using System.Text.RegularExpressions;
using FitCheck.Catalog;
using FitCheck.Foundation.Problems;
using Xunit;

namespace FitCheck.Tests.Charts;

/// <summary>
/// The repository's catalog with lengths changed, lines left out and provenances swapped at random, so that every status and every gap
/// comes up.
/// </summary>
internal static class ShakenCatalog
{
    private static readonly string[] Provenances = ["measured", "datasheet", "estimated"];

    private static readonly Regex Length = new(@"(?<=[ \[])(?<number>\d+(?:\.\d+)?) mm\b",
        RegexOptions.Compiled | RegexOptions.ExplicitCapture);

    // Only what an entry may lack.
    private static readonly Regex Optional = new(
        "^ +(depth|grille_gap|recess|largest_cutout|panel_thickness|magnet_diameter|magnet_height|flange_thickness|front_height|xmax|"
        + "aim_clock|holes|location|flange|cutout|flange_minor|cutout_minor|obstructions): .*$|"
        + "^(thickness|tilt|opening|opening_minor|outer|outer_minor|cable_exit|inner_tabs|vehicle_holes|cuttable|hole|depth|flange_recess|"
        + "grille_gap|mass): .*$",
        RegexOptions.Compiled | RegexOptions.ExplicitCapture);

    public static PartsCatalog Open(int seed, TemporaryFolder folder)
    {
        var random = new Random(seed);
        foreach (var kind in new[] { "drivers", "adapters", "cups", "vehicles", "sets", "sources" })
        {
            foreach (var path in Directory.GetFiles(RepositoryRoot.Of("catalog", kind), "*.yaml").Order(StringComparer.Ordinal))
                folder.Write($"{kind}/{Path.GetFileName(path)}",
                    string.Join('\n',
                        File.ReadAllLines(path).Where(l => !Optional.IsMatch(l) || random.Next(30) > 0).Select(l => Shaken(l, random))));
        }
        var problems = new ProblemList();
        var catalog = PartsCatalog.Open([folder.Path], problems);
        foreach (var id in catalog.Ids)
            catalog.Find(id);
        Assert.Empty(problems.Sorted());
        return catalog;
    }

    private static string Shaken(string line, Random random)
    {
        if (line.StartsWith("provenance:", StringComparison.Ordinal))
            return "provenance: " + Provenances[random.Next(3)];
        // The points of a profile stay in their order.
        var isPoint = line.TrimStart().StartsWith("- [", StringComparison.Ordinal);
        return Length.Replace(line, m => random.Next(3) > 0 || (isPoint && line[m.Index - 1] == '[') ? m.Value
            : (double.Parse(m.Groups["number"].Value, CultureInfo.InvariantCulture) * (0.9 + (0.2 * random.NextDouble()))).ToString("0.0",
            CultureInfo.InvariantCulture) + " mm");
    }
}
