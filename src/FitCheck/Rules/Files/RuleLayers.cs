using FitCheck.Findings;
using FitCheck.Foundation.Problems;
using FitCheck.Rules.Conditions.Nodes;
using FitCheck.Rules.Model;
using FitCheck.Yaml;

namespace FitCheck.Rules.Files;

/// <summary>Lays the files of later directories over those of earlier ones, and keeps account of what that changed.</summary>
internal sealed class RuleLayers(Func<Facts.Values.Subject, FactScope> scopes, ProblemList problems)
{
    private readonly Dictionary<string, (Rule Rule, int Layer)> _rules = new(StringComparer.Ordinal);
    private readonly SortedDictionary<string, RuleChange> _changes = new(StringComparer.Ordinal);

    public IEnumerable<Rule> Rules
    {
        get
        {
            foreach (var (rule, _) in _rules.Values)
                yield return rule;
        }
    }

    public IReadOnlyList<RuleChange> Changes => [.. _changes.Values];

    /// <summary>Takes in one more file; those of a directory come after all those of earlier ones.</summary>
    public void Put(RuleFile file, YamlNode root, int layer)
    {
        if (RuleChangeReader.IsChange(root))
            Change(file, (YamlMap)root, layer);
        else if (RuleReader.Read(root, scopes, problems) is { } rule && file.Names(rule, problems))
            Whole(rule, layer);
    }

    // What loosens a rule that is never waived is told, and the rule stays.
    private bool IsAllowed(Rule? before, Rule after)
    {
        if (before is null or { CanBeWaived: true })
            return true;
        var loosened = new ProblemList();
        RuleStrictness.Check(before, after, loosened);
        problems.AddRange(loosened.All);
        return !loosened.HasErrors;
    }

    private void Whole(Rule rule, int layer)
    {
        _rules.TryGetValue(rule.Id, out var before);
        if (layer > 0 && !IsAllowed(before.Rule, rule))
            return;
        if (layer > 0)
            _changes[rule.Id] = before.Rule is not null ? RuleDifferences.Replaced(before.Rule, rule) : RuleDifferences.Added(rule);
        _rules[rule.Id] = (rule, layer);
    }

    private void Change(RuleFile file, YamlMap root, int layer)
    {
        if (root["id"] is not YamlScalar { Text: var id } || id != file.Id)
        {
            problems.Error(root["id"]?.At ?? root.At,
                $"a change of a rule begins with the rule's id, which is also its path: `id: {file.Id}`", ProblemKind.BrokenRule);
            return;
        }
        if (!_rules.TryGetValue(id, out var earlier) || earlier.Layer == layer)
        {
            var hint = earlier.Rule is null ? Nearest.Hint(id, _rules.Keys) : "";
            problems.Error(root["id"]!.At,
                $"no earlier directory of rules has `{id}`, which this file changes"
                    + $"{(_rules.Count > 0 ? hint : "; give the rules that it changes first: `--rules default --rules …`")}",
                    ProblemKind.BrokenRule);
            return;
        }
        if (RuleChangeReader.Read(root, earlier.Rule, problems) is not var (reason, changed))
            return;
        if (changed is null)
        {
            _changes[id] = RuleDifferences.SwitchedOff(earlier.Rule, reason, root.At);
            _rules.Remove(id);
        }
        else if (RuleReader.Read(changed, scopes, problems) is { } rule && IsAllowed(earlier.Rule, rule))
        {
            _changes[id] = RuleDifferences.Changed(earlier.Rule, rule, reason, root.At);
            _rules[id] = (rule with { IsChanged = true }, layer);
        }
    }
}
