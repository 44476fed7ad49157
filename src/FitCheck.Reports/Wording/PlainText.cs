using FitCheck.Foundation;

namespace FitCheck.Reports.Wording;

/// <summary>Text from a catalog, made harmless for formats in which control characters steer the reader or are forbidden.</summary>
internal static class PlainText
{
    /// <summary>
    /// On one line: white space is a space, other control characters and broken surrogate pairs are U+FFFD, what nobody sees is its number.
    /// </summary>
    public static string Line(string text) => HiddenLetters.Shown(Cleaned(text.ReplaceLineEndings(" "), breaks: false));

    /// <summary>
    /// On as many lines as it has: tabs stay, line ends become line feeds, other control characters and broken surrogate pairs are U+FFFD,
    /// what nobody sees is its number.
    /// </summary>
    public static string Lines(string text) => HiddenLetters.Shown(Cleaned(text.ReplaceLineEndings("\n"), breaks: true));

    private static string Cleaned(string text, bool breaks)
    {
        for (var i = 0; i < text.Length; i++)
        {
            if (char.IsControl(text[i]) || char.IsSurrogate(text[i]) || text[i] >= '\uFFFE')
                return string.Create(text.Length, (text, breaks), static (span, from) =>
                {
                    for (var k = 0; k < span.Length; k++)
                        span[k] = Clean(from.text, k, from.breaks);
                });
        }
        return text;
    }

    private static char Clean(string text, int i, bool breaks) => text[i] switch
    {
        '\n' or '\t' when breaks => text[i],
        '\t' => ' ',
        var letter when char.IsControl(letter) || letter >= '\uFFFE' => '\uFFFD',
        var letter when char.IsHighSurrogate(letter) && !(i + 1 < text.Length && char.IsLowSurrogate(text[i + 1])) => '\uFFFD',
        var letter when char.IsLowSurrogate(letter) && !(i > 0 && char.IsHighSurrogate(text[i - 1])) => '\uFFFD',
        var letter => letter,
    };
}
