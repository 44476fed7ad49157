using FitCheck.Foundation.Problems;

namespace FitCheck.LintCache;

/// <summary>
/// How problems and places are written in notes. A place in the entry's own file goes without the file's name, and its line is counted from
/// the entry.
/// </summary>
/// <param name="Own">Where the entry begins; null for what belongs to none.</param>
internal readonly record struct CacheText(Location? Own)
{
    public void Write(CacheWriter to, IReadOnlyList<Problem> problems)
    {
        to.Write7BitEncodedInt(problems.Count);
        foreach (var problem in problems)
            Write(to, problem);
    }

    public void Write(CacheWriter to, Problem problem)
    {
        Write(to, problem.At);
        to.Write(problem.Severity == Severity.Error);
        to.Write(problem.Message);
        to.Write(problem.Rule ?? "");
        to.Write(problem.Kind.Id);
        to.Write(problem.Subject ?? "");
        to.Write7BitEncodedInt(problem.Related.Count);
        foreach (var related in problem.Related)
        {
            Write(to, related.At);
            to.Write(related.What);
        }
    }

    public IReadOnlyList<Problem> ReadProblems(ref CacheReader from)
    {
        var problems = new Problem[from.Number()];
        for (var i = 0; i < problems.Length; i++)
            problems[i] = ReadProblem(ref from);
        return problems;
    }

    public Problem ReadProblem(ref CacheReader from)
    {
        var problem = new Problem(ReadLocation(ref from), from.Truth() ? Severity.Error : Severity.Warning, from.Text());
        var (rule, kind, subject) = (from.Given(), from.Text(), from.Given());
        var related = new Related[from.Number()];
        for (var i = 0; i < related.Length; i++)
            related[i] = new Related(ReadLocation(ref from), from.Text());
        return problem with { Rule = rule, Kind = ProblemKind.All.First(k => k.Id == kind), Subject = subject, Related = related };
    }

    public void Write(CacheWriter to, Located<string> located)
    {
        to.Write(located.Value);
        Write(to, located.At);
    }

    public Located<string> ReadLocated(ref CacheReader from) => new(from.Text(), ReadLocation(ref from));

    public void Write(CacheWriter to, Location at)
    {
        var isOwn = at.File == Own?.File;
        to.Write(isOwn ? "" : at.File);
        to.Write7BitEncodedInt(isOwn ? at.Line - Own!.Line : at.Line);
        to.Write7BitEncodedInt(at.Column);
    }

    public Location ReadLocation(ref CacheReader from)
    {
        var (file, line, column) = (from.Given(), from.Number(), from.Number());
        return file is null ? new Location(Own!.File, Own.Line + line, column) : new Location(file, line, column);
    }
}
