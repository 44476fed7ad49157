using FitCheck.Catalog;

namespace FitCheck.QuoteImport;

/// <summary>
/// Makes devices and channels of the source units, converters and amplifiers of a list, as they are mostly wired: radio, converter,
/// amplifiers; an amplifier with one channel for the subwoofer, the others from the front on; what is left over on the radio. All else that
/// is bought goes into the extras.
/// </summary>
internal sealed class Chain(Layout layout, PartsCatalog catalog)
{
    private readonly List<(string Id, Amplifier Part, int Used)> _amplifiers = [];

    public void Place()
    {
        layout.Extras.AddRange(layout.Items.Where(i => i.Part is WiringPart));
        foreach (var item in layout.Items.Where(i => i.Part is WiringPart { Type: "speaker-cable" }))
            layout.Tell(item,
                "is bought, but where it is pulled a list does not say; write `new_wire: {cable: " + item.Part.Id
                    + ", length: …}` at the positions");
        foreach (var item in layout.Items.Where(i => i.Part is Crossover))
            layout.Tell(item,
                "is not put anywhere, because a list does not say which output it belongs to; name it as `crossover:` in `channels`");
        if (!layout.Items.Any(i => i.Part is SourceUnit or LineConverter or Amplifier))
            return;
        var source = layout.Items.FirstOrDefault(i => i.Part is SourceUnit)?.Part as SourceUnit;
        if (source is null && layout.Vehicle.FactorySource is null)
        {
            foreach (var item in layout.Items.Where(i => i.Part is LineConverter or Amplifier))
                layout.Tell(item,
                    $"has nothing to feed it: the list has no source unit, and {layout.Vehicle.Name} records none; it stays on the "
                        + $"quote only");
            return;
        }
        layout.Devices.Add(("radio", source, null));
        foreach (var item in layout.Items.Where(i => i.Part is SourceUnit && i.Part != source))
            layout.Tell(item, "is a second source unit; it stays on the quote only");
        var converters = Pieces<LineConverter>("lines", "radio");
        var amplifiers = Pieces<Amplifier>("amp", converters.Count > 0 ? converters[0].Id : "radio");
        _amplifiers.AddRange(amplifiers.Select(a => (a.Id, a.Part, 0)));
        if (_amplifiers.Count > 0)
            Feed(source ?? (SourceUnit?)catalog.Find(layout.Vehicle.FactorySource!.Value));
    }

    private List<(string Id, T Part)> Pieces<T>(string name, string from) where T : Part
    {
        var devices = new List<(string, T)>();
        var pieces = layout.Items.Where(i => i.Part is T).SelectMany(i => Enumerable.Repeat((T)i.Part, Math.Min(i.Pieces, 8))).ToList();
        foreach (var part in pieces)
        {
            var id = pieces.Count == 1 ? name : $"{name}-{(devices.Count + 1).ToString(System.Globalization.CultureInfo.InvariantCulture)}";
            devices.Add((id, part));
            layout.Devices.Add((id, part, from));
        }
        return devices;
    }

    private void Feed(SourceUnit? source)
    {
        var outputs = layout.Places.Where(p => p.IsTaken)
            .GroupBy(p => p.Position.FactoryChannel?.Value ?? p.Position.Id, StringComparer.Ordinal)
            .Select(g =>
            (Id: g.Key, Feeds: (IReadOnlyList<string>)[.. g.Select(p => p.Position.Id)], IsSub: g.All(p => p.Position.Role == "subwoofer")))
                .ToList();
        foreach (var (id, feeds, _) in outputs.OrderBy(o => o.IsSub ? 0 : 1))
        {
            var isSub = outputs.Find(o => o.Id == id).IsSub;
            if (Free(isSub) is { } output)
                layout.Channels.Add((id, output, feeds));
            else if (source?.Channels.Any(c => c.Value == id) == true)
                layout.Channels.Add((id, $"radio.{id}", feeds));
            else
                layout.Told.Warn(new Foundation.Problems.Location(layout.File, 0, 0),
                    $"nothing on the list feeds {string.Join(" and ", feeds)}; add an output in `channels`");
        }
        layout.Channels.Sort((a, b) => outputs.FindIndex(o => o.Id == a.Id).CompareTo(outputs.FindIndex(o => o.Id == b.Id)));
        foreach (var (id, part, used) in _amplifiers.Where(a => a.Used == 0))
            layout.Tell(layout.Items.First(i => i.Part == part), $"feeds nothing yet as `{id}`; say in `channels` what it is for");
    }

    // One output of an amplifier that is still free.
    private string? Free(bool isSub)
    {
        var at = _amplifiers.FindIndex(a => a.Used < a.Part.Channels && a.Part.Channels == 1 == isSub);
        if (at < 0)
            return null;
        var (id, part, used) = _amplifiers[at];
        _amplifiers[at] = (id, part, used + 1);
        return $"{id}.{(used + 1).ToString(System.Globalization.CultureInfo.InvariantCulture)}";
    }
}
