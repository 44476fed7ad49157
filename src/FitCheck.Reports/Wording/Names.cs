namespace FitCheck.Reports.Wording;

/// <summary>Several names said as one: `Front door, left and right`.</summary>
internal static class Names
{
    // Words that begin with a capital only because they begin a name.
    private static readonly HashSet<string> Sides = new(StringComparer.Ordinal) { "Left", "Right", "Front", "Rear", "Centre", "Upper",
        "Lower" };

    private static readonly char[] Marks = [',', ':', ';'];

    /// <summary>Names that differ in one word share the rest; others stand side by side.</summary>
    public static string Joined(IEnumerable<string> names)
    {
        var rest = names.Distinct(StringComparer.Ordinal).ToList();
        var said = new List<string>();
        while (rest.Count > 0)
        {
            var first = rest[0].Split(' ');
            var place = rest.Skip(1).Select(n => Difference(first, n.Split(' '))).FirstOrDefault(p => p >= 0, -1);
            var alike = place < 0 ? [rest[0]] : rest.Where(n => n == rest[0] || Difference(first, n.Split(' ')) == place).ToList();
            rest.RemoveAll(alike.Contains);
            said.Add(alike.Count == 1 ? alike[0] : Merged([.. alike.Select(n => n.Split(' '))], place));
        }
        return string.Join("; ", said);
    }

    /// <summary>Up to the comma, behind which a part's name tells its size or its pack.</summary>
    public static string Short(string name) => name.IndexOf(',', StringComparison.Ordinal) is > 0 and var comma ? name[..comma] : name;

    /// <summary>`a`, `a and b`, `a, b and c`.</summary>
    public static string Listed(IReadOnlyList<string> words) =>
        words.Count < 2 ? string.Concat(words) : $"{string.Join(", ", words.Take(words.Count - 1))} and {words[^1]}";

    /// <summary>The index of the only word in which they differ; -1 when there is no such.</summary>
    internal static int Difference(string[] one, string[] other)
    {
        if (one.Length != other.Length)
            return -1;
        var place = -1;
        for (var i = 0; i < one.Length; i++)
        {
            if (one[i] == other[i])
                continue;
            if (place >= 0)
                return -1;
            place = i;
        }
        return place;
    }

    private static string Merged(List<string[]> names, int place)
    {
        var different = names.Select((n, i) => Inner(n[place], first: i == 0, last: i == names.Count - 1)).ToList();
        var words = (string[])names[0].Clone();
        words[place] = Listed(different);
        return string.Join(' ', words);
    }

    private static string Inner(string word, bool first, bool last)
    {
        var bare = last ? word : word.TrimEnd(Marks);
        return !first && Sides.Contains(bare.TrimEnd(Marks)) ? char.ToLowerInvariant(bare[0]) + bare[1..] : bare;
    }
}
