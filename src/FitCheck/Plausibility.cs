using FitCheck.Catalog;
using FitCheck.Evaluation;
using FitCheck.Facts;
using FitCheck.Facts.Entries;
using FitCheck.Facts.Values;
using FitCheck.Foundation.Problems;
using FitCheck.Rules;

namespace FitCheck;

/// <summary>Judges the entries of a catalog by the rules about entries: what a wrong figure looks like. Nothing is parsed here; the work grows with the number of entries.</summary>
public static class Plausibility
{
    /// <summary>What the rules find implausible, each at the figure that it is about, in no particular order.</summary>
    public static IEnumerable<Problem> Of(PartsCatalog catalog, RuleSet rules)
    {
        ArgumentNullException.ThrowIfNull(catalog);
        ArgumentNullException.ThrowIfNull(rules);
        var judge = new EntryJudge(rules);
        return Tables(catalog, judge.Asks, judge.AsksFigure).SelectMany(judge.Of);
    }

    /// <summary>The facts of every entry, of the subjects that are asked for.</summary>
    internal static IEnumerable<FactTable> Tables(PartsCatalog catalog, Func<Subject, bool> isAsked, Func<string, bool> isFigureAsked)
    {
        var samples = new List<FigureSample>();
        foreach (var entry in catalog.Ids.Select(catalog.Find).OfType<Entry>())
        {
            if (entry is Driver driver && isAsked(Subject.Driver))
                yield return FactRegistry.Of(driver);
            if (isAsked(Subject.Entry))
                yield return EntryFacts.Of(entry);
            foreach (var table in Several(entry, catalog).Where(t => isAsked(t.Subject)))
                yield return table;
            samples.AddRange(FigureSample.Of(entry).Where(s => isFigureAsked(s.Within.Figure)));
        }
        foreach (var taken in catalog.Taken)
            yield return EntryFacts.Of(taken);
        foreach (var table in FigureFacts.Of(samples))
            yield return table;
    }

    private static IEnumerable<FactTable> Several(Entry entry, PartsCatalog catalog) =>
        [.. RatingFacts.Of(entry), .. ReferenceFacts.Of(entry, catalog), .. entry is Vehicle vehicle ? MirrorFacts.Of(vehicle) : []];
}
