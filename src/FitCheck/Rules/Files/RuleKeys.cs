using FitCheck.Foundation.Problems;
using FitCheck.Yaml;

namespace FitCheck.Rules.Files;

/// <summary>Reads the keys of one mapping of a rule file and tells those that are unknown or missing.</summary>
internal sealed class RuleKeys
{
    private readonly YamlMap _map;
    private readonly string _owner;
    private readonly ProblemList _problems;

    /// <param name="map">The mapping.</param>
    /// <param name="owner">What it is, with its article: "a rule".</param>
    /// <param name="problems">Where problems go.</param>
    /// <param name="keys">Every key that it may have.</param>
    public RuleKeys(YamlMap map, string owner, ProblemList problems, params string[] keys)
    {
        (_map, _owner, _problems) = (map, owner, problems);
        foreach (var entry in map.Entries.Where(e => !keys.Contains(e.Key, StringComparer.Ordinal)))
            problems.Error(entry.KeyAt, $"`{entry.Key}` is no key of {owner}{Nearest.Hint(entry.Key, keys)}");
    }

    public YamlNode? Find(string key) => _map[key];

    /// <summary>The value of a key that must be there.</summary>
    public YamlNode? Require(string key)
    {
        if (_map[key] is { } node)
            return node;
        _problems.Error(_map.At, $"{_owner} needs the key `{key}`");
        return null;
    }

    /// <summary>A text that must be there and not be empty.</summary>
    public string? Text(string key) => Require(key) is { } node ? TextOf(node, key) : null;

    /// <summary>A text that may be left out, but not be empty.</summary>
    public string? OptionalText(string key) => Find(key) is { } node ? TextOf(node, key) : null;

    /// <summary>The scalar of a key, when it has one; another kind of value is told.</summary>
    public YamlScalar? Scalar(YamlNode node, string key, string expected = "text")
    {
        if (node is YamlScalar scalar && !string.IsNullOrWhiteSpace(scalar.Text))
            return scalar;
        _problems.Error(node.At, $"`{key}` of {_owner} needs {expected}, found {(node is YamlScalar ? "nothing" : node.Kind)}");
        return null;
    }

    public YamlMap? Map(YamlNode node, string key, string expected)
    {
        if (node is YamlMap map)
            return map;
        _problems.Error(node.At, $"`{key}` of {_owner} needs {expected}, found {node.Kind}");
        return null;
    }

    public IReadOnlyList<YamlNode> List(YamlNode? node, string key)
    {
        if (node is YamlList list)
            return list.Items;
        if (node is not null)
            _problems.Error(node.At, $"`{key}` of {_owner} needs a list, found {node.Kind}");
        return [];
    }

    /// <summary>A word out of a few.</summary>
    public string? Word(YamlNode node, string key, IReadOnlyList<string> words)
    {
        if (Scalar(node, key, "one of " + string.Join(", ", words)) is not { } scalar)
            return null;
        if (words.Contains(scalar.Text, StringComparer.Ordinal))
            return scalar.Text;
        _problems.Error(scalar.At,
            $"`{key}` of {_owner} is one of {string.Join(", ", words)}, not `{scalar.Text}`{Nearest.Hint(scalar.Text, words)}");
        return null;
    }

    private string? TextOf(YamlNode node, string key) => Scalar(node, key)?.Text.Trim();
}
