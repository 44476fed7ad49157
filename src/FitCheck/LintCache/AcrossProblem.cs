using FitCheck.Foundation.Problems;

namespace FitCheck.LintCache;

/// <summary>What a rule finds across entries.</summary>
/// <param name="Class">The number of the class of figures in which it was found; null for a reference or an id.</param>
/// <param name="Problem">What was found.</param>
internal sealed record AcrossProblem(int? Class, Problem Problem)
{
    private static readonly NoteText Text = new(null);

    public void Write(NoteWriter to)
    {
        to.Write7BitEncodedInt(Class + 1 ?? 0);
        Text.Write(to, Problem);
    }

    public static AcrossProblem Read(ref NoteReader from) => new(from.Number() is var number and > 0 ? number - 1 : null, Text.ReadProblem(ref from));
}
