using FitCheck.Facts.Values;
using FitCheck.Foundation.Problems;
using FitCheck.Rules.Conditions;
using FitCheck.Rules.Conditions.Nodes;
using FitCheck.Rules.Model;
using FitCheck.Yaml;

namespace FitCheck.Rules.Files;

/// <summary>Reads `{ below: 3 mm, above: 20 mm }` or `{ is: splice }` and checks it against the type of the fact.</summary>
internal sealed class ThresholdReader(string key, FactType? type, FactScope scope, ProblemList problems)
{
    public Threshold? Read(YamlMap map)
    {
        var keys = new RuleKeys(map, $"`{key}`", problems, "below", "above", "is");
        if (map.Entries.Count == 0)
            problems.Error(map.At, $"`{key}` needs `below`, `above` or `is`, or is the word `never`");
        foreach (var entry in map.Entries.Where(
            e => type is { } t && e.Key is "below" or "above" or "is" && e.Key == "is" == (t.Kind == FactKind.Number)))
            problems.Error(entry.KeyAt,
                $"the fact is {TypeCheck.Found(type!.Value)}; "
                    + $"{(entry.Key == "is" ? "its threshold is `below` or `above`" : "its threshold is `is`")}");
        return new Threshold(map.At) { Below = Bound(keys, "below"), Above = Bound(keys, "above"), Is = [.. Values(keys)] };
    }

    private Expression? Bound(RuleKeys keys, string name) =>
        keys.Find(name) is { } node && keys.Scalar(node, name, "an expression") is { } text ? Checked(text) : null;

    // A word may stand without its quotes: `is: splice`, or several: `is: [splice, none]`.
    private IEnumerable<Expression> Values(RuleKeys keys)
    {
        IReadOnlyList<YamlNode> nodes = keys.Find("is") switch { null => [], YamlList list => list.Items, var one => [one] };
        return nodes.Select(n => keys.Scalar(n, "is", "a value")).OfType<YamlScalar>()
            .Select(text => IsBareWord(text) ? Expression.OfWord(text) : Checked(text)).OfType<Expression>();
    }

    private bool IsBareWord(YamlScalar text) =>
        type?.Kind == FactKind.Word && !text.Text.Contains('"', StringComparison.Ordinal) && scope.Find(text.Text)?.Type != FactType.Word;

    private Expression? Checked(YamlScalar text)
    {
        if (Expression.Read(text, scope, problems) is not { } bound)
            return null;
        if (type is not { } wanted || bound.Type == wanted)
            return bound;
        problems.Error(text.At, $"the fact is {TypeCheck.Found(wanted)}, but this limit is {TypeCheck.Found(bound.Type)}");
        return null;
    }
}
