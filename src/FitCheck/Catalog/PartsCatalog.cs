using FitCheck.Schemas;
using FitCheck.Yaml;

namespace FitCheck.Catalog;

/// <summary>What exists: vehicles and parts by id. Entries are parsed when first asked for.</summary>
public sealed class PartsCatalog
{
    private readonly CatalogFiles _files;
    private readonly Dictionary<string, Entry?> _entries = new(StringComparer.Ordinal);
    private readonly ProblemList _problems;

    private PartsCatalog(CatalogFiles files, ProblemList problems) => (_files, _problems) = (files, problems);

    /// <summary>SHA-256 over the catalog's files, hexadecimal.</summary>
    public string Digest => _files.Digest;

    /// <summary>Files whose id another file has taken; they are left out.</summary>
    public IReadOnlyList<TakenId> Taken => _files.Taken;

    /// <summary>All ids, in ordinal order.</summary>
    public IEnumerable<string> Ids => _files.ById.Keys.Order(StringComparer.Ordinal);

    /// <summary>Opens the catalog in one or more folders; later ones overlay earlier ones. Problems with single entries show up when they are read.</summary>
    public static PartsCatalog Open(IReadOnlyList<string> folders, ProblemList problems) => new(CatalogFiles.Read(folders, problems), problems);

    /// <summary>Ids of one kind, in ordinal order.</summary>
    public IEnumerable<string> IdsOf(string kind) => Ids.Where(id => _files.ById[id].Kind == kind);

    /// <summary>The kind of an id, or null when the catalog has none.</summary>
    public string? KindOf(string id) => _files.ById.GetValueOrDefault(id)?.Kind;

    /// <summary>The entry with this id, or null when there is none or it can't be read.</summary>
    public Entry? Find(string id) => _entries.TryGetValue(id, out var entry) ? entry : _entries[id] = Load(id, null);

    /// <summary>The entry as it is written; null when there is none.</summary>
    internal YamlNode? Written(string id) =>
        _files.ById.TryGetValue(id, out var file) && SourceText.Decode(file.Name, file.Bytes, _problems) is { } source ? YamlReader.Read(source, _problems) : null;

    /// <summary>The part or vehicle of a given type; a reference to nothing or to the wrong kind is told as a problem at the place of the reference.</summary>
    public T? Resolve<T>(Located<string>? reference, string kind, ProblemList problems) where T : Entry
    {
        if (reference is null)
            return null;
        if (Find(reference.Value) is T entry)
            return entry;
        problems.Error(reference.At, KindOf(reference.Value) is { } other && other != kind
            ? $"`{reference.Value}` is {Article(other)}, expected {Article(kind)}"
            : $"no {kind} `{reference.Value}` in the catalog{Nearest.Hint(reference.Value, IdsOf(kind))}", ProblemKind.UnknownName);
        return null;
    }

    /// <summary>Reads every entry against its schema and follows every reference.</summary>
    public void CheckAll(SchemaCheck schemas, Action<int, int>? progress = null)
    {
        var count = 0;
        foreach (var id in Ids)
        {
            _entries[id] = Load(id, schemas);
            progress?.Invoke(++count, _files.ById.Count);
        }
        foreach (var id in Ids)
        {
            if (_entries[id] is { } entry)
                References.Check(entry, this, _problems);
        }
    }

    private Entry? Load(string id, SchemaCheck? schemas)
    {
        if (!_files.ById.TryGetValue(id, out var file))
            return null;
        if (SourceText.Decode(file.Name, file.Bytes, _problems) is not { } source || YamlReader.Read(source, _problems) is not { } root)
            return null;
        schemas?.Check(file.Kind, root, _problems);
        var entry = EntryReader.Read(file.Kind, root, _problems);
        if (entry is not null && entry.Id != id)
        {
            _problems.Error(entry.At, $"the id is `{entry.Id}`, but the file is named `{id}`; they must agree");
            return null;
        }
        return entry;
    }

    /// <summary>`a driver`, `an amplifier`.</summary>
    internal static string Article(string kind) => (kind[0] is 'a' or 'e' or 'i' or 'o' or 'u' ? "an " : "a ") + kind;
}
