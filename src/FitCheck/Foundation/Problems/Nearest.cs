namespace FitCheck.Foundation.Problems;

/// <summary>Finds the spelling that was probably meant.</summary>
internal static class Nearest
{
    /// <summary>
    /// The candidate with the fewest edits (insert, delete, replace, swap of neighbours), when near enough to be meant; ties go to the
    /// first in ordinal order.
    /// </summary>
    public static string? To(string word, IEnumerable<string> candidates)
    {
        string? best = null;
        var fewest = 1 + Math.Max(1, word.Length / 3);
        foreach (var candidate in candidates.Order(StringComparer.Ordinal))
        {
            if (Math.Abs(candidate.Length - word.Length) >= fewest)
                continue;
            var edits = Edits(word, candidate);
            if (edits < fewest)
                (best, fewest) = (candidate, edits);
        }
        return best;
    }

    /// <summary>" Did you mean `x`?" or nothing.</summary>
    public static string Hint(string word, IEnumerable<string> candidates) =>
        To(word, candidates) is { } near ? $"; did you mean `{near}`?" : "";

    private static int Edits(string a, string b)
    {
        var rows = new int[a.Length + 1, b.Length + 1];
        for (var i = 0; i <= a.Length; i++)
            rows[i, 0] = i;
        for (var j = 0; j <= b.Length; j++)
            rows[0, j] = j;
        for (var i = 1; i <= a.Length; i++)
        {
            for (var j = 1; j <= b.Length; j++)
            {
                var cost = char.ToLowerInvariant(a[i - 1]) == char.ToLowerInvariant(b[j - 1]) ? 0 : 1;
                rows[i, j] = Math.Min(Math.Min(rows[i - 1, j] + 1, rows[i, j - 1] + 1), rows[i - 1, j - 1] + cost);
                if (i > 1 && j > 1 && a[i - 1] == b[j - 2] && a[i - 2] == b[j - 1])
                    rows[i, j] = Math.Min(rows[i, j], rows[i - 2, j - 2] + 1);
            }
        }
        return rows[a.Length, b.Length];
    }
}
