using FitCheck.Facts.Values;
using FitCheck.Findings;
using FitCheck.Rules;
using FitCheck.Rules.Conditions.Nodes;
using FitCheck.Rules.Model;

namespace FitCheck.Evaluation;

/// <summary>Lists the rules that did not apply to a build: a rule that says nothing has not found all well.</summary>
internal static class SilentRules
{
    /// <summary>Place by place, then by the rules' ids.</summary>
    public static IReadOnlyList<NotJudged> Of(IReadOnlyList<FactTable> tables, RuleSet rules)
    {
        var unjudged = new List<NotJudged>();
        var asked = rules.Rules.Where(r => !r.Subject.IsOfCatalog()).OrderBy(r => r.Id, StringComparer.Ordinal).ToList();
        foreach (var table in tables)
        {
            foreach (var rule in asked.Where(r => r.Subject == table.Subject))
            {
                if (WhyNot(rule, table) is { } reason)
                    unjudged.Add(new NotJudged(rule.Id, table.Key, table.Name, reason));
            }
        }
        foreach (var rule in asked.Where(r => tables.All(t => t.Subject != r.Subject)))
            unjudged.Add(new NotJudged(rule.Id, "build", "The whole build", Nothing(rule.Subject)));
        return unjudged;
    }

    private static string? WhyNot(Rule rule, FactTable table)
    {
        if (rule.When is not { } when)
            return null;
        var inputs = new FactInputs(rule.Scope, table.Values);
        return when.Evaluate(inputs).Truth == false ? when.WhyNot(rule.Scope, inputs) : null;
    }

    private static string Nothing(Subject subject) => subject switch
    {
        Subject.Position => "nothing is fitted",
        Subject.Channel => "no output",
        Subject.Device => "no device",
        _ => "no driver",
    };
}
