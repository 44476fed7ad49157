using FitCheck.Foundation.Problems;
using FitCheck.Yaml;

namespace FitCheck.Fixes;

/// <summary>
/// Brings the top-level keys into the order of a starting file, by moving whole lines with the comments that stand directly above them. A
/// key that no starting file has stays behind the one before it. Where empty lines or document marks divide the file, its order is
/// someone's intention and stays.
/// </summary>
internal static class KeyOrder
{
    private static readonly Dictionary<Location, string> Nothing = [];

    public static IReadOnlyDictionary<Location, string> Mended(TextLines lines, YamlNode tree, IReadOnlyList<string> order,
        List<Mended> done)
    {
        if (tree is not YamlMap { Entries: [var first, ..] } map || order.Count == 0 || !IsPlainBlock(lines, map))
            return Nothing;
        var groups = Groups(lines, map, order);
        var sorted = groups.OrderBy(g => g.Rank).ToList();
        if (sorted.SequenceEqual(groups))
            return Nothing;
        // What stands above the first key is about the file or about that key; nobody can tell.
        if (sorted[0] != groups[0] && HasRemark(lines, first.KeyAt.Line))
            return Nothing;
        var moved = Moved(groups, sorted);
        var text = sorted.SelectMany(g => Enumerable.Range(g.From, g.To - g.From + 1).Select(i => lines[i])).ToList();
        for (var i = 0; i < text.Count; i++)
            lines[groups[0].From + i] = text[i];
        done.AddRange(moved.Select(g => new Mended(g.KeyAt, $"`{g.Key}` moved to its place among the keys")));
        return Nothing;
    }

    // Every key begins a line of its own at the first column, and only keys, their values and comments follow the first.
    private static bool IsPlainBlock(TextLines lines, YamlMap map)
    {
        if (map.Entries.Any(e => e.KeyAt.Column != 1)
            || map.Entries.Zip(map.Entries.Skip(1)).Any(p => p.First.KeyAt.Line >= p.Second.KeyAt.Line))
            return false;
        for (var i = map.Entries[0].KeyAt.Line; i <= lines.Count; i++)
        {
            if (string.IsNullOrWhiteSpace(lines[i]) || !lines[i].EndsWith('\n') || lines[i].StartsWith("---", StringComparison.Ordinal)
                || lines[i].StartsWith("...", StringComparison.Ordinal))
                return false;
        }
        return true;
    }

    private static List<Group> Groups(TextLines lines, YamlMap map, IReadOnlyList<string> order)
    {
        var groups = new List<Group>();
        for (var i = 0; i < map.Entries.Count; i++)
        {
            var entry = map.Entries[i];
            var from = i == 0 ? entry.KeyAt.Line : WithRemarks(lines, entry.KeyAt.Line);
            var to = i + 1 < map.Entries.Count ? WithRemarks(lines, map.Entries[i + 1].KeyAt.Line) - 1 : lines.Count;
            var rank = Rank(order, entry.Key);
            if (rank < 0 && groups.Count > 0)
                groups[^1] = groups[^1] with { To = to };
            else
                groups.Add(new Group(rank, entry.Key, entry.KeyAt, from, to));
        }
        return groups;
    }

    // The fewest groups are told as moved: those outside the longest run that is in order already.
    private static IEnumerable<Group> Moved(List<Group> groups, List<Group> sorted)
    {
        var longest = new int[groups.Count];
        for (var i = groups.Count - 1; i >= 0; i--)
            longest[i] =
                1 + Enumerable.Range(i + 1, groups.Count - i - 1).Where(j => groups[j].Rank >= groups[i].Rank).Select(j => longest[j])
                    .DefaultIfEmpty(0).Max();
        var (wanted, floor) = (longest.Max(), int.MinValue);
        var staying = new HashSet<Group>();
        for (var i = 0; i < groups.Count; i++)
        {
            if (longest[i] != wanted || groups[i].Rank < floor)
                continue;
            staying.Add(groups[i]);
            (wanted, floor) = (wanted - 1, groups[i].Rank);
        }
        return sorted.Where(g => !staying.Contains(g));
    }

    private static int WithRemarks(TextLines lines, int line)
    {
        while (line > 1 && lines[line - 1].StartsWith('#'))
            line--;
        return line;
    }

    private static bool HasRemark(TextLines lines, int firstKey) =>
        Enumerable.Range(1, firstKey - 1)
            .Any(i => lines[i].TrimStart().StartsWith('#') && !lines[i].StartsWith("# yaml-language-server:", StringComparison.Ordinal));

    private static int Rank(IReadOnlyList<string> order, string key)
    {
        for (var i = 0; i < order.Count; i++)
        {
            if (order[i] == key)
                return i;
        }
        return -1;
    }

    private sealed record Group(int Rank, string Key, Location KeyAt, int From, int To);
}
