using FitCheck.Catalog;
using FitCheck.Facts;
using FitCheck.Yaml;

namespace FitCheck;

/// <summary>
/// A catalog as lint sees it: a note of every entry. Files that look as they did are taken from the notes of an earlier run without being opened; of others,
/// entries whose text is the same; the rest are read, on all processors.
/// </summary>
internal sealed class LintedCatalog : ICatalogIndex
{
    private readonly Dictionary<string, EntryNote> _byId = new(StringComparer.Ordinal);
    private readonly List<(string Root, FileNotes Notes)> _files = [];
    private readonly List<Pending> _pending = [];
    private readonly ProblemList _problems;

    private readonly List<TakenId> _taken = [];
    private readonly LintNotes _before;

    private LintedCatalog(LintNotes before, ProblemList problems) => (_before, _problems) = (before, problems);

    /// <summary>True when a file is new, gone, or doesn't look as it did.</summary>
    public bool HasChanged { get; private set; }

    /// <summary>What the rules find across entries, when it had to be worked out.</summary>
    public IReadOnlyList<AcrossProblem>? Across { get; private set; }

    /// <summary>The notes of this run.</summary>
    public LintNotes Notes => new(_files.Select(f => f.Notes).DistinctBy(n => n.Path, StringComparer.Ordinal).ToDictionary(n => n.Path, StringComparer.Ordinal), Across);

    public IEnumerable<string> Ids => _byId.Keys;

    public int Count => _byId.Count;

    /// <summary>Everything that the notes rest on, as one digest.</summary>
    public string Digest => Remembered.Key(_files.Select(f => System.Text.Encoding.UTF8.GetBytes(f.Notes.Path + string.Concat(f.Notes.Entries.Select(e => e.Digest)))));

    public string? KindOf(string id) => _byId.GetValueOrDefault(id)?.Kind;

    public IReadOnlyList<string> PositionsOf(string vehicle) => _byId.GetValueOrDefault(vehicle)?.Positions ?? [];

    /// <summary>Reads the folders; later ones overlay earlier ones.</summary>
    /// <param name="roots">The folders.</param>
    /// <param name="before">Notes of an earlier run.</param>
    /// <param name="examine">Makes the note of an entry; asked by several threads.</param>
    /// <param name="problems">Where files that can't be read and ids that are taken are told.</param>
    public static LintedCatalog Read(IReadOnlyList<string> roots, LintNotes before, Func<string, EntryText, EntryNote> examine, ProblemList problems)
    {
        var catalog = new LintedCatalog(before, problems);
        var now = FileStamp.Now();
        var same = 0;
        foreach (var root in roots)
        {
            if (!Directory.Exists(root))
            {
                problems.Error(new Location(ShownPath.Of(root), 0, 0), "no such catalog folder", ProblemKind.Unreadable);
                continue;
            }
            foreach (var (kind, path) in CatalogFiles.In(root))
                same += catalog.Take(root, kind, path, before.Files.GetValueOrDefault(path), now) ? 1 : 0;
        }
        catalog.Examine(examine);
        // What was read is not needed any more.
        catalog._pending.Clear();
        catalog.Index();
        catalog.HasChanged = same < before.Files.Count || same < catalog._files.Count;
        return catalog;
    }

    /// <summary>Tells what is wrong with the form of each entry, and with what they say of each other.</summary>
    public void Tell()
    {
        foreach (var note in _byId.Values)
            _problems.AddRange(note.Problems);
        foreach (var taken in _taken)
            CatalogFiles.Tell(taken, _problems);
        foreach (var reference in _byId.Values.SelectMany(n => n.References))
            References.Check(reference, this, _problems);
    }

    /// <summary>What the rules find implausible: in each entry alone, as known; and across entries, which is worked out anew for what has changed.</summary>
    /// <param name="judge">The rules; not asked for when nothing has changed.</param>
    public IEnumerable<Problem> Judged(Lazy<EntryJudge> judge)
    {
        var sound = _byId.Values.Where(n => !n.IsMalformed).ToList();
        var alone = sound.SelectMany(n => n.Judged);
        if (HasChanged || _before.Across is null)
        {
            var rules = judge.Value;
            IEnumerable<Problem> links = [.. Together(sound, n => n.References.SelectMany(r => rules.Of(ReferenceFacts.Of(r, n.Id, n.Name, this)))),
                .. _taken.SelectMany(t => rules.Of(EntryFacts.Of(t)))];
            Across = [.. links.Select(p => new AcrossProblem(null, p)), .. OfClasses([.. sound.SelectMany(n => n.Samples)], judge.Value)];
        }
        return alone.Concat((Across ?? _before.Across!).Select(a => a.Problem));
    }

    // A class is judged anew when a figure in it is new, gone or changed; what was found of the others stands.
    private IEnumerable<AcrossProblem> OfClasses(IReadOnlyList<FigureSample> samples, EntryJudge judge)
    {
        var stands = _before.Across ?? [];
        var classes = new HashSet<FigureClass>();
        if (_before.Across is not null)
        {
            var changed = new HashSet<FigureSample>(_before.Files.Values.SelectMany(f => f.Entries).SelectMany(e => e.Note.Samples), ReferenceEqualityComparer.Instance);
            changed.SymmetricExceptWith(samples);
            classes.UnionWith(changed.Select(s => s.Within));
            samples = [.. samples.Where(s => classes.Contains(s.Within))];
        }
        var found = Together(FigureFacts.ByClass(samples), c => c().SelectMany(t => judge.Of(t).Select(p => new AcrossProblem(new FigureClass(t.Values["figure"].Word!, t.Values["class_name"].Word!), p))));
        return stands.Where(a => a.Class is { } own && !classes.Contains(own)).Concat(found);
    }

    // On all processors, and told in the order of the items.
    private static IEnumerable<TFound> Together<T, TFound>(IReadOnlyList<T> items, Func<T, IEnumerable<TFound>> find)
    {
        var found = new TFound[items.Count][];
        Parallel.For(0, found.Length, i => found[i] = [.. find(items[i])]);
        return found.SelectMany(f => f);
    }

    // True when the file looks as it did.
    private bool Take(string root, string kind, string path, FileNotes? known, long now)
    {
        var stamp = FileStamp.Of(path);
        if (known is not null && known.Stamp is not null && known.Stamp == stamp && known.Kind == kind)
        {
            _files.Add((root, known));
            return true;
        }
        var name = ShownPath.Of(path);
        if (CatalogFiles.Bytes(path, name, _problems) is not { } bytes)
            return false;
        var before = (known?.Kind == kind ? known.Entries : []).GroupBy(e => e.Digest, StringComparer.Ordinal).ToDictionary(g => g.Key, g => g.First().Note, StringComparer.Ordinal);
        var entries = new List<(string, EntryNote)>();
        foreach (var text in EntryText.Of(kind, name, bytes))
        {
            // Where nothing is known the digest has time until the entry is read.
            var digest = before.Count > 0 ? FileNotes.DigestOf(text) : null;
            var note = digest is null ? null : before.GetValueOrDefault(digest)?.At(new Location(name, text.Line, 1));
            if (note is null)
                _pending.Add(new Pending(entries, entries.Count, text, path, digest));
            entries.Add((digest!, note!));
        }
        _files.Add((root, new FileNotes(path, kind, stamp?.IsSettled(now) == true ? stamp : null, entries)));
        return false;
    }

    // What the entries say is put in its place by number, so that the order in which threads finish doesn't show.
    private void Examine(Func<string, EntryText, EntryNote> examine)
    {
        try
        {
            if (_pending.Count < 4)
                _pending.ForEach(p => p.Put(examine));
            else
                Parallel.ForEach(_pending, p => p.Put(examine));
        }
        catch (AggregateException e) when (e.InnerExceptions.Any(inner => inner is HandOverException))
        {
            throw new HandOverException();
        }
    }

    private void Index()
    {
        var here = new Dictionary<string, (EntryNote Note, string Root)>(StringComparer.Ordinal);
        foreach (var (root, file) in _files)
        {
            foreach (var (_, note) in file.Entries)
            {
                if (here.TryGetValue(note.Id, out var first) && first.Root == root)
                    _taken.Add(new TakenId(note.Id, note.IdAt, first.Note.Place.File));
                else
                    (here[note.Id], _byId[note.Id]) = ((note, root), note);
            }
        }
    }

    private sealed record Pending(List<(string Digest, EntryNote Note)> Entries, int Index, EntryText Text, string Path, string? Digest)
    {
        public void Put(Func<string, EntryText, EntryNote> examine)
        {
            var note = examine(CatalogFiles.IdOf(Text, Path), Text);
            // Two entries of one list never share a place, so no two threads write the same one.
            Entries[Index] = (Digest ?? FileNotes.DigestOf(Text), note);
        }
    }
}
