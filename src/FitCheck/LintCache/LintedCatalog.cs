using System.Collections.Concurrent;
using FitCheck.Catalog;
using FitCheck.Evaluation;
using FitCheck.Facts.Entries;
using FitCheck.Foundation;
using FitCheck.Foundation.Files;
using FitCheck.Foundation.Problems;

namespace FitCheck.LintCache;

/// <summary>
/// A catalog as lint sees it: a note of every entry. Files that look as they did are taken from the notes of an earlier run without being
/// opened; of others, entries whose text is the same; the rest are read, on all processors.
/// </summary>
internal sealed class LintedCatalog : ICatalogIndex
{
    private const int FewFiles = 4;
    private const int FewFigures = 5_000;
    private const long FewBytes = 100_000;

    private readonly Dictionary<string, CachedEntry> _byId = new(StringComparer.Ordinal);
    private readonly List<(string Root, CachedFile Notes)> _files = [];
    // Asked by several threads: references are judged on all processors.
    private readonly ConcurrentDictionary<string, IReadOnlyList<string>> _positions = new(StringComparer.Ordinal);
    private readonly ProblemList _problems;
    private readonly List<TakenId> _taken = [];
    private readonly CachedLint _before;
    private bool _overlays;

    private LintedCatalog(CachedLint before, ProblemList problems) => (_before, _problems) = (before, problems);

    /// <summary>True when a file is new, gone, or doesn't look as it did.</summary>
    public bool HasChanged { get; private set; }

    /// <summary>What the rules find across entries, when it had to be worked out.</summary>
    public IReadOnlyList<CrossEntryProblem>? Across { get; private set; }

    /// <summary>The notes of this run.</summary>
    public CachedLint Notes =>
        new(_files.Select(f => f.Notes).DistinctBy(n => n.Path, StringComparer.Ordinal).ToDictionary(n => n.Path, StringComparer.Ordinal),
            _before.Classes, _overlays, Across);

    public IEnumerable<string> Ids => _byId.Keys;

    public int Count => _byId.Count;

    /// <summary>Everything that the notes rest on, as one digest.</summary>
    public string Digest =>
        ValidationCache.Key(
            _files.Select(f => System.Text.Encoding.UTF8.GetBytes(f.Notes.Path + string.Concat(f.Notes.All.Select(e => e.Digest)))));

    public string? KindOf(string id) => _byId.TryGetValue(id, out var entry) ? entry.File.Kind : null;

    public IReadOnlyList<string> PositionsOf(string vehicle) =>
        _positions.GetOrAdd(vehicle, id => _byId.TryGetValue(id, out var entry) ? entry.Open(_before.Classes).Positions : []);

    /// <summary>Reads the folders; later ones overlay earlier ones.</summary>
    /// <param name="roots">The folders.</param>
    /// <param name="before">Notes of an earlier run.</param>
    /// <param name="examine">Makes the note of an entry; asked by several threads.</param>
    /// <param name="problems">Where files that can't be read and ids that are taken are told.</param>
    public static LintedCatalog Read(IReadOnlyList<string> roots, CachedLint before, Func<string, EntryText, ExaminedEntry> examine,
        ProblemList problems)
    {
        var catalog = new LintedCatalog(before, problems);
        var files = new List<(string Root, CachedFile? Known, FileToLint? Unread)>();
        var now = FileStamp.Now();
        foreach (var root in roots)
        {
            if (!Directory.Exists(root))
            {
                problems.Error(new Location(ShownPath.Of(root), 0, 0), "no such catalog folder", ProblemKind.Unreadable);
                continue;
            }
            CatalogFiles.TellUnread(root, problems);
            foreach (var (kind, file) in CatalogFiles.In(root, problems))
            {
                var (known, stamp) = (before.Files.GetValueOrDefault(file.Path), FileStamp.Of(file.Look));
                known = known?.Kind == kind ? known : null;
                var unread = known?.Stamp is not null && known.Stamp == stamp ? null : new FileToLint(file.Path, kind, stamp, now, known);
                files.Add((root, known, unread));
            }
        }
        catalog.ReadNew([.. files.Select(f => f.Unread).OfType<FileToLint>()], examine);
        catalog._files.AddRange(
            files.Select(f => (f.Root, Notes: f.Unread is { } read ? read.Notes() : f.Known)).Where(f => f.Notes is not null)
                .Select(f => (f.Root, f.Notes!)));
        catalog.HasChanged = files.Exists(f => f.Unread is not null) || files.Count < before.Files.Count;
        catalog.Index();
        return catalog;
    }

    /// <summary>Tells what is wrong with the form of each entry, and with what they say of each other.</summary>
    public void Tell()
    {
        foreach (var entry in _byId.Values.Where(e => e.HasProblems))
            _problems.AddRange(entry.Open(_before.Classes).Problems);
        foreach (var taken in _taken)
            CatalogFiles.Tell(taken, _problems);
        foreach (var reference in _byId.Values.Where(e => e.HasReferences).SelectMany(e => e.Open(_before.Classes).References))
            References.Check(reference, this, _problems);
        ArticleNumbers.Check(
            _byId.Values.Where(e => e.HasArticles).Select(e => e.Open(_before.Classes)).OrderBy(e => e.Id, StringComparer.Ordinal)
                .Select(e => (e.Id, e.Articles)), _problems);
    }

    /// <summary>
    /// What the rules find implausible: in each entry alone, as known; and across entries, which is worked out anew for what has changed.
    /// </summary>
    /// <param name="judge">The rules; not asked for when nothing has changed.</param>
    public IEnumerable<Problem> Judged(Lazy<EntryJudge> judge)
    {
        var sound = _byId.Values.Where(e => !e.IsMalformed).ToList();
        if (HasChanged || _before.Across is null)
        {
            var changes = _before.Across is null || _overlays || _before.Overlays ? null
                : new CacheChanges(_before, [.. _files.Select(f => f.Notes)]);
            Across = [.. OfLinks(sound, changes, judge.Value), .. OfClasses(sound, changes, judge.Value)];
        }
        return [.. sound.Where(e => e.IsDoubted).SelectMany(e => e.Open(_before.Classes).Judged),
            .. (Across ?? _before.Across!).Select(a => a.Problem)];
    }

    // While the same ids stand for the same, a reference is judged anew where its own file has changed.
    private IEnumerable<CrossEntryProblem> OfLinks(List<CachedEntry> sound, CacheChanges? changes, EntryJudge rules)
    {
        var stands = changes is { SameIds: true };
        var asked = sound.Where(e => e.HasReferences && !(stands && changes!.IsKnown(e.File))).ToList();
        var found = Together(asked, asked.Count, e => Of(e.Open(_before.Classes)));
        var kept = stands
            ? _before.Across!.Where(
            a => a.Class is null && a.Problem.Subject is { } id && _byId.TryGetValue(id, out var of) && changes!.IsKnown(of.File)) : [];
        return [.. kept, .. found.Concat(_taken.SelectMany(t => rules.Of(EntryFacts.Of(t)))).Select(p => new CrossEntryProblem(null, p))];

        IEnumerable<Problem> Of(ExaminedEntry note) =>
            note.References
                .SelectMany(r => NamedFacts.Of(r, note.Id, note.Name, this).Prepend(ReferenceFacts.Of(r, note.Id, note.Name, this)))
                .SelectMany(rules.Of);
    }

    // A class is judged anew when a figure in it is new, gone or changed; what was found of the others stands.
    private IEnumerable<CrossEntryProblem> OfClasses(List<CachedEntry> sound, CacheChanges? changes, EntryJudge judge)
    {
        var classes = SampledClass.Of(sound, _before.Classes, changes?.Classes);
        var kept = changes is null ? [] : _before.Across!.Where(a => a.Class is { } own && !changes.Classes.Contains(own));
        return kept.Concat(
            Together(classes, classes.Sum(c => c.Count),
                c => judge.Of(c.Class, c.Facts()).Select(p => new CrossEntryProblem(c.Number, p))));
    }

    // On all processors where it is worth it, and told in the order of the items.
    private static IEnumerable<TFound> Together<T, TFound>(IReadOnlyList<T> items, int cost, Func<T, IEnumerable<TFound>> find)
    {
        if (cost < FewFigures)
            return items.SelectMany(find);
        var found = new TFound[items.Count][];
        HandedOver(() => Parallel.For(0, found.Length, i => found[i] = [.. find(items[i])]));
        return found.SelectMany(f => f);
    }

    private void ReadNew(List<FileToLint> files, Func<string, EntryText, ExaminedEntry> examine)
    {
        var blocks = files.SelectMany(f => f.Blocks(_problems));
        // A small file is read sooner than another thread gets going.
        if (files.Count >= FewFiles || files.Sum(f => f.Length) >= FewBytes)
        {
            ReadTogether(blocks, Read);
            return;
        }
        foreach (var block in blocks)
            Read(block);

        void Read((FileToLint File, int Number, EntryBlock Block) next) =>
            next.File.Read(next.Number, next.Block, examine, _before.Classes);
    }

    // The next block is read while others are looked at; no more of them are in memory than there are processors.
    private static void ReadTogether<T>(IEnumerable<T> blocks, Action<T> read) =>
        HandedOver(() => Parallel.ForEach(Partitioner.Create(blocks, EnumerablePartitionerOptions.NoBuffering), read));

    // What one thread can't do is not for the others either.
    private static void HandedOver(Action together)
    {
        try
        {
            together();
        }
        catch (AggregateException e) when (e.InnerExceptions.Any(inner => inner is HandOverException))
        {
            throw new HandOverException();
        }
    }

    private void Index()
    {
        foreach (var (root, file) in _files)
        {
            foreach (var entry in file.All)
            {
                var id = entry.Id;
                if (_byId.TryAdd(id, entry))
                    continue;
                _overlays = true;
                var first = _byId[id].File;
                if (_files.Exists(f => ReferenceEquals(f.Notes, first) && f.Root == root))
                    _taken.Add(new TakenId(id, entry.Open(_before.Classes).IdAt, first.Name));
                else
                    _byId[id] = entry;
            }
        }
    }
}
