using System.Text.RegularExpressions;
using FitCheck.Catalog;
using FitCheck.Evaluation;
using FitCheck.Findings;
using FitCheck.Foundation.Problems;
using Xunit;
using Xunit.Abstractions;

namespace FitCheck.Tests.Measuring;

/// <summary>
/// A reading that is told to pass does pass: each one that a reference build is told is written into it, and the question is answered.
/// </summary>
public partial class ToldReadingTests(ITestOutputHelper output)
{
    private static readonly Checker Checker = FitCheck.Checker.Open(new CheckerOptions
    {
        Catalogs = [RepositoryRoot.Of("catalog")],
        Rules = [RepositoryRoot.Of("rules")],
    }).Checker!;

    private static readonly Dictionary<string, string> Drivers = Catalog().ToDictionary(d => d.Name, d => d.Id, StringComparer.Ordinal);

    // What a work sheet calls a datum of a place, and the datum; `*` is the name of a thing.
    private static readonly (string Told, string Of)[] OfPlaces =
    [
        ("free depth behind the panel", "mounting.depth"), ("depth to the *, fully down", "mounting.obstructions.*.depth"),
        ("depth to the *", "mounting.obstructions.*.depth"), ("radius from which the * stands", "mounting.obstructions.*.from_radius"),
        ("gap from the panel to the grille", "mounting.grille_gap"), ("diameter of the hole in the panel", "mounting.cutout"),
        ("short axis of the hole in the panel", "mounting.cutout_minor"), ("thickness of the panel", "mounting.panel_thickness"),
        ("largest hole that the panel allows", "mounting.largest_cutout"),
        ("gap from the panel to the back of the door card", "mounting.door_card_gap"),
        ("diameter of the recess or trim ring", "mounting.recess"), ("net volume of the box", "box"),
        ("length of the factory wire", "wire.length"), ("distance from the factory plug to the driver's terminals", "connector.distance"),
    ];

    private static readonly (string Told, string Of)[] OfDrivers =
    [
        ("mounting depth", "dimensions.depth"), ("cutout diameter", "dimensions.cutout"),
        ("short axis of the cutout", "dimensions.cutout_minor"),
        ("flange diameter", "dimensions.flange"), ("short axis of the flange", "dimensions.flange_minor"),
        ("magnet diameter", "dimensions.magnet_diameter"), ("magnet height", "dimensions.magnet_height"),
        ("flange thickness", "dimensions.flange_thickness"), ("height in front of the flange", "dimensions.front_height"),
        ("body diameter", "dimensions.cutout"), ("peak linear excursion", "parameters.xmax"), ("bolt circle", "holes.circle"),
        ("inductance", "parameters.le"), ("effective area (Sd)", "parameters.sd"),
    ];

    private static readonly (string Told, string Of)[] OfMounts =
    [
        ("thickness of the spacer", "adapter.thickness"), ("diameter of the spacer's opening", "adapter.opening"),
        ("outer diameter of the spacer", "adapter.outer"), ("radius of the spacer's inner tabs", "adapter.inner_tabs.radius"),
        ("depth of the spacer's screw bosses", "adapter.boss_depth"), ("hole of the cup", "cup.hole"),
        ("outer diameter of the cup", "cup.outer"), ("depth of the cup", "cup.depth"), ("gap to the grille of the cup", "cup.grille_gap"),
        ("seat for the flange in the cup", "cup.flange_recess"), ("hole in the panel that the cup needs", "cup.cutout"),
    ];

    private static IEnumerable<Driver> Catalog()
    {
        var catalog = PartsCatalog.Open([RepositoryRoot.Of("catalog")], new ProblemList());
        return catalog.IdsOf("driver").Select(id => (Driver)catalog.Find(id)!);
    }

    public static TheoryData<string> Builds() =>
        [.. Directory.GetFiles(RepositoryRoot.Of("catalog", "builds"), "*.yaml").Select(f => Path.GetFileNameWithoutExtension(f))
            .Order(StringComparer.Ordinal)];

    [Theory, MemberData(nameof(Builds))]
    public void A_told_reading_passes_when_it_is_written_in(string name)
    {
        var text = File.ReadAllText(RepositoryRoot.Of("catalog", "builds", name + ".yaml"));
        var offenders = new List<string>();
        var tried = 0;
        foreach (var finding in Findings(text))
        {
            foreach (var told in finding.ToMeasure.Where(t => t.Passing is not null))
            {
                if (Value().Match(told.Passing!) is not { Success: true } value)
                    continue;
                if (Of(finding, told) is not var (at, of))
                {
                    offenders.Add($"nobody says where \"{told.What}\" is written");
                    continue;
                }
                var reading = $"{{at: {at}, of: \"{of}\", value: {value.Groups[1].Value}}}";
                tried++;
                var now = Findings($"{text}\nreadings:\n  - {reading}\n")
                    .SingleOrDefault(f => f.Rule == finding.Rule && f.Position == finding.Position);
                // Another datum may still be wanting; of this one nothing is asked any more.
                if (now is not null && now.Status != Status.Pass && (now.Status == Status.Fail || now.ToMeasure.Count == 0
                    || now.ToMeasure.Any(t => t.What == told.What)))
                    offenders.Add($"{finding.Rule} at {finding.Position}: {told.What} {told.Passing}, with {reading}: {now.Status} "
                        + now.Message);
            }
        }
        output.WriteLine($"{name}: {tried} readings written in");
        Assert.True(offenders.Count == 0, string.Join('\n', offenders));
    }

    private static IReadOnlyList<Finding> Findings(string text)
    {
        var outcome = Checker.Check([BuildSource.Text("build.yaml", text)]);
        Assert.Equal("", string.Join('\n', outcome.Problems));
        return outcome.Result!.Builds[0].Findings;
    }

    // Where and what `readings` call a told datum; null where it is none of these. Of a part by its name that is told of it.
    private static (string At, string Of)? Of(Finding finding, ToMeasure told)
    {
        if ((Find(OfPlaces, told.What, $" at {finding.PositionName}") ?? Find(OfMounts, told.What, "")) is { } there)
            return (finding.Position, there);
        var split = told.What.LastIndexOf(" of ", StringComparison.Ordinal);
        return split > 0 && Find(OfDrivers, told.What[..split], "") is { } key && Drivers.TryGetValue(told.What[(split + 4)..], out var id)
            ? (id, key) : null;
    }

    private static string? Find((string Told, string Of)[] table, string what, string after)
    {
        foreach (var (told, of) in table)
        {
            var match = Regex.Match(what, "^" + Regex.Escape(told + after).Replace("\\*", "(.+?)", StringComparison.Ordinal) + "$");
            if (match.Success)
                return of.Replace("*", match.Groups[1].Value, StringComparison.Ordinal);
        }
        return null;
    }

    // A limit on one side.
    [GeneratedRegex("^([0-9.]+ [a-zA-Z0-9]+) or (?:more|less)$")]
    private static partial Regex Value();
}
