using FitCheck.Foundation.Problems;

namespace FitCheck.LintCache;

/// <summary>What a rule finds across entries.</summary>
/// <param name="Class">The number of the class of figures in which it was found; null for a reference or an id.</param>
/// <param name="Problem">What was found.</param>
internal sealed record CrossEntryProblem(int? Class, Problem Problem)
{
    private static readonly CacheText Text = new(null);

    public void Write(CacheWriter to)
    {
        to.Write7BitEncodedInt(Class + 1 ?? 0);
        Text.Write(to, Problem);
    }

    public static CrossEntryProblem Read(ref CacheReader from) =>
        new(from.Number() is var number and > 0 ? number - 1 : null, Text.ReadProblem(ref from));
}
