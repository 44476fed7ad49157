using FitCheck.Catalog;
using FitCheck.Facts.Devices;
using FitCheck.Yaml;

namespace FitCheck.Suggestions.Choices;

/// <summary>Power and ground cables, fuses, the block that splits the main cable, and what is bought besides.</summary>
internal static class SupplySlots
{
    private static readonly (string Type, string Called)[] Besides =
    [
        ("signal-cable", "signal cable"), ("remote-wire", "remote wire"), ("fuse-holder", "fuse holder"),
        ("distribution", "distribution block"),
        ("grommet", "grommet"), ("heat-shrink", "heat-shrink"), ("resistor", "load resistor"),
    ];

    public static IEnumerable<Slot> Of(SlotContext g)
    {
        foreach (var map in FitLine.Maps(g.Root, "devices"))
        {
            if (map["id"] is not YamlScalar id || !g.Build.Devices.Any(d => d.Id == id.Text && d.Part is Amplifier))
                continue;
            foreach (var slot in Run(g, map, id.Text, "power_cable", "power cable"))
                yield return slot;
            yield return Key(g, map, "ground_cable", "ground cable", id.Text, [BuildInputs.At("ground", id.Text)], "power-cable");
        }
        if (g.Root["supply"] is YamlMap supply)
        {
            foreach (var slot in Run(g, supply, DeviceFacts.MainCable, "cable", "main cable"))
                yield return slot;
            yield return Key(g, supply, "distribution", "distribution block", DeviceFacts.MainCable,
                [BuildInputs.At("block", DeviceFacts.MainCable)], "distribution");
        }
        foreach (var (type, called) in Besides)
            yield return Extra(g, type, called);
    }

    private static IEnumerable<Slot> Run(SlotContext g, YamlMap map, string where, string key, string what)
    {
        yield return Key(g, map, key, what, where,
            [BuildInputs.At("cable", where), BuildInputs.At("fuse", where), BuildInputs.At("ground", where)], "power-kit", "power-cable");
        yield return Key(g, map, "fuse", "fuse", where, [BuildInputs.At("fuse", where)], "fuse");
    }

    private static Slot Key(SlotContext g, YamlMap map, string key, string what, string where, string[] atoms, params string[] types)
    {
        var now = map[key] as YamlScalar;
        return new Slot(what, [where], now?.Text, atoms,
            () => g.Stock.With<WiringPart>("wiring", types).Where(w => types.Contains(w.Type) && w.Id != now?.Text)
            .Select(w => new Option(w.Id, [now is null ? g.Editor.AddKey(map, key, w.Id) : g.Editor.Replace(now, w.Id)]) { Parts = [w] }));
    }

    private static Slot Extra(SlotContext g, string type, string called)
    {
        return new Slot(called, ["extras"], null, [BuildInputs.Extra(type)],
            () => g.Stock.With<WiringPart>("wiring", type).Where(w => w.Type == type).Cast<Part>()
            .Concat(g.Stock.With<Sundry>("sundry", type).Where(s => s.Type == type && (type != "resistor" || s.Resistance?.Si >= 10)))
            .Select(p => new Option(p.Id, [Added(p)]) { Parts = [p] }));

        TextEdit Added(Part part)
        {
            var item = $"{{part: {part.Id}, packs: 1}}";
            return g.Root["extras"] is YamlList list ? g.Editor.AddItem(list, item)
                : g.Editor.IsInBrackets(g.Root) ? g.Editor.AddListed(g.Root, "extras", item) : g.Editor.AddUnder("extras", item);
        }
    }
}
