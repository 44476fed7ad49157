using FitCheck.Catalog;
using FitCheck.Evaluation;
using FitCheck.Facts.Entries;
using FitCheck.Foundation;
using FitCheck.Foundation.Problems;
using FitCheck.Schemas;

namespace FitCheck.LintCache;

/// <summary>
/// What lint keeps of one entry: what is wrong with it by itself, and what others may ask of it. It is all that lint needs of an entry that
/// hasn't changed, and a small part of the entry.
/// </summary>
/// <param name="Id">The id under which it is known.</param>
/// <param name="Name">What people call it.</param>
/// <param name="Place">Where it begins.</param>
/// <param name="IdAt">Where its id stands.</param>
/// <param name="Problems">What is wrong with its form or its statements, in the order found.</param>
/// <param name="Judged">What the rules find implausible in it alone.</param>
/// <param name="References">What it names.</param>
/// <param name="Positions">Of a vehicle the ids of its positions, of a source unit its channels, of a driver its type.</param>
/// <param name="Articles">The article numbers of a part.</param>
/// <param name="Samples">Figures that are compared with others of their class.</param>
internal sealed record ExaminedEntry(
    string Id, string Name, Location Place, Location IdAt, IReadOnlyList<Problem> Problems, IReadOnlyList<Problem> Judged,
    IReadOnlyList<Reference> References,
    IReadOnlyList<string> Positions, IReadOnlyList<Located<string>> Articles, IReadOnlyList<FigureSample> Samples)
{
    /// <summary>True for a problem with the form of a file, which no rule can say anything of.</summary>
    public static bool IsOfForm(Problem problem) =>
        problem.Kind == ProblemKind.Unreadable || problem.Kind == ProblemKind.BrokenYaml || problem.Kind == ProblemKind.WrongShape;

    /// <summary>Reads an entry, holds it against its schema, and judges it.</summary>
    public static ExaminedEntry Of(string id, EntryText text, SchemaCheck schemas, EntryJudge judge)
    {
        var problems = new ProblemList();
        HiddenLetters.Tell(text.File, text.Line, text.Text, problems);
        var entry = EntryReader.Read(text, id, schemas, problems);
        // Physics is for figures that can be read: an entry with a slip of form is judged when that is mended.
        var judged = entry is not null && !problems.All.Any(IsOfForm) ? entry : null;
        return new ExaminedEntry(
            id, entry?.Name ?? id, new Location(text.File, text.Line, 1), entry?.At ?? text.IdPlace(), problems.All,
            judged is null ? [] : [.. judge.Of(judged)],
            entry is null ? [] : [.. Catalog.References.Of(entry)],
            Catalog.References.NamesIn(entry),
            (entry as Part)?.Articles ?? [],
            judged is null ? [] : [.. FigureSample.Of(judged).Where(s => judge.AsksFigure(s.Within.Figure))]);
    }
}
