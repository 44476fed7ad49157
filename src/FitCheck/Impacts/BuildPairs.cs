namespace FitCheck.Impacts;

/// <summary>
/// Which build of the later side is which of the earlier: the one of its name, but where that is gone, or something else stands there, the
/// one that is written most alike. So a build that is renamed, or moved and changed at once, is still compared with itself.
/// </summary>
internal static class BuildPairs
{
    // The share of words from which two texts are taken for one build under two names. Above it, a build that is renamed and mended here
    // and there is followed; what is less alike counts as lost, and that somebody has to accept.
    private const double Alike = 0.6;

    /// <summary>The ids of each build on both sides; null where it is not on one of them.</summary>
    /// <param name="from">Texts of the earlier side by id.</param>
    /// <param name="to">Those of the later side.</param>
    public static IReadOnlyList<(string? Was, string? Is)> Of(IReadOnlyDictionary<string, string> from,
        IReadOnlyDictionary<string, string> to)
    {
        var words = new Dictionary<string, Dictionary<string, int>>(StringComparer.Ordinal);
        var pairs = new List<(string? Was, string? Is)>();
        var (was, now) = (from.Keys.ToHashSet(StringComparer.Ordinal), to.Keys.ToHashSet(StringComparer.Ordinal));
        foreach (var id in from.Keys.Where(to.ContainsKey).Where(id => from[id] == to[id] || Share(from[id], to[id]) >= Alike))
            Take(id, id);
        foreach (var (_, old, current) in was.SelectMany(w => now.Select(n => (Share: Share(from[w], to[n]), Was: w, Is: n)))
            .Where(p => p.Share >= Alike).OrderByDescending(p => p.Share).ThenBy(p => p.Was, StringComparer.Ordinal)
            .ThenBy(p => p.Is, StringComparer.Ordinal).ToList())
            Take(old, current);
        foreach (var id in was.Where(now.Contains).ToList())
            Take(id, id);
        return [.. pairs, .. was.Select(w => ((string?)w, (string?)null)), .. now.Select(n => ((string?)null, (string?)n))];

        void Take(string old, string current)
        {
            if (!was.Contains(old) || !now.Contains(current))
                return;
            was.Remove(old);
            now.Remove(current);
            pairs.Add((old, current));
        }

        double Share(string one, string other)
        {
            var (a, b) = (Counted(one), Counted(other));
            var all = a.Values.Sum() + b.Values.Sum();
            return all == 0 ? 0 : 2.0 * a.Sum(w => Math.Min(w.Value, b.GetValueOrDefault(w.Key))) / all;
        }

        Dictionary<string, int> Counted(string text)
        {
            if (!words.TryGetValue(text, out var counted))
                words[text] = counted = Words(text).GroupBy(w => w, StringComparer.Ordinal)
                    .ToDictionary(g => g.Key, g => g.Count(), StringComparer.Ordinal);
            return counted;
        }
    }

    // However it is laid out; a remark says nothing of what is built.
    private static IEnumerable<string> Words(string text) => text.Split('\n')
        .Select(l => l.TrimStart().StartsWith('#') ? "" : l.Split(" #")[0])
        .SelectMany(l => l.Split([' ', '\t', '\r', ',', '[', ']', '{', '}', '"', '\''], StringSplitOptions.RemoveEmptyEntries))
        .Where(w => w != "-");
}
