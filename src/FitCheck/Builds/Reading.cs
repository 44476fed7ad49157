using FitCheck.Foundation.Problems;
using FitCheck.Schemas;
using FitCheck.Yaml;

namespace FitCheck.Builds;

/// <summary>What was measured or looked up on this very vehicle or part; it takes the place of what the catalog has.</summary>
/// <param name="At">Of what: a position, a device or a part, or the vehicle.</param>
/// <param name="Of">Which datum, as a path of keys from there.</param>
/// <param name="Value">What was read, with its tolerance.</param>
internal sealed record Reading(Located<string> At, Located<string> Of, YamlScalar Value)
{
    /// <summary>An entry's data with what was read in its place.</summary>
    /// <param name="map">The data.</param>
    /// <param name="readings">Each with its path; see <see cref="PathOf"/>.</param>
    public static YamlMap Put(YamlMap map, IEnumerable<(IReadOnlyList<string> Path, YamlScalar Value)> readings) =>
        readings.Aggregate(map, (data, reading) => Put(data, [.. reading.Path], reading.Value));

    /// <summary>
    /// The steps of a path that one of these keys has, names of items among them; null when none has it. What stands behind a panel may be
    /// named without its `mounting`.
    /// </summary>
    public static IReadOnlyList<string>? PathOf(string of, IEnumerable<string> keys)
    {
        foreach (var key in keys)
        {
            var parts = key.Split($".{SchemaKeys.Name}.", 2);
            if (parts.Length == 1 && of == key)
                return of.Split('.');
            if (parts.Length == 2 && of.StartsWith(parts[0] + ".", StringComparison.Ordinal)
                && of.EndsWith("." + parts[1], StringComparison.Ordinal) && of.Length > parts[0].Length + parts[1].Length + 2)
                return [.. parts[0].Split('.'), of[(parts[0].Length + 1)..^(parts[1].Length + 1)], .. parts[1].Split('.')];
        }
        return null;
    }

    private static YamlMap Put(YamlMap map, ReadOnlySpan<string> path, YamlScalar value)
    {
        var key = path[0];
        var rest = path[1..];
        // `none` is what a list of nothing is called.
        if (rest.IsEmpty)
            return With(map, key, value.Text == "none" && (map[key] is YamlList || key == "obstructions") ? new YamlList(value.At, [])
                : value);
        if (map[key] is YamlList list)
            return With(map, key, InList(list, rest, value));
        return With(map, key, Put(map[key] as YamlMap ?? new YamlMap(value.At, []), rest, value));
    }

    private static YamlList InList(YamlList list, ReadOnlySpan<string> path, YamlScalar value)
    {
        var items = new List<YamlNode>();
        foreach (var item in list.Items)
            items.Add(item is YamlMap map && (map["name"] as YamlScalar)?.Text == path[0] ? Put(map, path[1..], value) : item);
        return list with { Items = items };
    }

    private static YamlMap With(YamlMap map, string key, YamlNode value) => map with
    {
        Entries = map[key] is null ? [.. map.Entries, new YamlEntry(key, value.At, value)]
            : [.. map.Entries.Select(e => e.Key == key ? e with { Value = value } : e)],
    };
}
