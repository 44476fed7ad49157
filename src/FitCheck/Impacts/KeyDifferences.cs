using System.Globalization;
using FitCheck.Foundation.Problems;
using FitCheck.Yaml;

namespace FitCheck.Impacts;

/// <summary>Compares two YAML documents value by value: comments, order of keys and ways of writing do not count.</summary>
internal static class KeyDifferences
{
    /// <summary>In the order of the later document, then what is gone.</summary>
    public static IReadOnlyList<KeyChange> Of(YamlNode before, YamlNode after, Func<Location, Location> wasAt,
        Func<Location, Location> isAt)
    {
        var (old, now) = (Flat(before), Flat(after));
        var changes = new List<KeyChange>();
        foreach (var (path, (text, at)) in now)
        {
            var was = old.TryGetValue(path, out var known) ? known.Text : null;
            if (was != text)
                changes.Add(new KeyChange(path, was, text, isAt(at)));
        }
        changes.AddRange(old.Where(o => !now.ContainsKey(o.Key)).Select(o => new KeyChange(o.Key, o.Value.Text, null, wasAt(o.Value.At))));
        return changes;
    }

    private static Dictionary<string, (string Text, Location At)> Flat(YamlNode root)
    {
        var flat = new Dictionary<string, (string, Location)>(StringComparer.Ordinal);
        Add(root, "");
        return flat;

        void Add(YamlNode node, string path)
        {
            switch (node)
            {
                case YamlMap map:
                    foreach (var entry in map.Entries)
                        Add(entry.Value, path.Length == 0 ? entry.Key : $"{path}.{entry.Key}");
                    break;
                // Figures and words in a row are one value; things with names are found by them, wherever they stand.
                case YamlList list when list.Items.All(i => i is YamlScalar):
                    flat[path] = ($"[{string.Join(", ", list.Items.Cast<YamlScalar>().Select(s => s.Text))}]", list.At);
                    break;
                case YamlList list:
                    for (var i = 0; i < list.Items.Count; i++)
                        Add(list.Items[i], $"{path}[{Name(list, i)}]");
                    break;
                case YamlScalar scalar:
                    flat[path] = (scalar.Text, scalar.At);
                    break;
                default:
                    break;
            }
        }
    }

    private static string Name(YamlList list, int index)
    {
        if (NameOf(list.Items[index]) is { } name && list.Items.Count(i => NameOf(i) == name) == 1)
            return name;
        return (index + 1).ToString(CultureInfo.InvariantCulture);
    }

    private static string? NameOf(YamlNode item) => item is YamlMap map && (map["id"] ?? map["name"]) is YamlScalar name ? name.Text : null;
}
