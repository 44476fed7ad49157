using FitCheck.Foundation.Problems;
using FitCheck.Rules.Model;
using FitCheck.Yaml;

namespace FitCheck.Rules.Files;

/// <summary>
/// Reads a file that changes a rule of an earlier directory: `{ id, reason, off: true }`, or `{ id, reason }` with other limits, messages,
/// advice or examples. What it does not name stays as it was.
/// </summary>
internal sealed class RuleChangeReader
{
    private static readonly string[] Keys = ["id", "reason", "off", "warn", "fail", "message", "advice", "waive", "examples"];

    private readonly YamlMap _root;
    private readonly RuleKeys _keys;
    private readonly ProblemList _problems;

    private RuleChangeReader(YamlMap root, ProblemList problems)
    {
        (_root, _problems) = (root, problems);
        _keys = new RuleKeys(root, "a change of a rule", problems, Keys);
    }

    /// <summary>True when the file judges nothing itself but says why a rule is changed or switched off.</summary>
    public static bool IsChange(YamlNode root) =>
        root is YamlMap map && map["fact"] is null && (map["reason"] is not null || map["off"] is not null);

    /// <summary>
    /// The reason, and the rule's mapping as changed; no mapping when it is switched off; null when the file has a mistake.
    /// </summary>
    /// <param name="root">The root of the change.</param>
    /// <param name="before">The rule of the earlier directory; one that is never waived can't be switched off.</param>
    /// <param name="problems">Where mistakes are told.</param>
    public static (string Reason, YamlMap? Changed)? Read(YamlMap root, Rule before, ProblemList problems)
    {
        var own = new ProblemList(ProblemKind.BrokenRule);
        var reader = new RuleChangeReader(root, own);
        var reason = reader._keys.Text("reason");
        var off = reader.IsOff();
        if (off && root.Entries.FirstOrDefault(e => e.Key is not ("id" or "reason" or "off")) is { } extra)
            own.Error(extra.KeyAt, $"the rule is switched off, so `{extra.Key}` has no use; delete one of the two");
        if (off && !before.CanBeWaived)
            own.Error(root["off"]!.At, RuleStrictness.Unmoved(before, "can switch it off"));
        if (!off && !root.Entries.Any(e => e.Key is not ("id" or "reason" or "off")))
            own.Error(root.At, "this changes nothing; give `off: true`, or a limit in `warn` or `fail`");
        problems.AddRange(own.Sorted());
        return own.HasErrors || reason is null ? null : (reason, off ? null : reader.Merged(before.Written));
    }

    private bool IsOff()
    {
        if (_keys.Find("off") is not { } node || _keys.Scalar(node, "off", "`true`") is not { } scalar)
            return false;
        if (scalar.Text is "true" or "false")
            return scalar.Text == "true";
        _problems.Error(scalar.At, $"`off` is true or false, not `{scalar.Text}`");
        return false;
    }

    private YamlMap Merged(YamlMap before)
    {
        var entries = before.Entries.Select(e => e.Key switch
        {
            "id" => e,
            "message" => e with { Value = Messages(e.Value) },
            // Examples show the limits that they were written for.
            "examples" when _root["examples"] is null && (_root["warn"] ?? _root["fail"]) is not null =>
                e with { Value = new YamlList(_root.At, []) },
            _ => _root[e.Key] is { } value ? e with { Value = value } : e,
        });
        // A rule that could be waived has no such key.
        var added = _root.Entries.Where(e => e.Key == "waive" && before["waive"] is null);
        return before with { Entries = [.. entries, .. added] };
    }

    private YamlNode Messages(YamlNode before)
    {
        if (before is not YamlMap map)
            return before;
        var own = (_root["message"] as YamlMap)?.Entries ?? [];
        var kept = map.Entries.Where(e => !own.Any(o => o.Key == e.Key) && _root[e.Key] is not YamlScalar { Text: "never" });
        return map with { Entries = [.. kept, .. own] };
    }
}
