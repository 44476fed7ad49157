using FitCheck.Facts.Values;
using FitCheck.Findings;
using FitCheck.Rules;
using FitCheck.Rules.Conditions.Nodes;
using FitCheck.Rules.Model;

namespace FitCheck.Evaluation;

/// <summary>
/// The rules that did not apply to a build: a rule that says nothing has not found all well. They are gathered while it is judged; why
/// each is silent is worked out for who asks.
/// </summary>
internal sealed class SilentRules(IReadOnlyList<FactTable> tables, RuleSet rules)
{
    private readonly List<(Rule Rule, FactTable Table)> _silent = [];
    private readonly List<Rule> _withoutSubject =
        [.. rules.Rules.Where(r => !r.Subject.IsOfCatalog() && tables.All(t => t.Subject != r.Subject))];

    /// <summary>How many did not apply, counted position by position.</summary>
    public int Count => _silent.Count + _withoutSubject.Count;

    /// <summary>Adds one that does not apply to a table of its subject.</summary>
    public void Add(Rule rule, FactTable table) => _silent.Add((rule, table));

    /// <summary>Place by place, then by the rules' ids.</summary>
    public IReadOnlyList<NotJudged> Told() =>
    [
        .. tables.SelectMany(t => _silent.Where(s => ReferenceEquals(s.Table, t)).OrderBy(s => s.Rule.Id, StringComparer.Ordinal))
            .Select(s => Told(s.Rule, s.Table)),
        .. _withoutSubject.OrderBy(r => r.Id, StringComparer.Ordinal)
            .Select(r => new NotJudged(r.Id, "build", "The whole build", Nothing(r.Subject))),
    ];

    private static NotJudged Told(Rule rule, FactTable table) => new(rule.Id, table.Key, table.Name,
        rule.When!.WhyNot(rule.Scope, new FactInputs(rule.Scope, table.Values)));

    private static string Nothing(Subject subject) => subject switch
    {
        Subject.Position => "nothing is fitted",
        Subject.Channel => "no output",
        Subject.Device => "no device",
        _ => "no driver",
    };
}
