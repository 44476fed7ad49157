using System.Text.RegularExpressions;

namespace FitCheck.Tests.House;

/// <summary>
/// What a machine can tell of a sentence that people read. Grammar is that of any British handbook; lengths and digits are common practice,
/// no source; which term is used for which thing stands in the table of DEVELOPERS.md.
/// </summary>
internal static partial class PlainWords
{
    // What a reader keeps in mind to the full stop.
    private const int MostWords = 32;

    // More digits than a gauge shows or a mechanic sets.
    private const int MostDigits = 4;

    // Spoken with a consonant first although written with a vowel, and the other way round; letters are spoken by their names.
    private static readonly string[] SpokenWithConsonant = ["one", "once", "use", "usual", "unit", "universal", "used", "useful", "u"];
    private static readonly string[] SpokenWithVowel =
        ["hour", "honest", "L-pad", "LED", "RMS", "MDF", "HTML", "SPL", "FM", "8", "11", "18", "80"];

    private static readonly (string[] Say, (string Term, Regex Found)[] Never)[] Terms =
        [.. Table().Select(row => (row.Say, row.Never.Select(n => (n, Word(n))).ToArray()))];

    // Longest first: `harness adapter` is taken away before `adapter` is looked for.
    private static readonly Regex[] Said = [.. Terms.SelectMany(t => t.Say).OrderByDescending(s => s.Length).Select(Word)];

    /// <summary>Every fault of a text of whole sentences.</summary>
    public static IEnumerable<string> OfSentences(string text)
    {
        foreach (var fault in Of(text))
            yield return fault;
        if (!Ends().IsMatch(text))
            yield return "does not end with a full stop";
        foreach (var sentence in Between().Split(text))
        {
            if (sentence.Length > 0 && char.IsLower(sentence[0]))
                yield return $"a sentence begins small: `{sentence.Split(' ')[0]}`";
            var words = sentence.Split(' ', StringSplitOptions.RemoveEmptyEntries).Length;
            if (words > MostWords)
                yield return $"a sentence of {words} words";
        }
    }

    /// <summary>Every fault of a title or another text that is no sentence.</summary>
    public static IEnumerable<string> Of(string text)
    {
        foreach (Match fault in Faults().Matches(text))
            yield return $"`{fault.Value}`";
        foreach (Match article in Articles().Matches(text))
        {
            var (word, next) = (article.Groups["article"].Value, article.Groups["next"].Value);
            var vowel = ("aeiouAEIOU".Contains(next[0], StringComparison.Ordinal) && !Among(SpokenWithConsonant, next))
                || Among(SpokenWithVowel, next);
            if (vowel != (word.Length == 2))
                yield return $"`{article.Value}`";
        }
    }

    /// <summary>Terms that the glossary has another word for.</summary>
    public static IEnumerable<string> OtherTerms(string text)
    {
        var plain = Said.Aggregate(Keys().Replace(text, " ").Replace('-', ' '), (rest, said) => said.Replace(rest, "·"));
        foreach (var (say, never) in Terms)
        {
            foreach (var (word, found) in never)
            {
                if (found.IsMatch(plain))
                    yield return $"`{word}`: say {string.Join(" or ", say)}";
            }
        }
    }

    /// <summary>Quantities of a rendered text with more digits than anybody reads.</summary>
    public static IEnumerable<string> TooExact(string text) => Quantities().Matches(text)
        .Where(q =>
        q.Groups["number"].Value.Replace(",", "", StringComparison.Ordinal).TrimStart('0', '.').Count(char.IsDigit) > MostDigits)
        .Select(q => $"`{q.Value}`");

    private static bool Among(string[] words, string next) =>
        words.Any(w => next.Equals(w, StringComparison.OrdinalIgnoreCase) && (w.Length > 1 || next == w || !char.IsLetter(w[0])));

    private static Regex Word(string term) =>
        new($@"(?<!\w){Regex.Escape(term.Replace('-', ' '))}(?:s|es)?(?!\w)", RegexOptions.IgnoreCase);

    private static IEnumerable<(string[] Say, string[] Never)> Table()
    {
        var text = File.ReadAllText(RepositoryRoot.Of("DEVELOPERS.md"));
        var table = text[text.IndexOf("| say | never |", StringComparison.Ordinal)..];
        return table[..table.IndexOf("\n\n", StringComparison.Ordinal)].Split('\n').Skip(2).Select(row => row.Split('|'))
            .Select(cells => (Listed(cells[1]), Listed(cells[2])));

        static string[] Listed(string cell) => cell.Split(',', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries);
    }

    [GeneratedRegex(@"\b(?<twice>[a-z]+) \k<twice>\b|  | [,.;:!?)](?![\w/])|\( |[,;:]{2}|\.\.(?!\.)|,\.|[.;:,](?=[a-z]{3,} )",
        RegexOptions.IgnoreCase)]
    private static partial Regex Faults();

    [GeneratedRegex(@"(?<![\w·'""`-]|\d )(?<article>[Aa]n?) (?<next>[\w-]+)")]
    private static partial Regex Articles();

    [GeneratedRegex(@"(?:[.?]|\.\)|: \{\}|\{\})$")]
    private static partial Regex Ends();

    [GeneratedRegex(@"(?<=[.?!]) (?=\S)")]
    private static partial Regex Between();

    [GeneratedRegex("`[^`]*`|\\{\\}")]
    private static partial Regex Keys();

    [GeneratedRegex(@"(?<![\w.,/-])(?<number>\d[\d.,]*\d|\d) (?:mm2|mm|m|in|Hz|kHz|W|kW|V|A|ohm|dB|%|deg|kg|g|uF|mH|l)\b")]
    private static partial Regex Quantities();
}
