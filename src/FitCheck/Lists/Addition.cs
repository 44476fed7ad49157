using FitCheck.Facts.Devices;
using FitCheck.Foundation.Problems;
using FitCheck.Yaml;

namespace FitCheck.Lists;

/// <summary>Writes a further part into the document of a build, in memory, where the build would name it.</summary>
internal static class Addition
{
    /// <summary>The document with the part in it.</summary>
    /// <param name="root">The build.</param>
    /// <param name="part">The part's id.</param>
    /// <param name="packs">How many packs of it, where it goes into the extras.</param>
    /// <param name="goes">The key that names it, a word of <see cref="Rules.Model.AskedPart.Places"/>.</param>
    /// <param name="place">The position or the device.</param>
    public static YamlMap To(YamlMap root, string part, int packs, string goes, string place) => goes switch
    {
        "extras" =>
            Longer(root, "extras",
                Map(root.At, ("part", Text(root.At, part)),
                    ("packs", Text(root.At, packs.ToString(System.Globalization.CultureInfo.InvariantCulture))))),
        "with" => Longer(root, "fit", Map(root.At, ("at", List(root.At, place)), ("with", List(root.At, part)))),
        "harness" => Longer(root, "fit", Map(root.At, ("at", List(root.At, place)), ("harness", Text(root.At, part)))),
        _ when place == DeviceFacts.MainCable =>
            With(root, "supply", With(root["supply"] as YamlMap ?? Map(root.At), goes, Text(root.At, part))),
        _ => With(root, "devices",
            Each(root["devices"],
                device => (device["id"] as YamlScalar)?.Text == place ? With(device, goes, Text(device.At, part)) : device)),
    };

    private static YamlMap Longer(YamlMap map, string key, YamlNode item) =>
        With(map, key, new YamlList(map.At, [.. (map[key] as YamlList)?.Items ?? [], item]));

    private static YamlMap With(YamlMap map, string key, YamlNode value) => map[key] is null
        ? map with { Entries = [.. map.Entries, new YamlEntry(key, map.At, value)] }
        : map with { Entries = [.. map.Entries.Select(e => e.Key == key ? e with { Value = value } : e)] };

    private static YamlList Each(YamlNode? list, Func<YamlMap, YamlMap> change) =>
        list is YamlList { } known ? known with { Items = [.. known.Items.Select(i => i is YamlMap map ? change(map) : i)] }
            : new YamlList(list?.At ?? new Location("", 0, 0), []);

    private static YamlMap Map(Location at, params IEnumerable<(string Key, YamlNode Value)> entries) =>
        new(at, [.. entries.Select(e => new YamlEntry(e.Key, at, e.Value))]);

    private static YamlList List(Location at, string word) => new(at, [Text(at, word)]);

    private static YamlScalar Text(Location at, string text) => new(at, text, Quoted: false);
}
