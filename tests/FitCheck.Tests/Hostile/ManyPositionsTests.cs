using System.Globalization;
using System.Text;
using FitCheck.Evaluation;
using Xunit;

namespace FitCheck.Tests.Hostile;

/// <summary>
/// A vehicle of five hundred positions. Nothing is told of a position that would not be told of it in a vehicle of four, and what grows
/// with their number is not read once for each of them.
/// </summary>
public sealed class ManyPositionsTests : IDisposable
{
    private const int Many = 500, Few = 4;

    private readonly TemporaryFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    [Fact]
    public void Each_position_is_judged_as_in_a_vehicle_of_four()
    {
        var (many, few) = (Judged(Many), Judged(Few));
        for (var i = 0; i < Many; i++)
            Assert.Equal(Told(few, i % Few), Told(many, i));
        Assert.NotEmpty(Told(few, 0));
    }

    [Fact]
    public void What_is_written_of_the_vehicle_is_read_once()
    {
        var checker = Opened(Few, out var build);
        var draft = checker.Draft("longbus.yaml", build).Build!;

        Assert.NotNull(draft.Written!("longbus"));
        Assert.Same(draft.Written("longbus"), draft.Written("longbus"));
    }

    private BuildResult Judged(int positions)
    {
        var checker = Opened(positions, out var build);
        return Assert.Single(checker.Check([BuildSource.Text("longbus.yaml", build)]).Result!.Builds);
    }

    // What a place needs by itself; drivers on one output bear on each other.
    private static IEnumerable<string> Told(BuildResult result, int seat) => result.Findings
        .Where(f => f.Position == $"seat-{seat}" && f.Rule.StartsWith("mount/", StringComparison.Ordinal))
        .Select(f => $"{f.Rule} {f.Status} {f.Message}".Replace($"eat {seat}", "eat", StringComparison.Ordinal))
        .Order(StringComparer.Ordinal);

    private Checker Opened(int positions, out string build)
    {
        var vehicle = new StringBuilder("""
            id: longbus
            kind: vehicle
            name: Longbus
            provenance: measured
            source: Invented for a test
            steering: left
            factory_source: merrow-r4
            factory_amplified: false
            speaker_returns: separate
            positions:

            """);
        var fit = new StringBuilder("kind: build\nname: Longbus\nvehicle: longbus\nfit:\n");
        for (var i = 0; i < positions; i++)
        {
            var (side, end) = (i % 2 == 0 ? "left" : "right", i % 4 < 2 ? "front" : "rear");
            vehicle.Append(CultureInfo.InvariantCulture, $"""
                  - id: seat-{i}
                    name: Seat {i}
                    side: {side}
                    role: woofer
                    place: door
                    factory_channel: {end}-{side}
                    mounting:
                      cutout: 158 mm
                      depth: 76 mm
                      grille_gap: 54 mm
                      panel_thickness: 0.9 mm
                      panel_material: steel
                      obstructions: []
                    feed: {"{"}type: full-range{"}"}
                    connector: {"{"}family: duo-a, polarity: known, distance: 90 mm{"}"}
                    location: [{650 + i} mm, 720 mm, -750 mm]

                """);
            fit.Append(CultureInfo.InvariantCulture, $"  - {{at: [seat-{i}], driver: orrin-w165-4, adapter: spacer-165-tansy-18}}\n");
        }
        _folder.Write("catalog/vehicles/longbus.yaml", vehicle.ToString());
        build = fit.ToString();
        var opened = Checker.Open(new CheckerOptions
        {
            Catalogs = [RepositoryRoot.Of("catalog"), _folder.Of("catalog")],
            Rules = [RepositoryRoot.Of("rules")],
        });
        return opened.Checker ?? throw new InvalidOperationException(string.Join('\n', opened.Problems));
    }
}
