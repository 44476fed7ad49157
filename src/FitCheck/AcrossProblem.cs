using FitCheck.Facts;
using FitCheck.Yaml;

namespace FitCheck;

/// <summary>What a rule finds across entries.</summary>
/// <param name="Class">The class of figures in which it was found; null for a reference or an id.</param>
/// <param name="Problem">What was found.</param>
internal sealed record AcrossProblem(FigureClass? Class, Problem Problem)
{
    public void Write(NoteWriter to)
    {
        to.WriteShared(Class?.Figure ?? "");
        to.WriteShared(Class?.Name ?? "");
        NoteText.Write(to, Problem, "");
    }

    public static AcrossProblem Read(NoteReader from)
    {
        var (figure, name) = (from.ReadShared(), from.ReadShared());
        return new AcrossProblem(figure.Length > 0 ? new FigureClass(figure, name) : null, NoteText.ReadProblem(from, ""));
    }
}
