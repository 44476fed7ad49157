using FitCheck.Facts.Values;
using FitCheck.Findings;
using FitCheck.Foundation.Problems;
using FitCheck.Rules.Conditions;
using FitCheck.Rules.Conditions.Nodes;
using FitCheck.Rules.Model;
using FitCheck.Yaml;

namespace FitCheck.Rules.Files;

/// <summary>Reads the rows of a rule's own test.</summary>
internal sealed class ExampleReader(FactScope scope, ProblemList problems)
{
    private static readonly string[] Outcomes = ["pass", "warn", "measure", "fail", "none"];

    private readonly ExampleValue _values = new(problems);

    public IReadOnlyList<RuleExample> Read(IReadOnlyList<YamlNode> rows, Expression? fact)
    {
        var examples = rows.Select(r => Row(r, fact)).OfType<RuleExample>().ToList();
        foreach (var twice in examples.GroupBy(e => e.Name, StringComparer.Ordinal).SelectMany(g => g.Skip(1)))
            problems.Error(twice.At, $"another example is named `{twice.Name}` too");
        return examples;
    }

    private RuleExample? Row(YamlNode row, Expression? fact)
    {
        if (row is not YamlMap map)
        {
            problems.Error(row.At,
                $"an example is a mapping such as `{{ name: comfortable, given: 8 mm, expect: pass }}`, found {row.Kind}");
            return null;
        }
        var keys = new RuleKeys(map, "an example", problems, "name", "given", "facts", "expect");
        var name = keys.Text("name");
        var expect = keys.Require("expect") is { } node ? keys.Word(node, "expect", Outcomes) : null;
        var given = keys.Find("given") is { } value && fact is not null ? _values.Read(value, fact.Type, "the value of " + fact.Text)
            : null;
        var facts = keys.Find("facts") is { } table && keys.Map(table, "facts", "a mapping of facts to values") is { } entries
            ? Facts(entries) : [];
        if (keys.Find("given") is null && keys.Find("facts") is null)
            problems.Error(map.At, "an example needs `given` or `facts`");
        return name is null || expect is null ? null : new RuleExample(name, map.At, given, facts, StatusWords.Parse(expect));
    }

    private Dictionary<string, FactValue> Facts(YamlMap map)
    {
        var facts = new Dictionary<string, FactValue>(StringComparer.Ordinal);
        foreach (var entry in map.Entries)
        {
            if (scope.Find(entry.Key) is not { } declared)
                problems.Error(entry.KeyAt, scope.WhyNot(entry.Key));
            else if (_values.Read(entry.Value, declared.Type, declared.Meaning.TrimEnd('.')) is { } value)
                facts[entry.Key] = value;
        }
        return facts;
    }
}
