namespace FitCheck.Foundation.Problems;

/// <summary>Finds the spelling that was probably meant.</summary>
internal static class Nearest
{
    // Nobody misspells a longer word, but somebody may write one of a million letters.
    private const int Longest = 100;

    /// <summary>
    /// The candidate with the fewest edits (insert, delete, replace, swap of neighbours), when near enough to be meant; ties go to the
    /// first in ordinal order. None for a word of more than a hundred letters.
    /// </summary>
    public static string? To(string word, IEnumerable<string> candidates)
    {
        if (word.Length > Longest)
            return null;
        string? best = null;
        var near = 1 + Math.Max(1, word.Length / 3);
        var fewest = near;
        Span<int> rows = stackalloc int[3 * (Longest + (Longest / 3) + 2)];
        foreach (var candidate in candidates)
        {
            // One with as many edits as the best so far may still come before it.
            if (Math.Abs(candidate.Length - word.Length) >= Math.Min(near, fewest + 1))
                continue;
            var edits = Edits(word, candidate, Math.Min(near, fewest + 1), rows);
            if (edits < fewest || (edits == fewest && edits < near && string.CompareOrdinal(candidate, best) < 0))
                (best, fewest) = (candidate, edits);
        }
        return best;
    }

    /// <summary>" Did you mean `x`?" or nothing.</summary>
    public static string Hint(string word, IEnumerable<string> candidates) =>
        To(word, candidates) is { } near ? $"; did you mean `{near}`?" : "";

    // The last three rows of the table are all that is asked for. Ends early, with that number, when there are too many.
    private static int Edits(string a, string b, int tooMany, Span<int> rows)
    {
        var width = b.Length + 1;
        for (var j = 0; j <= b.Length; j++)
            rows[j] = j;
        for (var i = 1; i <= a.Length; i++)
        {
            var row = rows.Slice(i % 3 * width, width);
            var above = rows.Slice((i + 2) % 3 * width, width);
            var twoAbove = rows.Slice((i + 1) % 3 * width, width);
            row[0] = i;
            var least = i;
            for (var j = 1; j <= b.Length; j++)
            {
                var cost = char.ToLowerInvariant(a[i - 1]) == char.ToLowerInvariant(b[j - 1]) ? 0 : 1;
                row[j] = Math.Min(Math.Min(above[j] + 1, row[j - 1] + 1), above[j - 1] + cost);
                if (i > 1 && j > 1 && a[i - 1] == b[j - 2] && a[i - 2] == b[j - 1])
                    row[j] = Math.Min(row[j], twoAbove[j - 2] + 1);
                least = Math.Min(least, row[j]);
            }
            // A swap reaches back over one row, and saves no more than one.
            if (least > tooMany)
                return tooMany;
        }
        return rows.Slice(a.Length % 3 * width, width)[b.Length];
    }
}
