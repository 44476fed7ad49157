using FitCheck.Builds;
using FitCheck.Catalog;
using FitCheck.Facts;
using FitCheck.Facts.Values;
using FitCheck.Findings;
using FitCheck.Foundation.Files;
using FitCheck.Foundation.Problems;
using FitCheck.Rules;
using FitCheck.Rules.Model;
using FitCheck.Rules.Verdicts;
using FitCheck.Yaml;

namespace FitCheck.Tests.Facts;

/// <summary>One reference build, judged in memory with each of its data left out in turn.</summary>
internal sealed class DroppedData
{
    // Names and remarks; what an entry or a position is; and which one has the data.
    private static readonly HashSet<string> Told = new(
        ["id", "kind", "name", "notes", "source", "provenance", "mirror_of", "contains", "role"], StringComparer.Ordinal);

    // What a build records; all else that it says is chosen.
    private static readonly HashSet<string> Readings = new(
        ["length", "power_length", "ground_length", "fuse_distance", "box", "gain", "measured", "depth", "cutout", "grille_gap",
            "resistance"], StringComparer.Ordinal);

    private static readonly Lazy<RuleSet> Rules = new(
        () => RuleSet.Load([RepositoryRoot.Of("rules")], FactRegistry.Declarations, new ProblemList()));

    private readonly ChangedCatalog _changed = new();
    private readonly RuleNotes _notes = new();
    private readonly YamlNode _root;

    public DroppedData(string path) =>
        _root = YamlReader.Read(new SourceText(path, File.ReadAllText(path)), new ProblemList())!;

    /// <summary>What was left out, and what each rule says at each place with it and without.</summary>
    public IEnumerable<(string What, IReadOnlyDictionary<(string, string), Status> Before,
        IReadOnlyDictionary<(string, string), Status> After)> Drops()
    {
        var before = Judged(_root)!;
        foreach (var (key, without) in Without(_root, ChangedCatalog.Required("build"), [], Readings))
        {
            if (Judged(without) is { } after)
                yield return ($"build {key}", before, after);
        }
        foreach (var id in Named().Where(id => _changed.Catalog.Find(id) is not null).ToList())
        {
            var required = ChangedCatalog.Required(_changed.Catalog.KindOf(id)!);
            foreach (var (key, without) in Without(_changed.Catalog.Written(id)!, required, [], null))
            {
                if (_changed.Put(id, without) && Judged(_root) is { } after)
                    yield return ($"{id} {key}", before, after);
            }
            _changed.PutBack(id);
        }
    }

    /// <summary>What was left out, and all that is then to be measured.</summary>
    public IEnumerable<(string What, IReadOnlyList<ToMeasure> Asked)> Questions(int oneOf)
    {
        var count = 0;
        foreach (var id in Named().Where(id => _changed.Catalog.Find(id) is not null).ToList())
        {
            var required = ChangedCatalog.Required(_changed.Catalog.KindOf(id)!);
            foreach (var (key, without) in Without(_changed.Catalog.Written(id)!, required, [], null))
            {
                if (count++ % oneOf == 0 && _changed.Put(id, without)
                    && BuildReader.Read(_root, _changed.Catalog, new ProblemList()) is { } build)
                    yield return ($"{id} {key}", [.. FactRegistry.Of(build with { Written = Now },
                        Shopping.List(build), Rules.Value.Practice).Tables
                        .Where(t => !t.Subject.IsOfEntries())
                        .SelectMany(t => Rules.Value.Rules.Where(r => r.Subject == t.Subject)
                            .Select(r => Judge.Evaluate(r, t, "build")).OfType<Finding>().SelectMany(f => f.ToMeasure)).Distinct()]);

                YamlMap? Now(string other) => (other == id ? without : _changed.Catalog.Written(other)) as YamlMap;
            }
            _changed.PutBack(id);
        }
    }

    // Rules of entries ask whether an entry contradicts itself: one that says less does so less.
    private Dictionary<(string, string), Status>? Judged(YamlNode root)
    {
        var problems = new ProblemList();
        if (BuildReader.Read(root, _changed.Catalog, problems) is not { } build || problems.HasErrors)
            return null;
        var said = new Dictionary<(string, string), Status>();
        foreach (var table in FactRegistry.Of(build, Shopping.List(build),
            Rules.Value.Practice).Tables.Where(t => !t.Subject.IsOfEntries()))
        {
            _notes.Turn(table);
            foreach (var rule in Rules.Value.Rules.Where(r => r.Subject == table.Subject))
            {
                if (_notes.Judge(rule) is { } verdict)
                    said[(rule.Id, table.Key)] = verdict.Status;
            }
        }
        return said;
    }

    private IEnumerable<string> Named()
    {
        var ids = ChangedCatalog.Scalars(_root).Select(s => s.Text).ToList();
        // A set stands for what is in it, a vehicle for its radio.
        foreach (var id in ids.ToList())
        {
            if (_changed.Catalog.Find(id) is ComponentSet set)
                ids.AddRange(new[] { set.Woofer?.Value, set.Tweeter?.Value, set.Crossover?.Value }.OfType<string>());
            else if (_changed.Catalog.Find(id) is Vehicle { FactorySource: { } source })
                ids.Add(source.Value);
        }
        return ids.Distinct(StringComparer.Ordinal);
    }

    // Every document that lacks one datum, with the key of that datum.
    private static IEnumerable<(string Key, YamlNode Root)> Without(YamlNode node, HashSet<string> required, string[] above,
        HashSet<string>? only)
    {
        switch (node)
        {
            case YamlMap map:
                // What a mirrored position does not write stands at the other side.
                for (var i = 0; i < map.Entries.Count && map["mirror_of"] is null; i++)
                {
                    var (index, entry) = (i, map.Entries[i]);
                    if (Told.Contains(entry.Key) || IsElement(above))
                        continue;
                    string[] path = [.. above, entry.Key];
                    foreach (var (key, inner) in Without(entry.Value, required, path, only))
                        yield return (key,
                            map with { Entries = [.. map.Entries.Select((e, n) => n == index ? e with { Value = inner } : e)] });
                    if (!required.Contains(entry.Key) && only?.Contains(entry.Key) != false)
                        yield return (string.Join('.', path), map with { Entries = [.. map.Entries.Where((_, n) => n != index)] });
                }
                break;
            case YamlList list:
                for (var i = 0; i < list.Items.Count; i++)
                {
                    var index = i;
                    string[] path = [.. above, (list.Items[i] as YamlMap)?["id"] is YamlScalar id ? id.Text : $"{i}"];
                    foreach (var (key, inner) in Without(list.Items[i], required, path, only))
                        yield return (key, list with { Items = [.. list.Items.Select((e, n) => n == index ? inner : e)] });
                }
                break;
        }
    }

    // An element of a network that lacks one of its parts is another element.
    private static bool IsElement(string[] above) => above is [.., "low_pass" or "high_pass" or "network", _];
}
