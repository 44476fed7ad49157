using System.Globalization;
using FitCheck.Builds;
using FitCheck.Catalog;
using FitCheck.Facts.Fitting;
using FitCheck.Yaml;

namespace FitCheck.Suggestions.Choices;

/// <summary>
/// What a build that is being put together does not have yet: drivers at places that nobody has filled, another source than the factory
/// radio, an amplifier.
/// </summary>
internal static class OpenSlots
{
    public static IEnumerable<Slot> Of(SlotContext g) => [.. Sets(g), .. Drivers(g), .. Sources(g), .. Amplifiers(g)];

    private static IEnumerable<Slot> Drivers(SlotContext g)
    {
        foreach (var pair in g.Pairs(Open(g).Select(p => p.Id)))
        {
            var positions = pair.Select(p => g.Vehicle.Find(p)!).ToList();
            yield return new Slot("driver", pair, null, BuildInputs.At("driver", pair),
                () => g.Stock.All<Driver>("driver").Where(d => positions.TrueForAll(p => PlaceFacts.Suits(d.Type, p.Role)))
                .Select(d => new Option(d.Id, Filled(g, pair, "driver", d.Id)) { Parts = [d] }))
            { Voices = 1 };
        }
    }

    // A place for the bass and one for the treble on the same factory wire belong together.
    private static IEnumerable<Slot> Sets(SlotContext g)
    {
        var open = Open(g).Where(p => p.FactoryChannel is not null).ToList();
        foreach (var tweeters in g.Pairs(open.Where(p => p.Role == "tweeter").Select(p => p.Id)))
        {
            var wires = tweeters.Select(t => g.Vehicle.Find(t)!.FactoryChannel!.Value).ToHashSet(StringComparer.Ordinal);
            foreach (var woofers in g.Pairs(
                open.Where(p => p.Role is not ("tweeter" or "subwoofer") && wires.Contains(p.FactoryChannel!.Value)).Select(p => p.Id))
                    .Where(w => w.Count == tweeters.Count))
            {
                List<string> at = [.. woofers, .. tweeters];
                var positions = at.ConvertAll(p => g.Vehicle.Find(p)!);
                yield return new Slot("component set", at, null, BuildInputs.At("driver", at),
                    () => g.Stock.All<ComponentSet>("component-set").Where(s => FitSlots.Serves(s, positions))
                    .Select(s => new Option(s.Id, Filled(g, at, "set", s.Id)) { Parts = [s] }))
                { Voices = 1 };
            }
        }
    }

    // Where a factory driver is unplugged, nothing is wanted.
    private static IEnumerable<Position> Open(SlotContext g) =>
        g.Vehicle.Positions.Where(p => g.Build.Placed.All(b => b.Position.Id != p.Id || (b.Driver is null && !b.Disconnected)));

    private static IReadOnlyList<TextEdit> Filled(SlotContext g, IReadOnlyList<string> at, string key, string value)
    {
        if (g.Root["fit"] is not YamlList)
            return [g.Editor.AddList(g.Root, "fit", $"{{at: [{string.Join(", ", at)}], {key}: {value}}}")];
        var kept = g.Fit.Where(s => s["keeps_factory_driver"] is not null && s.Positions.Any(at.Contains));
        return [.. kept.Select(s => g.Editor.Replace((YamlScalar)s.Map["keeps_factory_driver"]!, "false")),
            .. FitSlots.Added(g, at, key, value)];
    }

    private static IEnumerable<Slot> Sources(SlotContext g)
    {
        if (g.Build.Devices.Any(d => d.Part is SourceUnit && !(d.IsFactory && d.Id == DeviceReader.Factory)))
            yield break;
        var id = Unused(g, "radio");
        yield return new Slot("source unit", [id], null, [BuildInputs.All],
            () => g.Stock.All<SourceUnit>("source-unit").Where(s => s.Id != g.Vehicle.FactorySource?.Value)
            .Select(s => new Option(s.Id, [Devices(g, $"{{id: {id}, part: {s.Id}}}")]) { Parts = [s] }))
        { Voices = 1 };
    }

    /// <summary>
    /// It takes over every output that hangs on the source; drivers that are chosen later get what outputs are left.
    /// </summary>
    public static IEnumerable<Slot> Amplifiers(SlotContext g)
    {
        if (g.Build.Devices.Any(d => d.Part is Amplifier) || g.Build.Devices.FirstOrDefault(d => d.Part is SourceUnit) is not { } source)
            yield break;
        var isNamed = g.Root["devices"] is YamlList;
        var (id, radio) = (Unused(g, "amp"), isNamed ? source.Id : Unused(g, "radio"));
        var moved = g.Build.Channels.Where(c => c.Device == source && c.Outputs.Count == 1).ToList();
        // What nothing feeds yet gets outputs of its own.
        var unfed = OutputSlots.Unfed(g).ToList();
        yield return new Slot("amplifier", [id], null, [BuildInputs.All],
            () => g.Stock.All<Amplifier>("amplifier").Where(a => a.Channels >= Math.Max(1, moved.Count + unfed.Count))
            .Select(a =>
            new Option(a.Id,
                [Devices(g,
                    isNamed ? [$"{{id: {id}, part: {a.Id}, from: {radio}}}"]
                        : [$"{{id: {radio}, part: {DeviceReader.Factory}}}", $"{{id: {id}, part: {a.Id}, from: {radio}}}"]),
                        .. Channels()])
            { Parts = [a] }))
        { Voices = 1 };

        IEnumerable<TextEdit> Channels() => g.Root["channels"] is YamlList list
            ? [.. moved.Select((c, i) => g.Editor.Replace((YamlScalar)g.Channels.First(s => s["id"] == c.Id).Map["output"]!, Output(i))),
                .. unfed.Select((p, i) => g.Editor.AddItem(list, Fed(p, i)))]
            : [g.Editor.AddList(g.Root, "channels",
            [.. moved.Select(
                (c, i) => $"{{id: {c.Id}, output: {Output(i)}, feeds: [{string.Join(", ", c.Feeds.Select(f => f.Position.Id))}]}}"),
                .. unfed.Select(Fed)])];

        string Fed(string position, int index) =>
            $"{{id: {OutputSlots.Unused(g, position)}, output: {Output(moved.Count + index)}, feeds: [{position}]}}";

        string Output(int index) => string.Create(CultureInfo.InvariantCulture, $"{id}.{index + 1}");
    }

    private static TextEdit Devices(SlotContext g, params IReadOnlyList<string> items)
    {
        if (g.Root["devices"] is not YamlList list)
            return g.Editor.AddList(g.Root, "devices", items);
        return g.Editor.AddItem(list,
            items.Count == 1 ? items[0] : throw new InvalidOperationException("devices that are named are named one by one"));
    }

    private static string Unused(SlotContext g, string id)
    {
        var name = id;
        for (var i = 2; g.Build.Devices.Any(d => d.Id == name); i++)
            name = string.Create(CultureInfo.InvariantCulture, $"{id}-{i}");
        return name;
    }
}
