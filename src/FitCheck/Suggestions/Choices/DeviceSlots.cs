using FitCheck.Builds;
using FitCheck.Catalog;
using FitCheck.Yaml;

namespace FitCheck.Suggestions.Choices;

/// <summary>
/// Source units, line converters and amplifiers: another part, what feeds them, a converter that is missing, how they are switched on.
/// </summary>
internal static class DeviceSlots
{
    private static readonly string[] Gains = ["0.2 V", "0.5 V", "1 V", "2 V", "3 V", "4 V"];

    public static IEnumerable<Slot> Of(SlotContext g)
    {
        foreach (var map in FitLine.Maps(g.Root, "devices"))
        {
            if (map["part"] is not YamlScalar part
                || g.Build.Devices.FirstOrDefault(d => d.Id == (map["id"] as YamlScalar)?.Text) is not { } device)
                continue;
            yield return new Slot(Called(device.Part), [device.Id], part.Text, [BuildInputs.At("part", device.Id)], () => Others(g, device)
                .Select(p => new Option(p.Id, [g.Editor.Replace(part, p.Id)]) { Parts = [p] }))
            { Voices = 1 };
            if (device.Part is Amplifier or LineConverter)
                yield return new Slot("feed", [device.Id], device.From, [BuildInputs.At("from", device.Id)],
                    () => [.. Feeders(g, map, device), .. Converters(g, map, device)]);
            if (device.Part is Amplifier && map["remote"] is null)
                yield return new Slot("turn-on", [device.Id], null, [BuildInputs.At("remote", device.Id)],
                    () => [new Option("ignition", [g.Editor.AddKey(map, "remote", "ignition")])]);
            if (map["gain"] is YamlScalar gain)
                yield return new Slot("gain", [device.Id], gain.Text, [BuildInputs.At("gain", device.Id)],
                    () => Gains.Where(v => v != gain.Text).Select((v, i) => new Option(v, [g.Editor.Replace(gain, v)]) { Rank = i }));
        }
    }

    private static IEnumerable<Part> Others(SlotContext g, Device device) => device.Part switch
    {
        Amplifier =>
            g.Stock.All<Amplifier>("amplifier")
                .Where(a =>
                a.Id != device.Part.Id
                    && a.Channels >= g.Build.Channels.Where(c => c.Device.Id == device.Id).SelectMany(c => c.Outputs).Select(Highest)
                    .DefaultIfEmpty(0).Max()),
        LineConverter => g.Stock.All<LineConverter>("line-converter").Where(c => c.Id != device.Part.Id),
        _ => g.Stock.All<SourceUnit>("source-unit").Where(s => s.Id != device.Part.Id),
    };

    private static int Highest(string output) =>
        int.TryParse(output, System.Globalization.NumberStyles.None, System.Globalization.CultureInfo.InvariantCulture, out var number)
            ? number : 0;

    private static IEnumerable<Option> Feeders(SlotContext g, YamlMap map, Device device)
    {
        foreach (var other in g.Build.Devices.Where(
            d => d.Id != device.Id && d.Id != device.From
                && (d.Part is SourceUnit || (d.Part is LineConverter && device.Part is Amplifier))))
            yield return new Option(other.Id, [From(g, map, other.Id)]);
        if (Source(g) is (var radio, { } added))
            yield return new Option(radio, [added, From(g, map, radio)]);
    }

    // Between a source and an amplifier that takes no speaker level, or too little of it. Several amplifiers that get the same one share
    // it.
    private static IEnumerable<Option> Converters(SlotContext g, YamlMap map, Device device)
    {
        if (device.Part is not Amplifier || Source(g) is not (var source, var added)
            || g.Build.Devices.Any(d => d.Id == device.From && d.Part is LineConverter))
            return [];
        return g.Stock.All<LineConverter>("line-converter").Select(c => new Option($"{source} through {c.Id}",
            [.. added is null ? [] : new[] { added }, Once(g, $"{{id: lines-{c.Id}, part: {c.Id}, from: {source}}}"),
                From(g, map, $"lines-{c.Id}")])
        { Parts = [c] });
    }

    // The source that is there, else the vehicle's own radio, which then has to be told of.
    private static (string Id, TextEdit? Added)? Source(SlotContext g) =>
        g.Build.Devices.FirstOrDefault(d => d.Part is SourceUnit) is { } source ? (source.Id, null)
        : g.Vehicle.FactorySource is not null ? ("radio", Once(g, "{id: radio, part: factory}")) : null;

    private static TextEdit Once(SlotContext g, string device)
    {
        var edit = g.Editor.AddItem((YamlList)g.Root["devices"]!, device);
        return edit with { Text = "", Heading = edit.Text };
    }

    private static TextEdit From(SlotContext g, YamlMap map, string id) =>
        map["from"] is YamlScalar from ? g.Editor.Replace(from, id) : g.Editor.AddKey(map, "from", id);

    private static string Called(Part part) =>
        part switch { Amplifier => "amplifier", LineConverter => "line converter", _ => "source unit" };
}
