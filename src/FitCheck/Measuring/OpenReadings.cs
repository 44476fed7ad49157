using FitCheck.Builds;
using FitCheck.Builds.Readable;
using FitCheck.Evaluation;
using FitCheck.Facts.Values;
using FitCheck.Findings;

namespace FitCheck.Measuring;

/// <summary>What a build waits for, in the order in which it is reached in the car.</summary>
internal static class OpenReadings
{
    // What comes to hand while a place is opened, from the closed trim to the card that goes on again: the beginnings of keys.
    private static readonly string[] AtPlace =
    [
        "place", "side", "role", "airbag_near", "pressure_sensor",
        "wet", "factory_driver", "connector.family", "connector.polarity", "connector", "feed", "wire.gauge",
        "mounting.recess", "mounting.cutout", "mounting.largest_cutout", "mounting.panel", "mounting.holes", "mounting.depth",
        "mounting.obstructions", "mounting.aim_clock", "mounting.module_room", "wire", "new_wire", "box", "port",
        "mounting.door_card_gap", "mounting.grille_gap",
    ];

    // Behind the places: what belongs to the whole car, from the radio to the battery, then what lies on the bench.
    private static readonly string[] Elsewhere =
    [
        "vehicle", "source-unit", "line-converter", "amplifier", DatumKey.Device, "wiring", "driver", "component-set", "crossover",
        "adapter", "cup", "harness", "sundry",
    ];

    /// <summary>The readings; what no reading answers is left out.</summary>
    public static IReadOnlyList<OpenReading> Of(BuildResult build)
    {
        var names = build.Facts.Where(t => t.Subject == Subject.Position).ToDictionary(t => t.Key, t => t.Name, StringComparer.Ordinal);
        var order = names.Keys.ToList();
        return [.. Waiting(build).Where(w => w.Item.ToFillIn is not null).GroupBy(w => w.Item.Key!.Value).Select(g => Told(g, names))
            .OrderBy(r => r.IsForMaker).ThenBy(r => Place(r.Reading.Key, order)).ThenBy(r => Step(r.Reading.Key))
            .Select(r => r.Reading)];
    }

    /// <summary>What has to be written into entries, for no reading answers it; each question once.</summary>
    public static IReadOnlyList<ToMeasure> InEntries(BuildResult build) =>
        [.. Waiting(build).Where(w => w.Item.ToFillIn is null).Select(w => w.Item).DistinctBy(i => (i.What, i.How))];

    private static IEnumerable<(ToMeasure Item, Finding Finding)> Waiting(BuildResult build) =>
        build.Findings.Where(f => f is { Status: Status.Measure, Waived: null }).SelectMany(f => f.ToMeasure.Select(t => (t, f)));

    private static (OpenReading Reading, bool IsForMaker) Told(IGrouping<DatumKey, (ToMeasure Item, Finding Finding)> waiting,
        Dictionary<string, string> names)
    {
        var key = waiting.Key;
        var item = waiting.First().Item;
        var place = names.GetValueOrDefault(key.At) ?? key.Entry?.Name ?? key.At;
        var decides = waiting.GroupBy(w => (w.Finding.Rule, w.Item.Passing)).Select(g => (g.First().Finding, g.Key.Passing)).ToList();
        return (new OpenReading(key, place, item.What,
            AnswerShape.Of(key)!.IsNothingOnly ? item.How : Bare(item.How), decides), item.IsForMaker);
    }

    // The line goes into the build; that the entry may have it for every build is for the report.
    private static string Bare(string how) =>
        how.IndexOf($" {UnwrittenKey.Begins}", StringComparison.Ordinal) is > 0 and var at ? how[..at] : how;

    private static int Place(DatumKey key, List<string> positions) => key.Kind is DatumKey.Position or DatumKey.Line
        ? positions.IndexOf(key.At) : positions.Count + Math.Max(0, Array.IndexOf(Elsewhere, key.Kind));

    private static int Step(DatumKey key) => key.Kind is DatumKey.Position or DatumKey.Line
        ? Array.FindIndex(AtPlace, b => key.Of.StartsWith(b, StringComparison.Ordinal)) : 0;
}
