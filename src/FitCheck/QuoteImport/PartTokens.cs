namespace FitCheck.QuoteImport;

/// <summary>
/// The words and figures of a name, so that spaces, case and order make no difference: `45mm` and `45 mm`, `T 25` and `T25`.
/// </summary>
internal static class PartTokens
{
    // Units of one letter; any other letter behind a figure belongs to it, as in `165S`.
    private const string UnitLetters = "mvawlgkh";

    /// <summary>Each once. A letter before a figure belongs to it (`C165`), a unit behind it does not (`8AWG`); single letters are left
    /// out.</summary>
    public static HashSet<string> Of(string text)
    {
        var found = QuoteWords.Plain(text).Split(' ', StringSplitOptions.RemoveEmptyEntries).SelectMany(Split).ToList();
        var tokens = new HashSet<string>(StringComparer.Ordinal);
        for (var i = 0; i < found.Count; i++)
        {
            // `T 25` is written for `T25`.
            if (IsLetter(found[i]) && i + 1 < found.Count && char.IsDigit(found[i + 1][0]))
                tokens.Add(found[i] + found[++i]);
            else if (!IsLetter(found[i]))
                tokens.Add(found[i]);
        }
        return tokens;
    }

    /// <summary>True where a figure is in it.</summary>
    public static bool HasFigure(string token) => token.Any(char.IsDigit);

    private static IEnumerable<string> Split(string word)
    {
        var start = 0;
        for (var i = 1; i < word.Length; i++)
        {
            if (!char.IsLetter(word[i]) || !char.IsDigit(word[i - 1]))
                continue;
            var isLast = i + 1 == word.Length;
            if (isLast && !UnitLetters.Contains(word[i], StringComparison.Ordinal))
                continue;
            yield return word[start..i];
            start = i;
        }
        yield return word[start..];
    }

    private static bool IsLetter(string token) => token.Length == 1 && char.IsLetter(token[0]);
}
