using FitCheck.Yaml;

namespace FitCheck;

/// <summary>How problems and places are written in notes. A place in the entry's own file goes without the file's name.</summary>
internal static class NoteText
{
    public static void Write(BinaryWriter to, IReadOnlyList<Problem> problems, string own)
    {
        to.Write7BitEncodedInt(problems.Count);
        foreach (var problem in problems)
            Write(to, problem, own);
    }

    public static void Write(BinaryWriter to, Problem problem, string own)
    {
        Write(to, problem.At, own);
        to.Write(problem.Severity == Severity.Error);
        to.Write(problem.Message);
        to.Write(problem.Rule ?? "");
        to.Write(problem.Kind.Id);
        to.Write(problem.Subject ?? "");
        to.Write7BitEncodedInt(problem.Related.Count);
        foreach (var related in problem.Related)
        {
            Write(to, related.At, own);
            to.Write(related.What);
        }
    }

    public static IReadOnlyList<Problem> ReadProblems(BinaryReader from, string own) => Several(from, () => ReadProblem(from, own));

    public static Problem ReadProblem(BinaryReader from, string own)
    {
        var problem = new Problem(ReadLocation(from, own), from.ReadBoolean() ? Severity.Error : Severity.Warning, from.ReadString());
        var (rule, kind, subject) = (from.ReadString(), from.ReadString(), from.ReadString());
        return problem with
        {
            Rule = Given(rule),
            Kind = ProblemKind.All.First(k => k.Id == kind),
            Subject = Given(subject),
            Related = Several(from, () => new Related(ReadLocation(from, own), from.ReadString())),
        };
    }

    public static void Write(BinaryWriter to, Located<string> located, string own)
    {
        to.Write(located.Value);
        Write(to, located.At, own);
    }

    public static Located<string> ReadLocated(BinaryReader from, string own) => new(from.ReadString(), ReadLocation(from, own));

    public static void Write(BinaryWriter to, Location at, string own)
    {
        to.Write(at.File == own ? "" : at.File);
        to.Write7BitEncodedInt(at.Line);
        to.Write7BitEncodedInt(at.Column);
    }

    public static Location ReadLocation(BinaryReader from, string own) => new(Given(from.ReadString()) ?? own, from.Read7BitEncodedInt(), from.Read7BitEncodedInt());

    public static string? Given(string text) => text.Length > 0 ? text : null;

    public static IReadOnlyList<T> Several<T>(BinaryReader from, Func<T> one)
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
