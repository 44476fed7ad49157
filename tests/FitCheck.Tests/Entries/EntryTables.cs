using FitCheck.Catalog;
using FitCheck.Facts;
using FitCheck.Facts.Entries;
using FitCheck.Facts.Values;
using FitCheck.Foundation.Problems;
using FitCheck.Rules.Files;

namespace FitCheck.Tests.Entries;

/// <summary>The facts of every entry of a catalog, from the functions that lint takes them from.</summary>
internal static class EntryTables
{
    public static IEnumerable<FactTable> Of(PartsCatalog catalog)
    {
        var entries = catalog.Ids.Select(catalog.Find).OfType<Entry>().ToList();
        return
        [
            .. entries.SelectMany(e => FactRegistry.Of(e, PracticeReader.OfProgram, _ => true)),
            .. entries.SelectMany(e => FitCheck.Catalog.References.Of(e)
                .SelectMany(r => NamedFacts.Of(r, e.Id, e.Name, catalog).Prepend(ReferenceFacts.Of(r, e.Id, e.Name, catalog)))),
            EntryFacts.Of(new TakenId("bad-woofer", new Location("drivers/old/bad-woofer.yaml", 1, 5), "drivers/bad-woofer.yaml")),
            .. Classes(catalog).SelectMany(f => Enumerable.Range(0, f.Figures.Count).Select(f.Figures.TableOf)),
        ];
    }

    /// <summary>The figures of each class.</summary>
    public static IEnumerable<(FigureClass Class, FigureFacts Figures)> Classes(PartsCatalog catalog)
    {
        foreach (var own in catalog.Ids.Select(catalog.Find).OfType<Entry>().SelectMany(FigureSample.Of).GroupBy(s => s.Within))
        {
            FigureSample[] members = [.. own];
            yield return (own.Key, new FigureFacts(own.Key, Array.ConvertAll(members, m => m.Value), i => members[i]));
        }
    }
}
