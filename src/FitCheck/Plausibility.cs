using FitCheck.Catalog;
using FitCheck.Facts;
using FitCheck.Findings;
using FitCheck.Rules;
using FitCheck.Rules.Conditions;
using FitCheck.Yaml;

namespace FitCheck;

/// <summary>Judges the entries of a catalog by the rules about entries: what a wrong figure looks like. Nothing is parsed here; the work grows with the number of entries.</summary>
public static class Plausibility
{
    /// <summary>What the rules find implausible, each at the figure that it is about, in no particular order.</summary>
    public static IEnumerable<Problem> Of(PartsCatalog catalog, RuleSet rules)
    {
        ArgumentNullException.ThrowIfNull(catalog);
        ArgumentNullException.ThrowIfNull(rules);
        var bySubject = rules.Rules.ToLookup(r => r.Subject);
        var figures = new Dictionary<string, IReadOnlyList<Rule>>(StringComparer.Ordinal);
        foreach (var table in Tables(catalog, bySubject.Contains, name => AskedFor(name).Count > 0))
        {
            var asked = table.Subject == Subject.Figure ? AskedFor(table.Values["figure"].Word!) : bySubject[table.Subject];
            foreach (var rule in asked)
            {
                if (Judged(rule, table) is { } problem)
                    yield return problem;
            }
        }

        IReadOnlyList<Rule> AskedFor(string figure) => figures.TryGetValue(figure, out var known) ? known
            : figures[figure] = [.. bySubject[Subject.Figure].Where(r => MayApply(r, figure))];
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
            samples.AddRange(FigureSample.Of(entry).Where(s => isFigureAsked(s.Figure)));
        }
        foreach (var taken in catalog.Taken)
            yield return EntryFacts.Of(taken);
        foreach (var table in FigureFacts.Of(samples))
            yield return table;
    }

    private static IEnumerable<FactTable> Several(Entry entry, PartsCatalog catalog) =>
        [.. RatingFacts.Of(entry), .. ReferenceFacts.Of(entry, catalog), .. entry is Vehicle vehicle ? MirrorFacts.Of(vehicle) : []];

    // Most rules are about one figure: one whose condition is false for the figure's name alone need not be asked about each of a hundred thousand.
    private static bool MayApply(Rule rule, string figure)
    {
        var name = new Dictionary<string, FactValue>(StringComparer.Ordinal) { ["figure"] = FactValue.Of(figure) };
        return rule.When?.Evaluate(new FactInputs(rule.Scope, name)).Truth != false;
    }

    // The first datum is the figure that is doubted; what else the finding rests on is told beside it. Messages are made only for what is told.
    private static Problem? Judged(Rule rule, FactTable table)
    {
        var inputs = new FactInputs(rule.Scope, table.Values);
        if (Judgement.Of(rule, inputs) is not { Status: Status.Warn or Status.Fail } judgement)
            return null;
        var finding = Judge.Find(rule, table, inputs, judgement, table.Key, problems: null);
        var at = judgement.Data.Count > 0 ? judgement.Data[0].At : table.At;
        return new Problem(at, judgement.Status == Status.Fail ? Severity.Error : Severity.Warning, finding.Message)
        {
            Rule = rule.Id,
            Subject = table.Key,
            Related = [.. judgement.Data.Skip(1).Select(d => new Related(d.At, d.What)).Distinct(), .. judgement.Deciding is { } limit ? (Related[])[new(limit.Bound.At, "threshold of the rule")] : []],
        };
    }
}
