using FitCheck.Foundation.Problems;

namespace FitCheck.Catalog;

/// <summary>Holds the article numbers of entries against each other: one number stands for one part.</summary>
internal static class ArticleNumbers
{
    /// <summary>As numbers are compared: without case and spaces.</summary>
    public static string Plain(string number) =>
        string.Concat(number.Where(c => !char.IsWhiteSpace(c))).ToUpperInvariant();

    /// <summary>Tells each number that an earlier entry has too, at the later one.</summary>
    public static void Check(IEnumerable<(string Id, IReadOnlyList<Located<string>> Numbers)> entries, ProblemList problems)
    {
        var first = new Dictionary<string, string>(StringComparer.Ordinal);
        foreach (var (id, numbers) in entries)
        {
            foreach (var number in numbers)
            {
                if (!first.TryAdd(Plain(number.Value), id) && first[Plain(number.Value)] is var other)
                    problems.Error(number.At, other == id ? $"the article number `{number.Value}` stands here twice"
                        : $"the article number `{number.Value}` is that of `{other}` too; one number stands for one entry");
            }
        }
    }
}
