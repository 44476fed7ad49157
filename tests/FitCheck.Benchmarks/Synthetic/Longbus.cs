using System.Globalization;
using System.Text;

namespace FitCheck.Benchmarks.Synthetic;

/// <summary>A vehicle of any number of positions that differ in their side and their end alone, and a build that fills them.</summary>
internal static class Longbus
{
    public static string Build(int positions) => "kind: build\nname: Longbus\nvehicle: longbus\nfit:\n"
        + string.Concat(Enumerable.Range(0, positions)
            .Select(i => FormattableString.Invariant($"  - {{at: [seat-{i}], driver: orrin-w165-4, adapter: spacer-165-tansy-18}}\n")));

    public static string Vehicle(int positions)
    {
        var vehicle = new StringBuilder("id: longbus\nkind: vehicle\nname: Longbus\nprovenance: measured\n"
            + "source: Invented for a measurement\nsteering: left\n"
            + "factory_source: merrow-r4\nfactory_amplified: false\nspeaker_returns: separate\npositions:\n");
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
        }
        return vehicle.ToString();
    }
}
