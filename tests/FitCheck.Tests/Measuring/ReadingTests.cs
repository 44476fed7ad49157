using FitCheck.Evaluation;
using FitCheck.Findings;
using Xunit;

namespace FitCheck.Tests.Measuring;

/// <summary>What a build has measured takes the place of what the catalog has, there and nowhere else.</summary>
public class ReadingTests
{
    private static readonly Checker Checker = FitCheck.Checker.Open(new CheckerOptions
    {
        Catalogs = [RepositoryRoot.Of("catalog")],
        Rules = [RepositoryRoot.Of("rules")],
    }).Checker!;

    private const string Doors = """
        kind: build
        name: Doors
        vehicle: tansy-hatch
        fit:
          - at: [front-door-left, front-door-right]
            driver: orrin-c165
            adapter: spacer-165-tansy-18
            harness: harness-duo-a-48-28
        """;

    [Fact]
    public void A_reading_at_one_door_is_none_at_its_mirror_image()
    {
        var findings = Of(Doors + "\nreadings: [{at: front-door-left, of: mounting.depth, value: 30 mm}]\n");

        Assert.Equal(Status.Fail, Said(findings, "mount/too-deep", "front-door-left"));
        Assert.Equal(Status.Pass, Said(findings, "mount/too-deep", "front-door-right"));
    }

    [Fact]
    public void A_reading_at_the_mirror_image_is_of_that_side_and_by_its_name_there()
    {
        var findings = Of(Doors + "\nreadings: [{at: front-door-right, of: obstructions.window glass.depth, value: 30 mm}]\n");

        Assert.Equal(Status.Fail, Said(findings, "mount/glass-too-near", "front-door-right"));
        Assert.Equal(Status.Pass, Said(findings, "mount/glass-too-near", "front-door-left"));
    }

    [Fact]
    public void What_is_measured_at_a_line_is_the_same_as_under_readings()
    {
        var atLine = Doors.Replace("    driver:", "    measured: {depth: 41 mm, cutout: 150 mm, grille_gap: 43 mm}\n    driver:",
            StringComparison.Ordinal);
        var below = Doors + "\nreadings:\n" + string.Concat(new[] { "left", "right" }.Select(side =>
            $"  - {{at: front-door-{side}, of: mounting.depth, value: 41 mm}}\n"
            + $"  - {{at: front-door-{side}, of: mounting.cutout, value: 150 mm}}\n"
            + $"  - {{at: front-door-{side}, of: mounting.grille_gap, value: 43 mm}}\n"));

        Assert.Equal(Of(atLine).Select(f => (f.Rule, f.Position, f.Status, f.Message)),
            Of(below).Select(f => (f.Rule, f.Position, f.Status, f.Message)));
    }

    [Fact]
    public void A_guess_that_was_read_is_a_guess_no_more()
    {
        const string alder = """
            kind: build
            name: Alder
            vehicle: alder-mpv
            fit:
              - at: [rear-door-left, rear-door-right]
                driver: tamsin-c165s
                adapter: spacer-165-alder-14
            """;
        Assert.Equal(Status.Measure, Said(Of(alder), "mount/spacer-opening-too-narrow", "rear-door-left"));
        Assert.Equal(Status.Pass, Said(Of(alder + "\nreadings:\n"
            + "  - {at: spacer-165-alder-14, of: opening, value: 146 mm}\n"), "mount/spacer-opening-too-narrow", "rear-door-left"));
    }

    [Fact]
    public void A_reading_stands_where_the_build_has_it()
    {
        var findings = Of(Doors + "\nreadings: [{at: front-door-left, of: mounting.depth, value: 30 mm, tolerance: 0.2 mm}]\n");

        var deep = findings.Single(f => f.Rule == "mount/too-deep" && f.Position == "front-door-left");
        Assert.Contains(deep.Related, r => r.At.File == "build.yaml" && r.At.Line == 9);
        // By hand: 30 mm less 38 mm; 0.2 mm of the reading, 1 mm of the driver's sheet and 1 mm of the spacer's.
        var value = deep.Value!.Value;
        Assert.Equal((-8, -10.2, -5.8), (Math.Round(value.Value, 3), Math.Round(value.Low, 3), Math.Round(value.High, 3)));
    }

    private static IReadOnlyList<Finding> Of(string build)
    {
        var outcome = Checker.Check([BuildSource.Text("build.yaml", build)]);
        Assert.Equal("", string.Join('\n', outcome.Problems));
        return outcome.Result!.Builds[0].Findings;
    }

    private static Status Said(IReadOnlyList<Finding> findings, string rule, string position) =>
        findings.Single(f => f.Rule == rule && f.Position == position).Status;
}
