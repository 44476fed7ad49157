using FitCheck.Builds;
using FitCheck.Catalog;
using FitCheck.Yaml;

namespace FitCheck.Suggestions.Choices;

/// <summary>Drivers that no output feeds, put on outputs that are free.</summary>
internal static class OutputSlots
{
    public static IEnumerable<Slot> Of(SlotContext g)
    {
        if (g.Root["channels"] is not YamlList list)
            yield break;
        foreach (var pair in g.Pairs(Unfed(g)))
        {
            yield return new Slot("output", pair, null, BuildInputs.At("fed", pair),
                () => g.Build.Devices.Select(d => On(d)).OfType<Option>());

            Option? On(Device device)
            {
                var free = Outputs(device.Part).Where(o => !g.Build.Channels.Any(c => c.Device.Id == device.Id && c.Outputs.Contains(o)))
                    .ToList();
                var own = pair.Select(p => g.Vehicle.Find(p)?.FactoryChannel?.Value).OfType<string>().Distinct(StringComparer.Ordinal)
                    .ToList();
                var outputs = own.Count == pair.Count && own.TrueForAll(free.Contains) ? own
                    : free.Count >= pair.Count ? free[..pair.Count] : null;
                return outputs is null ? null : new Option(string.Join(" and ", outputs.Select(o => $"{device.Id}.{o}")),
                    [.. pair.Select(
                        (p, i) => g.Editor.AddItem(list, $"{{id: {Unused(g, p)}, output: {device.Id}.{outputs[i]}, feeds: [{p}]}}"))]);
            }
        }
    }

    /// <summary>Whether an output that was added is the one for a position.</summary>
    public static bool IsFor(string channel, string position) => channel == position || channel == "to-" + position;

    /// <summary>Positions with a driver that no output feeds.</summary>
    public static IEnumerable<string> Unfed(SlotContext g) =>
        g.Build.Placed.Where(p => p.Driver is not null && g.Build.Channels.All(c => !c.Feeds.Contains(p))).Select(p => p.Position.Id);

    /// <summary>The id of an output that is added for a position.</summary>
    public static string Unused(SlotContext g, string position) =>
        g.Build.Channels.Any(c => c.Id == position) ? "to-" + position : position;

    private static IEnumerable<string> Outputs(Part part) => part switch
    {
        SourceUnit source => source.Channels.Select(c => c.Value),
        Amplifier amplifier =>
            Enumerable.Range(1, amplifier.Channels).Select(n => n.ToString(System.Globalization.CultureInfo.InvariantCulture)),
        _ => [],
    };
}
