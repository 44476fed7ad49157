using System.Collections.Concurrent;
using FitCheck.Facts.Values;
using FitCheck.Rules.Model;

namespace FitCheck.Rules.Verdicts;

/// <summary>What one thread keeps of the rules while it judges table after table without evidence.</summary>
internal sealed class RuleNotes
{
    private readonly Dictionary<string, BriefRule> _rules = new(StringComparer.Ordinal);
    private readonly Dictionary<Subject, BriefTable> _tables = [];
    private FactTable? _table;
    private BriefTable? _brief;

    /// <summary>Goes on to a table; the rules asked next are about its subject.</summary>
    public void Turn(FactTable table) => (_table, _brief) = (table, null);

    /// <summary>What the rule says of the table; null when it does not apply.</summary>
    public Verdict? Judge(Rule rule)
    {
        var brief = Of(rule);
        return brief.Judge(_brief!);
    }

    /// <summary>How far a rule that applies is from failing; see <see cref="BriefRule.Room"/>.</summary>
    public double Room(Rule rule)
    {
        var brief = Of(rule);
        return brief.Room(_brief!);
    }

    private BriefRule Of(Rule rule)
    {
        if (_brief is null)
        {
            if (!_tables.TryGetValue(rule.Subject, out _brief))
                _tables[rule.Subject] = _brief = new BriefTable(rule.Scope);
            _brief.Turn(_table!);
        }
        if (!_rules.TryGetValue(rule.Id, out var brief))
            _rules[rule.Id] = brief = new BriefRule(rule);
        return brief;
    }
}

/// <summary>Notes on one set of rules for as many threads as ask.</summary>
internal sealed class NotesOfThreads
{
    private readonly ConcurrentBag<RuleNotes> _free = [];

    public RuleNotes Take() => _free.TryTake(out var notes) ? notes : new RuleNotes();

    public void Return(RuleNotes notes) => _free.Add(notes);

    /// <summary>What a rule says of a table; null when it does not apply.</summary>
    public Verdict? Judge(Rule rule, FactTable table) => Asked(table, notes => notes.Judge(rule));

    /// <summary>How far a rule that applies to a table is from failing; see <see cref="BriefRule.Room"/>.</summary>
    public double Room(Rule rule, FactTable table) => Asked(table, notes => notes.Room(rule));

    private T Asked<T>(FactTable table, Func<RuleNotes, T> question)
    {
        var notes = Take();
        notes.Turn(table);
        var answer = question(notes);
        Return(notes);
        return answer;
    }
}
