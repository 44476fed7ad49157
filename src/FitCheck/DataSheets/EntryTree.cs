using FitCheck.Foundation.Problems;
using FitCheck.Yaml;

namespace FitCheck.DataSheets;

/// <summary>Puts values by their keys together to an entry, in the order of the schema.</summary>
internal static class EntryTree
{
    /// <param name="kind">The entry's kind.</param>
    /// <param name="values">The values; of each key one.</param>
    /// <param name="end">Where what is missing would be added: each mapping stands a column further on.</param>
    public static YamlMap Of(string kind, IReadOnlyList<(KeyPath Path, YamlNode Value)> values, Location end)
    {
        var paths = KeyPath.Of(kind);
        var maps = 0;
        return Map("", 0);

        YamlMap Map(string above, int depth)
        {
            var at = end with { Column = end.Column + 2 + maps++ };
            var entries = new List<YamlEntry>();
            foreach (var key in paths.Where(p => p.Keys.Count == depth + 1
                && (depth == 0 || p.Path.StartsWith(above + ".", StringComparison.Ordinal))))
            {
                if (values.FirstOrDefault(c => c.Path.Path == key.Path).Value is { } value)
                    entries.Add(new YamlEntry(key.Keys[^1], value.At, value));
                else if (values.Any(c => c.Path.Path.StartsWith(key.Path + ".", StringComparison.Ordinal)))
                    entries.Add(new YamlEntry(key.Keys[^1], at, Map(key.Path, depth + 1)));
            }
            return new YamlMap(at, entries);
        }
    }
}
