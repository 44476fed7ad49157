using System.Collections.Concurrent;
using System.Reflection;
using System.Text.Json;
using FitCheck.Catalog;
using FitCheck.Foundation.Problems;
using FitCheck.Yaml;

namespace FitCheck.Tests.Facts;

/// <summary>The repository's catalog, of which one entry at a time is read otherwise than it is written.</summary>
internal sealed class ChangedCatalog
{
    private static readonly ConcurrentDictionary<string, HashSet<string>> RequiredOf = new(StringComparer.Ordinal);
    private readonly ConcurrentDictionary<string, Entry?> _entries;

    public ChangedCatalog() => _entries = (ConcurrentDictionary<string, Entry?>)typeof(PartsCatalog).GetField("_entries",
        BindingFlags.NonPublic | BindingFlags.Instance)!.GetValue(Catalog)!;

    public PartsCatalog Catalog { get; } = PartsCatalog.Open([RepositoryRoot.Of("catalog")], new ProblemList());

    /// <summary>Reads an entry as it is written here, until it is put back; false where it can't be read so.</summary>
    public bool Put(string id, YamlNode written)
    {
        var problems = new ProblemList();
        if (EntryReader.Read(Catalog.KindOf(id)!, written, problems) is not { } changed || problems.HasErrors)
            return false;
        _entries[id] = changed;
        return true;
    }

    /// <summary>Reads it as the catalog has it again.</summary>
    public void PutBack(string id) => Put(id, Catalog.Written(id)!);

    /// <summary>Every scalar under a node.</summary>
    public static IEnumerable<YamlScalar> Scalars(YamlNode node) => node switch
    {
        YamlScalar scalar => [scalar],
        YamlMap map => map.Entries.SelectMany(e => Scalars(e.Value)),
        YamlList list => list.Items.SelectMany(Scalars),
        _ => [],
    };

    /// <summary>Every key that is required anywhere in the schema of a kind.</summary>
    public static HashSet<string> Required(string kind) => RequiredOf.GetOrAdd(kind, k =>
    {
        using var schema = JsonDocument.Parse(File.ReadAllText(RepositoryRoot.Of("catalog", "schema", k + ".schema.json")));
        return [.. In(schema.RootElement)];

        static IEnumerable<string> In(JsonElement element) => element.ValueKind switch
        {
            JsonValueKind.Object => element.EnumerateObject().SelectMany(
                p => p is { Name: "required", Value.ValueKind: JsonValueKind.Array }
                    ? p.Value.EnumerateArray().Select(v => v.GetString()!) : In(p.Value)),
            JsonValueKind.Array => element.EnumerateArray().SelectMany(In),
            _ => [],
        };
    });
}
