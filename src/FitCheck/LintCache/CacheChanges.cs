namespace FitCheck.LintCache;

/// <summary>
/// What two states of the notes differ in, as far as what is found across entries depends on it. No id may stand for several entries in
/// either.
/// </summary>
internal sealed class CacheChanges
{
    private readonly CachedLint _before;

    public CacheChanges(CachedLint before, IReadOnlyCollection<CachedFile> now)
    {
        _before = before;
        var changed = now.Where(f => !IsKnown(f)).ToList();
        var files = now.Select(f => f.Path).ToHashSet(StringComparer.Ordinal);
        var gone = before.Files.Values.Where(f => !files.Contains(f.Path)).ToList();
        SameIds = gone.Count == 0 && changed.TrueForAll(f => before.Files.GetValueOrDefault(f.Path) is { } was && SameNames(was, f));
        foreach (var file in gone)
            Add(file.All);
        foreach (var file in changed)
        {
            // An entry that has moved tells other places.
            var was = before.Files.GetValueOrDefault(file.Path)?.All.ToDictionary(e => (e.Digest, e.Line)) ?? [];
            Add(file.All.Where(e => !was.Remove((e.Digest, e.Line))));
            Add(was.Values);
        }
    }

    /// <summary>True when each id stands for the same kind of entry as before, with the same positions, channels or type.</summary>
    public bool SameIds { get; }

    /// <summary>The numbers of the classes with a figure that is new, gone, changed or elsewhere.</summary>
    public HashSet<int> Classes { get; } = [];

    /// <summary>True for a file that looks as it did.</summary>
    public bool IsKnown(CachedFile file) => ReferenceEquals(_before.Files.GetValueOrDefault(file.Path), file);

    private bool SameNames(CachedFile was, CachedFile now) =>
        was.Kind == now.Kind && was.All.Select(e => e.Id).SequenceEqual(now.All.Select(e => e.Id), StringComparer.Ordinal)
        && (now.Kind is not ("vehicle" or "source-unit" or "driver")
            || was.All.SelectMany(Positions).SequenceEqual(now.All.SelectMany(Positions), StringComparer.Ordinal));

    private IEnumerable<string> Positions(CachedEntry entry) =>
        entry.Open(_before.Classes) is var note ? [note.Id, .. note.Positions] : [];

    private void Add(IEnumerable<CachedEntry> entries)
    {
        foreach (var entry in entries)
        {
            for (var samples = entry.Samples(); samples.Next(out var number, out _);)
                Classes.Add(number);
        }
    }
}
