using FitCheck.Rules.Model;

namespace FitCheck.Impacts;

/// <summary>Compares the entries of two catalogs, and their rules.</summary>
internal static class EntryDifferences
{
    /// <summary>In order of kind and id. An entry that only reads differently to a person is not told.</summary>
    public static IReadOnlyList<EntryChange> Entries(InputState from, InputState to)
    {
        var (before, after) = (from.Workshop.Catalog, to.Workshop.Catalog);
        var changes = new List<EntryChange>();
        foreach (var id in before.Ids.Union(after.Ids, StringComparer.Ordinal))
        {
            var (was, now) = (before.Written(id), after.Written(id));
            if (was is not null && now is not null && before.KindOf(id) == after.KindOf(id))
            {
                var keys = KeyDifferences.Of(was, now, from.Shown, to.Shown);
                if (keys.Count > 0)
                    changes.Add(new EntryChange(Change.Altered, after.KindOf(id)!, id, keys, to.Shown(now.At)));
                continue;
            }
            if (was is not null)
                changes.Add(new EntryChange(Change.Removed, before.KindOf(id)!, id, [], from.Shown(was.At)));
            if (now is not null)
                changes.Add(new EntryChange(Change.Added, after.KindOf(id)!, id, [], to.Shown(now.At)));
        }
        return [.. changes.OrderBy(c => c.Kind, StringComparer.Ordinal).ThenBy(c => c.Id, StringComparer.Ordinal)];
    }

    /// <summary>In order of the rules' ids.</summary>
    public static IReadOnlyList<RuleEdit> Rules(InputState from, InputState to)
    {
        var (before, after) = (from.Rules, to.Rules);
        var edits = new List<RuleEdit>();
        foreach (var rule in after.Rules)
        {
            if (before.Find(rule.Id) is not { } was)
                edits.Add(new RuleEdit(Change.Added, rule.Id, rule.Title,
                    $"warns {rule.Warn?.ToString() ?? "never"}, fails {rule.Fail?.ToString() ?? "never"}", to.Shown(rule.At)));
            else if (Keys(was, rule, from, to) is { Count: > 0 } keys)
                edits.Add(new RuleEdit(Change.Altered, rule.Id, rule.Title, RuleDifferences.Changed(was, rule, "", rule.At).What,
                    keys[0].At));
        }
        edits.AddRange(
            before.Rules.Where(r => after.Find(r.Id) is null)
                .Select(r => new RuleEdit(Change.Removed, r.Id, r.Title, "no longer asked", from.Shown(r.At))));
        return [.. edits.OrderBy(e => e.Rule, StringComparer.Ordinal)];
    }

    // Limits first: they are what a reviewer looks for.
    private static List<KeyChange> Keys(Rule was, Rule now, InputState from, InputState to) =>
        [.. KeyDifferences.Of(was.Written, now.Written, from.Shown, to.Shown)
            .Where(k => !k.Path.StartsWith("examples", StringComparison.Ordinal))
            .OrderBy(k => k.Path.Split('.')[0] is "warn" or "fail" ? 0 : k.Path is "fact" or "when" ? 1 : 2)];
}
