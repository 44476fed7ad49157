using FitCheck.Yaml;

namespace FitCheck;

/// <summary>How problems and places are written in notes. A place in the entry's own file goes without the file's name.</summary>
internal static class NoteText
{
    public static void Write(NoteWriter to, IReadOnlyList<Problem> problems, string own)
    {
        to.Write7BitEncodedInt(problems.Count);
        foreach (var problem in problems)
            Write(to, problem, own);
    }

    public static void Write(NoteWriter to, Problem problem, string own)
    {
        Write(to, problem.At, own);
        to.Write(problem.Severity == Severity.Error);
        to.Write(problem.Message);
        to.WriteShared(problem.Rule ?? "");
        to.WriteShared(problem.Kind.Id);
        to.Write(problem.Subject ?? "");
        to.Write7BitEncodedInt(problem.Related.Count);
        foreach (var related in problem.Related)
        {
            Write(to, related.At, own);
            to.Write(related.What);
        }
    }

    public static IReadOnlyList<Problem> ReadProblems(NoteReader from, string own) => Several(from, () => ReadProblem(from, own));

    public static Problem ReadProblem(NoteReader from, string own)
    {
        var problem = new Problem(ReadLocation(from, own), from.ReadBoolean() ? Severity.Error : Severity.Warning, from.ReadString());
        var (rule, kind, subject) = (from.ReadShared(), from.ReadShared(), from.ReadString());
        return problem with
        {
            Rule = Given(rule),
            Kind = ProblemKind.All.First(k => k.Id == kind),
            Subject = Given(subject),
            Related = Several(from, () => new Related(ReadLocation(from, own), from.ReadString())),
        };
    }

    public static void Write(NoteWriter to, Located<string> located, string own)
    {
        to.WriteShared(located.Value);
        Write(to, located.At, own);
    }

    public static Located<string> ReadLocated(NoteReader from, string own) => new(from.ReadShared(), ReadLocation(from, own));

    public static void Write(NoteWriter to, Location at, string own)
    {
        to.WriteShared(at.File == own ? "" : at.File);
        to.Write7BitEncodedInt(at.Line);
        to.Write7BitEncodedInt(at.Column);
    }

    public static Location ReadLocation(NoteReader from, string own) => new(Given(from.ReadShared()) ?? own, from.Read7BitEncodedInt(), from.Read7BitEncodedInt());

    public static string? Given(string text) => text.Length > 0 ? text : null;

    public static IReadOnlyList<T> Several<T>(NoteReader from, Func<T> one)
    {
        var count = from.Read7BitEncodedInt();
        if (count == 0)
            return [];
        var items = new List<T>();
        while (items.Count < count)
            items.Add(one());
        return items;
    }
}
