using System.Collections.Concurrent;
using FitCheck.Catalog;
using FitCheck.Facts;
using FitCheck.Facts.Entries;
using FitCheck.Facts.Values;
using FitCheck.Findings;
using FitCheck.Foundation.Problems;
using FitCheck.Rules;
using FitCheck.Rules.Conditions.Nodes;
using FitCheck.Rules.Model;
using FitCheck.Rules.Verdicts;

namespace FitCheck.Evaluation;

/// <summary>The rules about entries, sorted by what they ask. Several threads may ask at once.</summary>
internal sealed class EntryJudge(RuleSet rules)
{
    private readonly ILookup<Subject, Rule> _bySubject = rules.Rules.ToLookup(r => r.Subject);
    private readonly ConcurrentDictionary<string, IReadOnlyList<Rule>> _byFigure = new(StringComparer.Ordinal);
    private readonly NotesOfThreads _notes = new();
    private static readonly List<Rule> None = [];

    public bool AsksFigure(string figure) => AskedFor(figure).Count > 0;

    /// <summary>What the rules find implausible in the facts of one subject, each at the figure that it is about.</summary>
    public IReadOnlyList<Problem> Of(FactTable table)
    {
        var notes = _notes.Take();
        List<Problem>? found = null;
        foreach (var rule in Doubting(table,
            table.Subject == Subject.Figure ? AskedFor(table.Of(FigureFacts.Figure)!.Word!) : _bySubject[table.Subject], notes))
        {
            if (Judged(rule, table) is { } problem)
                (found ??= []).Add(problem);
        }
        _notes.Return(notes);
        return found ?? [];
    }

    /// <summary>What they find in the figures of a class.</summary>
    public IReadOnlyList<Problem> Of(FigureClass own, FigureFacts figures)
    {
        var asked = AskedFor(own.Figure);
        var notes = _notes.Take();
        var found = new List<Problem>();
        for (var i = 0; i < figures.Count && asked.Count > 0; i++)
        {
            foreach (var rule in Doubting(figures.BriefTableOf(i), asked, notes))
            {
                if (Judged(rule, figures.TableOf(i)) is { } problem)
                    found.Add(problem);
            }
        }
        _notes.Return(notes);
        return found;
    }

    /// <summary>What they find in an entry by itself.</summary>
    public IEnumerable<Problem> Of(Entry entry) => FactRegistry.Of(entry, rules.Practice, Asks).SelectMany(Of);

    private bool Asks(Subject subject) => _bySubject.Contains(subject);

    // Nearly all is well, and that is soon seen.
    private static List<Rule> Doubting(FactTable table, IEnumerable<Rule> asked, RuleNotes notes)
    {
        List<Rule>? doubting = null;
        notes.Turn(table);
        foreach (var rule in asked)
        {
            if (notes.Judge(rule) is { Status: Status.Warn or Status.Fail })
                (doubting ??= []).Add(rule);
        }
        return doubting ?? None;
    }

    private IReadOnlyList<Rule> AskedFor(string figure) =>
        _byFigure.GetOrAdd(figure, f => [.. _bySubject[Subject.Figure].Where(r => MayApply(r, f))]);

    // Most rules are about one figure: one whose condition is false for the figure's name alone need not be asked about each of a hundred
    // thousand.
    private static bool MayApply(Rule rule, string figure)
    {
        var name = new Dictionary<string, FactValue>(StringComparer.Ordinal) { [FigureFacts.Figure.Name] = FactValue.Of(figure) };
        return rule.When?.Evaluate(new FactInputs(rule.Scope, name)).Truth != false;
    }

    // The first datum is the figure that is doubted; what else the finding rests on is told beside it. Messages are made only for what is
    // told.
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
            Related = [.. judgement.Data.Skip(1).Select(d => new Related(d.At, d.What)).Distinct(),
                .. judgement.Deciding is { } limit ? (Related[])[new(limit.Bound.At, "threshold of the rule")] : []],
        };
    }
}
