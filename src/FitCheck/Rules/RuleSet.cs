using FitCheck.Facts;
using FitCheck.Rules.Conditions;
using FitCheck.Yaml;

namespace FitCheck.Rules;

/// <summary>The rules of one or more directories, in ordinal order of their ids.</summary>
public sealed class RuleSet
{
    private readonly SortedDictionary<string, Rule> _byId = new(StringComparer.Ordinal);

    public RuleSet(IEnumerable<Rule> rules)
    {
        foreach (var rule in rules)
            _byId[rule.Id] = rule;
        Rules = [.. _byId.Values];
    }

    public IReadOnlyList<Rule> Rules { get; }

    public Rule? Find(string id) => _byId.GetValueOrDefault(id);

    /// <summary>Reads every rule of the directories; one of a later directory takes the place of an earlier one with the same id.</summary>
    /// <param name="directories">A missing one is a problem.</param>
    /// <param name="declared">Every fact that a rule may name.</param>
    /// <param name="problems">Where mistakes are told; a rule with one is left out.</param>
    /// <param name="checkTemplates">Also parse the messages, which costs the start-up of the template engine.</param>
    public static RuleSet Load(IReadOnlyList<string> directories, IReadOnlyList<FactDeclaration> declared, ProblemList problems, bool checkTemplates = false)
    {
        var scopes = Enum.GetValues<Subject>().ToDictionary(s => s, s => new FactScope(s, declared));
        var rules = new List<Rule>();
        foreach (var directory in directories)
        {
            foreach (var file in RuleFile.AllOf(directory, problems))
            {
                if (file.Read(problems) is { } root && RuleReader.Read(root, s => scopes[s], problems) is { } rule && file.Names(rule, problems))
                    rules.Add(rule);
            }
        }
        if (checkTemplates)
            rules.ForEach(r => MessageVariables.Check(r, problems));
        return new RuleSet(rules);
    }
}
