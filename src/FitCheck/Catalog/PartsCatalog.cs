using System.Collections.Concurrent;
using System.Text;
using FitCheck.Foundation.Problems;
using FitCheck.Schemas;
using FitCheck.Yaml;

namespace FitCheck.Catalog;

/// <summary>What exists: vehicles and parts by id. Entries are parsed when first asked for, on any thread.</summary>
internal sealed class PartsCatalog : ICatalogIndex
{
    private readonly CatalogFiles _files;
    private readonly ConcurrentDictionary<string, Entry?> _entries = new(StringComparer.Ordinal);
    private readonly ProblemList _problems;
    private readonly HashSet<string> _taken = new(StringComparer.Ordinal);
    // What a build has read of some of them; null in the catalog itself.
    private IReadOnlyDictionary<string, Entry>? _asRead;
    private IReadOnlyList<string>? _ids;
    private Dictionary<string, List<(string Id, EntryText Text)>>? _kinds;

    private PartsCatalog(CatalogFiles files, ProblemList problems) => (_files, _problems) = (files, problems);

    /// <summary>SHA-256 over the catalog's files, hexadecimal.</summary>
    public string Digest => _files.Digest;

    /// <summary>All ids, in ordinal order.</summary>
    public IReadOnlyList<string> Ids => _ids ??= [.. _files.ById.Keys.Order(StringComparer.Ordinal)];

    /// <summary>
    /// Opens the catalog in one or more folders; later ones overlay earlier ones. Problems with single entries show up when they are read.
    /// </summary>
    public static PartsCatalog Open(IReadOnlyList<string> folders, ProblemList problems) =>
        new(CatalogFiles.Read(folders, problems), problems);

    /// <summary>Ids of one kind, in ordinal order.</summary>
    public IEnumerable<string> IdsOf(string kind) => Of(kind).Select(e => e.Id);

    /// <summary>
    /// Ids of one kind whose text may have one of the words, or lacks a key, in ordinal order; the others surely have the key and none of
    /// the words. Nothing is parsed.
    /// </summary>
    internal IEnumerable<string> IdsMentioning(string kind, IReadOnlyList<string> words, string? orWithout = null)
    {
        var key = orWithout is null ? null : Encoding.UTF8.GetBytes(orWithout + ":");
        byte[][] written = [.. words.Select(Encoding.UTF8.GetBytes)];
        return Of(kind).Where(e => Array.Exists(written, w => e.Text.MayHave(w)) || (key is not null && !e.Text.HasKey(key)))
            .Select(e => e.Id);
    }

    /// <summary>How many lines the text of each of these entries shares with any of some others of their kind. Nothing is parsed.</summary>
    internal int[] SharedLines(IReadOnlyList<string> ids, string kind, IEnumerable<string> others)
    {
        var known = new HashSet<ulong>();
        foreach (var other in others.Where(id => KindOf(id) == kind))
            _files.ById[other].CountLines(known, add: true);
        var shared = new int[ids.Count];
        Parallel.For(0, shared.Length, i => shared[i] = _files.ById[ids[i]].CountLines(known));
        return shared;
    }

    /// <summary>The kind of an id, or null when the catalog has none.</summary>
    public string? KindOf(string id) => _files.ById.GetValueOrDefault(id)?.Kind;

    /// <summary>This catalog with some entries as a build has read them.</summary>
    internal PartsCatalog With(IReadOnlyDictionary<string, Entry> asRead)
    {
        if (asRead.Count == 0)
            return this;
        var copy = (PartsCatalog)MemberwiseClone();
        copy._asRead = asRead;
        return copy;
    }

    /// <summary>The entry with this id, or null when there is none or it can't be read.</summary>
    public Entry? Find(string id)
    {
        if (_asRead?.TryGetValue(id, out var own) == true)
            return own;
        if (_entries.TryGetValue(id, out var entry))
            return entry;
        // Problems are told once.
        lock (_problems)
            return _entries.TryGetValue(id, out entry) ? entry : _entries[id] = Load(id, null, _problems);
    }

    /// <summary>Those of these entries that can be read, in the same order; what was not read before is, on all processors.</summary>
    internal IReadOnlyList<Entry> FindAll(IReadOnlyList<string> ids)
    {
        IReadOnlyList<string> unread = [.. ids.Where(id => !_entries.ContainsKey(id))];
        var read = new (Entry? Entry, ProblemList Problems)[unread.Count];
        Parallel.For(0, read.Length, i =>
        {
            var own = new ProblemList();
            read[i] = (Load(unread[i], null, own), own);
        });
        // Several may come here at once with the same entries; each is told, and known, once.
        lock (_problems)
        {
            for (var i = 0; i < read.Length; i++)
            {
                if (_entries.TryAdd(unread[i], read[i].Entry))
                    _problems.AddRange(read[i].Problems.All);
            }
        }
        return [.. ids.Select(Find).OfType<Entry>()];
    }

    /// <summary>
    /// The same of very many entries, of which those that nobody asked for before are not kept: each is read again
    /// whenever it is asked for.
    /// </summary>
    /// <param name="ids">Their ids.</param>
    /// <param name="cancel">Looked at between two entries.</param>
    internal IReadOnlyList<Entry> InPassing(IReadOnlyList<string> ids, CancellationToken cancel = default)
    {
        var read = new Entry?[ids.Count];
        Parallel.For(0, read.Length, new ParallelOptions { CancellationToken = cancel }, i => read[i] = InPassing(ids[i]));
        return [.. read.OfType<Entry>()];
    }

    /// <summary>The entry with this id, or null when there is none or it can't be read; it is not kept for the next who asks.</summary>
    internal Entry? InPassing(string id) =>
        _asRead?.TryGetValue(id, out var own) == true ? own : _entries.TryGetValue(id, out var entry) ? entry
            : Load(id, null, new ProblemList());

    /// <summary>The entry as it is written; null when there is none.</summary>
    internal YamlNode? Written(string id) => _files.ById.GetValueOrDefault(id)?.Parse(_problems);

    /// <summary>
    /// The part or vehicle of a given type; a reference to nothing or to the wrong kind is told as a problem at the place of the reference.
    /// Of an entry of the right kind that can't be read the catalog itself tells.
    /// </summary>
    public T? Resolve<T>(Located<string>? reference, string kind, ProblemList problems) where T : Entry
    {
        if (reference is null)
            return null;
        if (Find(reference.Value) is T entry)
            return entry;
        if (KindOf(reference.Value) is var found && found != kind)
            problems.Error(reference.At, Missing(reference.Value, kind, found, IdsOf(kind)), ProblemKind.UnknownName);
        return null;
    }

    /// <summary>
    /// Takes over what was read of the entries that an earlier state of the same folders has in the same words at the same place.
    /// </summary>
    /// <param name="sound">That state, known to be valid.</param>
    internal void TakeOver(PartsCatalog sound)
    {
        foreach (var (id, text) in _files.ById)
        {
            if (sound._entries.TryGetValue(id, out var entry) && entry is not null && sound._files.ById.TryGetValue(id, out var before)
                && before.IsAs(text) && _taken.Add(id))
                _entries[id] = entry;
        }
    }

    /// <summary>Reads every entry against its schema, apart from those that were taken over, and follows every reference.</summary>
    /// <param name="schemas">What their form has to be.</param>
    /// <param name="progress">Told how many of how many were read.</param>
    /// <param name="keep">False to keep of each no more than others ask of it: whoever asks for it has it read again.</param>
    /// <param name="cancel">Looked at between two entries.</param>
    public void CheckAll(SchemaCheck schemas, Action<int, int>? progress = null, bool keep = true, CancellationToken cancel = default)
    {
        var count = 0;
        var problems = new ProblemList?[Ids.Count];
        var references = new IReadOnlyList<Reference>[Ids.Count];
        var articles = new IReadOnlyList<Located<string>>[Ids.Count];
        Parallel.For(0, problems.Length, new ParallelOptions { CancellationToken = cancel }, i =>
        {
            var own = new ProblemList();
            var entry = _taken.Contains(Ids[i]) ? _entries[Ids[i]] : Load(Ids[i], schemas, own);
            // What can't be read is told once, and places of vehicles are asked for again and again.
            if (keep || entry is null or Vehicle)
                _entries[Ids[i]] = entry;
            problems[i] = own.All.Any() ? own : null;
            references[i] = entry is null ? [] : [.. References.Of(entry)];
            articles[i] = (entry as Part)?.Articles ?? [];
            progress?.Invoke(Interlocked.Increment(ref count), problems.Length);
        });
        foreach (var own in problems.OfType<ProblemList>())
            _problems.AddRange(own.All);
        foreach (var reference in references.SelectMany(r => r))
            References.Check(reference, this, _problems);
        ArticleNumbers.Check(Ids.Select((id, i) => (id, articles[i])), _problems);
    }

    /// <summary>How many entries are kept as they were read.</summary>
    internal int Kept => _entries.Count;

    IEnumerable<string> ICatalogIndex.Ids => Ids;

    IReadOnlyList<string> ICatalogIndex.PositionsOf(string vehicle) => References.NamesIn(Find(vehicle));

    /// <summary>That an id leads to nothing, or to something else than is wanted.</summary>
    internal static string Missing(string id, string? wanted, string? found, IEnumerable<string> candidates) =>
        wanted is not null && found is not null && found != wanted
        ? $"`{id}` is {Article(found)}, expected {Article(wanted)}"
        : $"no {wanted ?? "part"} `{id}` in the catalog{Nearest.Hint(id, candidates)}";

    private IReadOnlyList<(string Id, EntryText Text)> Of(string kind)
    {
        if (_kinds is null)
        {
            var kinds = new Dictionary<string, List<(string, EntryText)>>(StringComparer.Ordinal);
            foreach (var id in Ids)
            {
                var text = _files.ById[id];
                if (!kinds.TryGetValue(text.Kind, out var those))
                    kinds[text.Kind] = those = [];
                those.Add((id, text));
            }
            _kinds = kinds;
        }
        return _kinds.TryGetValue(kind, out var entries) ? entries : [];
    }

    private Entry? Load(string id, SchemaCheck? schemas, ProblemList problems) =>
        _files.ById.TryGetValue(id, out var text) ? EntryReader.Read(text, id, schemas, problems) : null;

    /// <summary>`a driver`, `an amplifier`; `nothing` where nothing is written.</summary>
    internal static string Article(string kind) => kind.Length == 0 ? "nothing"
        : (kind[0] is 'a' or 'e' or 'i' or 'o' or 'u' ? "an " : "a ") + kind;
}
