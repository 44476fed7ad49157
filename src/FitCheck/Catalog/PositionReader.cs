using FitCheck.Foundation.Problems;
using FitCheck.Physics.Quantities;
using FitCheck.Yaml;

namespace FitCheck.Catalog;

/// <summary>
/// Reads a vehicle's positions; `mirror_of` takes over all data of the position on the other side as in a mirror, which single keys may
/// override. What a mirrored position writes itself is taken as it stands: as seen on its own side.
/// </summary>
internal static class PositionReader
{
    /// <param name="vehicle">The vehicle.</param>
    /// <param name="asRead">From a position's id and its data, those of its mirror image among them, to what a build has read
    /// there.</param>
    public static IReadOnlyList<Position> Read(Fields vehicle, Func<string, YamlMap, YamlMap>? asRead)
    {
        var all = vehicle.Each("positions");
        var byId = new Dictionary<string, Fields>(StringComparer.Ordinal);
        foreach (var f in all)
        {
            if (f.Text("id") is { } id && !byId.TryAdd(id.Value, f))
                vehicle.Problems.Error(id.At, $"the position `{id.Value}` appears twice; the first is in line {byId[id.Value].At.Line}");
        }
        return [.. all.Where(f => f.Text("id") is not null).Select(f => ReadOne(f, byId, asRead ?? ((_, map) => map)))];
    }

    private static Position ReadOne(Fields own, Dictionary<string, Fields> byId, Func<string, YamlMap, YamlMap> asRead)
    {
        if (own.Text("mirror_of") is not { } other)
            return new Position(Read(own.Map), mirrored: false);
        if (!byId.TryGetValue(other.Value, out var original))
        {
            own.Problems.Error(other.At, $"no position `{other.Value}` in this vehicle{Nearest.Hint(other.Value, byId.Keys)}",
                ProblemKind.UnknownName);
            return new Position(own, mirrored: false);
        }
        if (other.Value == own.Text("id")?.Value)
        {
            own.Problems.Error(other.At, "a position can't be the mirror image of itself; name the one on the other side");
            return new Position(own, mirrored: false);
        }
        if (original.Text("mirror_of") is not null)
        {
            own.Problems.Error(other.At, $"`{other.Value}` is itself a mirror image; name the position that has the data");
            return new Position(own, mirrored: false);
        }
        var merged = Merge(Mirrored(original.Map), own.Map);
        if (own.Map["side"] is null && original.Text("side") is { } side)
            merged = With(merged, "side",
                new YamlScalar(side.At, side.Value switch { "left" => "right", "right" => "left", _ => side.Value }, Quoted: false));
        return new Position(Read(merged), mirrored: true);

        Fields Read(YamlMap map) => new(asRead(own.Word("id"), map), own.Provenance, own.Problems);
    }

    /// <summary>What lies on the left there lies on the right here: y of the location, hours and hole angles change over.</summary>
    private static YamlMap Mirrored(YamlMap original)
    {
        if (original["location"] is YamlList { Items: [var x, YamlScalar y, var z] } location)
            original = With(original, "location", location with { Items = [x, y with { Text = Opposite(y.Text) }, z] });
        return original["mounting"] is YamlMap mounting ? With(original, "mounting", MirroredMounting(mounting)) : original;
    }

    private static YamlMap MirroredMounting(YamlMap mounting)
    {
        if (mounting["aim_clock"] is YamlScalar aim)
            mounting = With(mounting, "aim_clock", LessThan(12, aim));
        if (mounting["holes"] is YamlMap holes && holes["angles"] is YamlList angles)
            mounting = With(mounting, "holes",
                With(holes, "angles", angles with { Items = [.. angles.Items.Select(a => a is YamlScalar s ? LessThan(360, s) : a)] }));
        if (mounting["obstructions"] is YamlList obstructions)
            mounting = With(mounting, "obstructions",
                obstructions with { Items = [.. obstructions.Items.Select(o => o is YamlMap map ? MirroredObstruction(map) : o)] });
        return mounting;
    }

    // From 8 to 2 o'clock there is from 10 to 4 here: each hour to the other side, and the first becomes the last.
    private static YamlMap MirroredObstruction(YamlMap map)
    {
        var (from, to) = (map["from_clock"] as YamlScalar, map["to_clock"] as YamlScalar);
        if (to is not null)
            map = With(map, "from_clock", LessThan(12, to));
        return from is null ? map : With(map, "to_clock", LessThan(12, from));
    }

    private static YamlScalar LessThan(double whole, YamlScalar number) =>
        QuantityText.ParseNumber(number.Text) is { } value ? number with { Text = QuantityText.Number(whole - value, 4) } : number;

    private static string Opposite(string length) => length.StartsWith('-') ? length[1..] : "-" + length;

    /// <summary>The original's entries, replaced by the own ones; mappings are merged key by key.</summary>
    private static YamlMap Merge(YamlMap original, YamlMap own)
    {
        var entries = new List<YamlEntry>();
        foreach (var entry in original.Entries)
        {
            var replaced = own.Entries.FirstOrDefault(e => e.Key == entry.Key);
            entries.Add(replaced is null ? entry
                : entry.Value is YamlMap a && replaced.Value is YamlMap b ? replaced with { Value = Merge(a, b) }
                : replaced);
        }
        entries.AddRange(own.Entries.Where(e => original[e.Key] is null));
        return new YamlMap(own.At, entries);
    }

    private static YamlMap With(YamlMap map, string key, YamlNode value) => map with
    {
        Entries = [.. map.Entries.Where(e => e.Key != key), new YamlEntry(key, value.At, value)],
    };
}
