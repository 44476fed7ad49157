using FitCheck.Catalog;
using FitCheck.Facts;
using FitCheck.Physics.Quantities;
using FitCheck.Schemas;
using FitCheck.Yaml;

namespace FitCheck;

/// <summary>
/// What lint keeps of one entry: what is wrong with it by itself, and what others may ask of it. It is all that lint needs of an entry that hasn't changed, and
/// a small part of the entry.
/// </summary>
/// <param name="Id">The id under which it is known.</param>
/// <param name="Name">What people call it.</param>
/// <param name="Kind">Its kind.</param>
/// <param name="Place">Where it begins.</param>
/// <param name="IdAt">Where its id stands.</param>
/// <param name="Problems">What is wrong with its form or its statements, in the order found.</param>
/// <param name="Judged">What the rules find implausible in it alone.</param>
/// <param name="References">What it names.</param>
/// <param name="Positions">Of a vehicle: the ids of its positions.</param>
/// <param name="Samples">Figures that are compared with others of their class.</param>
internal sealed record EntryNote(
    string Id, string Name, string Kind, Location Place, Location IdAt, IReadOnlyList<Problem> Problems, IReadOnlyList<Problem> Judged, IReadOnlyList<Reference> References,
    IReadOnlyList<string> Positions, IReadOnlyList<FigureSample> Samples)
{
    /// <summary>Physics is for figures that can be read: an entry with a slip of form is judged when that is mended.</summary>
    public bool IsMalformed => Problems.Any(IsOfForm);

    /// <summary>True for a problem with the form of a file, which no rule can say anything of.</summary>
    public static bool IsOfForm(Problem problem) => problem.Kind == ProblemKind.Unreadable || problem.Kind == ProblemKind.BrokenYaml || problem.Kind == ProblemKind.WrongShape;

    /// <summary>Reads an entry, holds it against its schema, and judges it.</summary>
    public static EntryNote Of(string id, EntryText text, SchemaCheck schemas, EntryJudge judge)
    {
        var problems = new ProblemList();
        var entry = EntryReader.Read(text, id, schemas, problems);
        var judged = entry is not null && !problems.All.Any(IsOfForm) ? entry : null;
        return new EntryNote(
            id, entry?.Name ?? id, text.Kind, new Location(text.File, text.Line, 1), entry?.At ?? text.IdPlace(), problems.All, judged is null ? [] : [.. judge.Of(judged)],
            entry is null ? [] : [.. Catalog.References.Of(entry)], entry is Vehicle vehicle ? [.. vehicle.Positions.Select(p => p.Id)] : [],
            judged is null ? [] : [.. FigureSample.Of(judged).Where(s => judge.AsksFigure(s.Figure))]);
    }

    /// <summary>The same for an entry that has moved within its file; null when it can't be told so simply, for a problem may name lines in words.</summary>
    public EntryNote? At(Location place)
    {
        if (place == Place)
            return this;
        if (Problems.Count > 0 || Judged.Count > 0)
            return null;
        return this with { Place = place, IdAt = MovedPlace(IdAt), Samples = [.. Samples.Select(s => s with { At = MovedPlace(s.At) })], References = [.. References.Select(r => r with { Target = Moved(r.Target), Positions = [.. r.Positions.Select(Moved)] })] };

        Located<string> Moved(Located<string> located) => located with { At = MovedPlace(located.At) };

        Location MovedPlace(Location at) => new(place.File, at.Line - Place.Line + place.Line, at.Column);
    }

    public void Write(NoteWriter to)
    {
        to.Write(Id);
        to.WriteShared(Name);
        NoteText.Write(to, IdAt, Place.File);
        NoteText.Write(to, Problems, Place.File);
        NoteText.Write(to, Judged, Place.File);
        to.Write7BitEncodedInt(References.Count);
        foreach (var reference in References)
        {
            NoteText.Write(to, reference.Target, Place.File);
            to.WriteShared(reference.Kind ?? "");
            to.Write7BitEncodedInt(reference.Positions.Count);
            foreach (var position in reference.Positions)
                NoteText.Write(to, position, Place.File);
        }
        to.Write7BitEncodedInt(Positions.Count);
        foreach (var position in Positions)
            to.WriteShared(position);
        to.Write7BitEncodedInt(Samples.Count);
        foreach (var sample in Samples)
        {
            to.WriteShared(sample.Figure);
            to.WriteShared(sample.Class);
            to.WriteShared(sample.Name);
            NoteText.Write(to, sample.At, Place.File);
            to.Write(sample.Value);
            to.WriteShared(sample.Unit);
            to.WriteShared(sample.WrittenIn?.Symbol ?? "");
        }
    }

    /// <summary>What was written.</summary>
    public static EntryNote Read(NoteReader from, string kind, Location place)
    {
        var file = place.File;
        var (id, name, at) = (from.ReadString(), from.ReadShared(), NoteText.ReadLocation(from, file));
        var (problems, judged) = (NoteText.ReadProblems(from, file), NoteText.ReadProblems(from, file));
        var references = NoteText.Several(from, () => new Reference(NoteText.ReadLocated(from, file), NoteText.Given(from.ReadShared()), NoteText.Several(from, () => NoteText.ReadLocated(from, file))));
        var positions = NoteText.Several(from, from.ReadShared);
        return new EntryNote(id, name, kind, place, at, problems, judged, references, positions, NoteText.Several(from, () => new FigureSample(
            from.ReadShared(), from.ReadShared(), from.ReadShared(), NoteText.ReadLocation(from, file), from.ReadDouble(), from.ReadShared())
        {
            WrittenIn = NoteText.Given(from.ReadShared()) is { } unit ? Unit.Find(unit) : null,
        }));
    }
}
