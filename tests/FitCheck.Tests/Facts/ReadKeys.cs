using System.Globalization;
using System.Text.RegularExpressions;
using FitCheck.Builds;
using FitCheck.Catalog;
using FitCheck.Facts;
using FitCheck.Facts.Values;
using FitCheck.Foundation.Files;
using FitCheck.Foundation.Problems;
using FitCheck.Rules.Files;
using FitCheck.Yaml;

namespace FitCheck.Tests.Facts;

/// <summary>A key that a fact really reads: its value moves when the key is left out or its number changed.</summary>
internal sealed record ReadKey(Fact Fact, string Kind, string Key);

/// <summary>
/// Finds out which keys the facts of a build read, by trying: each datum of the build and of every entry that it names is left out and,
/// where it is a number, changed; whatever fact then has another value reads it.
/// </summary>
internal sealed partial class ReadKeys
{
    // Names and remarks are told, not reckoned with; what a position is must be written at it or at its mirror image; where a figure comes
    // from is asked of every figure.
    private static readonly HashSet<string> Told = new(
        ["id", "kind", "name", "notes", "source", "provenance", "at", "waive", "mirror_of", "role", "side", "place"],
        StringComparer.Ordinal);

    private readonly ChangedCatalog _changed = new();
    private readonly Dictionary<(string, string), int> _tried = [];
    private readonly int _most;

    /// <param name="most">In how many builds a datum of an entry is tried.</param>
    public ReadKeys(int most) => _most = most;

    /// <summary>The keys of one build without which some fact is another, or of another place: choices as well as data.</summary>
    public IEnumerable<string> MovingIn(string path)
    {
        var root = YamlReader.Read(new SourceText(path, File.ReadAllText(path)), new ProblemList())!;
        if (Values(root) is not { } before)
            yield break;
        foreach (var (key, other, _) in Changed(root, [], []))
        {
            if (Values(other) is { } after && (after.Count != before.Count
                || before.Any(b => !after.TryGetValue(b.Key, out var now) || now != b.Value)))
                yield return key;
        }
    }

    /// <summary>What the facts of one build read.</summary>
    public HashSet<ReadKey> Of(string path)
    {
        var found = new HashSet<ReadKey>();
        var root = YamlReader.Read(new SourceText(path, File.ReadAllText(path)), new ProblemList())!;
        if (Values(root) is not { } before)
            return found;
        // Which part is chosen, and what feeds what, is no datum.
        foreach (var (key, other, _) in Changed(root, ChangedCatalog.Required("build"), [])
            .Where(c => FirstNumber().IsMatch(c.Was) || c.Was is "true" or "false"))
            Compare("build", key, before, Values(other));
        foreach (var id in Named(root).Where(id => _changed.Catalog.Find(id) is not null).ToList())
        {
            var (kind, written) = (_changed.Catalog.KindOf(id)!, _changed.Catalog.Written(id)!);
            foreach (var (key, other, was) in Changed(written, ChangedCatalog.Required(kind), []))
            {
                if (_tried.GetValueOrDefault((id, key)) >= _most || IsName(was) || !_changed.Put(id, other))
                    continue;
                if (Values(root) is { } after)
                {
                    _tried[(id, key)] = _tried.GetValueOrDefault((id, key)) + 1;
                    Compare(key.StartsWith("positions.", StringComparison.Ordinal) ? "position" : kind,
                        key.StartsWith("positions.", StringComparison.Ordinal) ? key["positions.".Length..] : key, before, after);
                }
            }
            _changed.PutBack(id);
        }
        return found;

        void Compare(string kind, string key, Dictionary<(Fact, string), string> was, Dictionary<(Fact, string), string>? now)
        {
            foreach (var (fact, value) in was)
            {
                if (now is not null && now.TryGetValue(fact, out var other) && other != value)
                    found.Add(new ReadKey(fact.Item1, kind, key));
            }
        }
    }

    // What the facts are, without names and places; null for a build that can't be read so.
    private Dictionary<(Fact, string), string>? Values(YamlNode root)
    {
        var problems = new ProblemList();
        try
        {
            if (BuildReader.Read(root, _changed.Catalog, problems) is not { } build || problems.HasErrors)
                return null;
            var values = new Dictionary<(Fact, string), string>();
            foreach (var table in FactRegistry.Of(build, Shopping.List(build), PracticeReader.OfProgram).Tables)
            {
                foreach (var fact in Declared[table.Subject])
                    values[(fact, table.Key)] = table.Of(fact) is { } value ? Text(value) : "";
            }
            return values;
        }
        catch (FormatException)
        {
            return null;
        }
    }

    private static readonly ILookup<Subject, Fact> Declared = FactRegistry.Declarations.ToLookup(f => f.Subject);

    private static string Text(FactValue value) => string.Create(CultureInfo.InvariantCulture,
        $"{value.Number?.Value:R} {value.Number?.Low:R} {value.Number?.High:R} {value.Truth} {value.Word} "
        + $"{value.Unsure.Count} {value.IsEstimated}");

    private bool IsName(string text) =>
        _changed.Catalog.KindOf(text) is not null
            || _changed.Catalog.IdsOf("vehicle").Any(v => ((Vehicle)_changed.Catalog.Find(v)!).Positions.Any(p => p.Id == text));

    private static IEnumerable<string> Named(YamlNode root) =>
        ChangedCatalog.Scalars(root).Select(s => s.Text).Distinct(StringComparer.Ordinal);

    // Every document that differs in one datum, with the key of that datum and what it was.
    private static IEnumerable<(string Key, YamlNode Root, string Was)> Changed(YamlNode node, HashSet<string> required, string[] above)
    {
        switch (node)
        {
            case YamlMap map:
                for (var i = 0; i < map.Entries.Count; i++)
                {
                    var (index, entry) = (i, map.Entries[i]);
                    string[] path = [.. above, entry.Key];
                    if (Told.Contains(entry.Key))
                        continue;
                    foreach (var (key, inner, was) in Changed(entry.Value, required, path))
                        yield return (key,
                            map with { Entries = [.. map.Entries.Select((e, n) => n == index ? e with { Value = inner } : e)] }, was);
                    // Without what its schema asks for an entry would be none.
                    if (entry.Value is not YamlMap && !required.Contains(entry.Key))
                        yield return (string.Join('.', path), map with { Entries = [.. map.Entries.Where((_, n) => n != index)] },
                            (entry.Value as YamlScalar)?.Text ?? "");
                }
                break;
            case YamlList list:
                for (var i = 0; i < list.Items.Count; i++)
                {
                    var index = i;
                    foreach (var (key, inner, was) in Changed(list.Items[i], required, above))
                        yield return (key, list with { Items = [.. list.Items.Select((e, n) => n == index ? inner : e)] }, was);
                }
                break;
            case YamlScalar scalar when FirstNumber().Match(scalar.Text) is { Success: true } number:
                var other = (double.Parse(number.Value, CultureInfo.InvariantCulture) * 1.25).ToString("0.####",
                    CultureInfo.InvariantCulture);
                yield return (string.Join('.', above), scalar with { Text = other + scalar.Text[number.Length..] }, scalar.Text);
                break;
            case YamlScalar { Quoted: false, Text: "true" or "false" } truth:
                yield return (string.Join('.', above), truth with { Text = truth.Text == "true" ? "false" : "true" }, truth.Text);
                break;
        }
    }

    [GeneratedRegex(@"^-?[0-9]+(?:\.[0-9]+)?")]
    private static partial Regex FirstNumber();
}
