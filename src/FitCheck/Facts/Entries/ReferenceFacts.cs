using FitCheck.Catalog;
using FitCheck.Facts.Values;
using FitCheck.Foundation.Problems;

namespace FitCheck.Facts.Entries;

/// <summary>Whether what an entry names exists, and is what it should be.</summary>
internal static class ReferenceFacts
{
    public static readonly IReadOnlyList<FactDeclaration> Declarations =
    [
        Declare.Word(Subject.Reference, "reference", "The id that is named."),
        Declare.Word(Subject.Reference, "wanted_kind", "The kind of entry that belongs here, with its article."),
        Declare.Word(Subject.Reference, "found_kind", "The kind of the entry with this id with its article, or `nothing`."),
        Declare.Word(Subject.Reference, "near_hint", "The nearest id of the right kind, as a question; empty when the reference is right or nothing is near."),
        Declare.Truth(Subject.Reference, "leads_somewhere", "The catalog has an entry of the right kind with this id."),
    ];

    /// <summary>Of one reference of the entry with this id and name.</summary>
    public static FactTable Of(Reference reference, string id, string name, ICatalogIndex catalog)
    {
        var kind = catalog.KindOf(reference.Target.Value);
        var sheet = new FactSheet();
        sheet.Set("reference", reference.Target.Value);
        var isRight = kind is not null && (reference.Kind is null || reference.Kind == kind);
        sheet.Set("wanted_kind", PartsCatalog.Article(reference.Kind ?? "part"));
        sheet.Set("found_kind", kind is null ? "nothing" : PartsCatalog.Article(kind));
        sheet.Set("near_hint", isRight ? "" : Nearest.Hint(reference.Target.Value, catalog.Ids.Where(i => reference.Kind is null || catalog.KindOf(i) == reference.Kind)));
        sheet.Set("leads_somewhere", FactValue.Of(isRight) with
        {
            Data = [new Datum($"reference to {reference.Target.Value}", reference.Target.At)],
        });
        return new FactTable(Subject.Reference, id, name, sheet.Values) { At = reference.Target.At };
    }
}
