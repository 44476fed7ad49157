using FitCheck.Catalog;
using FitCheck.Facts.Values;
using FitCheck.Foundation.Problems;

namespace FitCheck.Facts.Entries;

/// <summary>Whether what an entry names exists, and is what it should be.</summary>
internal static class ReferenceFacts
{
    public static readonly FactGroup Declarations = new(Subject.Reference);

    public static readonly WordFact Reference = Declarations.Word("reference", "The id that is named.", Reads.Entry.Itself);
    public static readonly WordFact WantedKind = Declarations.Word(
        "wanted_kind", "The kind of entry that belongs here, with its article.",
        Reads.Entry.Itself);
    public static readonly WordFact FoundKind = Declarations.Word(
        "found_kind", "The kind of the entry with this id with its article, or `nothing`.",
        Reads.Entry.Itself);
    public static readonly WordFact NearHint = Declarations.Word(
        "near_hint", "The nearest id of the right kind, as a question; empty when the reference is right or nothing is near.",
        Reads.Entry.Itself);
    public static readonly TruthFact LeadsSomewhere = Declarations.Truth(
        "leads_somewhere", "The catalog has an entry of the right kind with this id.",
        Reads.Entry.Itself);

    /// <summary>Of one reference of the entry with this id and name.</summary>
    public static FactTable Of(Reference reference, string id, string name, ICatalogIndex catalog)
    {
        var kind = catalog.KindOf(reference.Target.Value);
        var sheet = new FactSheet();
        sheet.Set(Reference, reference.Target.Value);
        var isRight = kind is not null && (reference.Kind is null || reference.Kind == kind);
        sheet.Set(WantedKind, PartsCatalog.Article(reference.Kind ?? "part"));
        sheet.Set(FoundKind, kind is null ? "nothing" : PartsCatalog.Article(kind));
        sheet.Set(NearHint,
            isRight ? ""
                : Nearest.Hint(reference.Target.Value,
                catalog.Ids.Where(i => reference.Kind is null || catalog.KindOf(i) == reference.Kind)));
        sheet.Set(LeadsSomewhere, FactValue.Of(isRight) with
        {
            Data = [new Datum($"reference to {reference.Target.Value}", reference.Target.At)],
        });
        return new FactTable(Subject.Reference, id, name, sheet.Values) { At = reference.Target.At };
    }
}
