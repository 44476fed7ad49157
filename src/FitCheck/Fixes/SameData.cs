using FitCheck.Foundation.Problems;
using FitCheck.Yaml;

namespace FitCheck.Fixes;

/// <summary>
/// Whether two documents say the same: keys in any order, every value with the same text and quotes, but for those that were meant to
/// change.
/// </summary>
internal static class SameData
{
    /// <param name="before">The root before an edit.</param>
    /// <param name="after">The root after it.</param>
    /// <param name="meant">The new text of the values that were meant to change, by their place before.</param>
    public static bool Holds(YamlNode before, YamlNode after, IReadOnlyDictionary<Location, string> meant) => (before, after) switch
    {
        (YamlScalar a, YamlScalar b) => a.Quoted == b.Quoted && b.Text == meant.GetValueOrDefault(a.At, a.Text),
        (YamlList a, YamlList b) => a.Items.Count == b.Items.Count && a.Items.Zip(b.Items).All(p => Holds(p.First, p.Second, meant)),
        (YamlMap a, YamlMap b) =>
            a.Entries.Count == b.Entries.Count && a.Entries.All(e => b[e.Key] is { } value && Holds(e.Value, value, meant)),
        _ => false,
    };
}
