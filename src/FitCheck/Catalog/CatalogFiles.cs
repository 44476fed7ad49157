using System.Text;
using FitCheck.Foundation;
using FitCheck.Foundation.Files;
using FitCheck.Foundation.Problems;
using FitCheck.Yaml;

namespace FitCheck.Catalog;

/// <summary>An id that two entries of one folder claim: where the second stands, and the file that came first.</summary>
internal sealed record TakenId(string Id, Location At, string First);

/// <summary>
/// The catalog's files as bytes with their digest, and the entries in them by id. Nothing is parsed here: a build touches a dozen entries
/// out of hundreds, and those are read when asked for. Later folders overlay earlier ones by id.
/// </summary>
internal sealed class CatalogFiles
{
    /// <summary>Longest file that is read: a list of entries, of which none is longer than <see cref="SourceText.MaxBytes"/>.</summary>
    public const int MostBytes = 64 * SourceText.MaxBytes;

    private const long ManyBytes = 2_000_000;

    // What else a catalog folder may hold.
    private static readonly string[] Beside = ["builds", "schema", "starters"];

    private CatalogFiles(IReadOnlyDictionary<string, EntryText> byId, string digest) => (ById, Digest) = (byId, digest);

    public IReadOnlyDictionary<string, EntryText> ById { get; }

    /// <summary>SHA-256 over names and the digests of contents, hexadecimal.</summary>
    public string Digest { get; }

    public static CatalogFiles Read(IReadOnlyList<string> folders, ProblemList problems)
    {
        var byId = new Dictionary<string, EntryText>(StringComparer.Ordinal);
        var hash = new Sha256();
        foreach (var root in folders)
        {
            if (!Directory.Exists(root))
            {
                problems.Error(new Location(ShownPath.Of(root), 0, 0), "no such catalog folder", ProblemKind.Unreadable);
                continue;
            }
            ReadFolder(root, byId, hash, problems);
        }
        return new CatalogFiles(byId, hash.Finish());
    }

    private static void ReadFolder(string root, Dictionary<string, EntryText> byId, Sha256 hash, ProblemList problems)
    {
        var here = new Dictionary<string, EntryText>(StringComparer.Ordinal);
        var files = new List<(string Kind, string Path, byte[] Bytes)>();
        foreach (var (kind, file) in In(root, problems))
        {
            if (InputFile.Bytes(file.Path, ShownPath.Of(file.Path), problems, MostBytes) is { } bytes)
                files.Add((kind, file.Path, bytes));
        }
        var read = new (string Digest, IReadOnlyList<(string Id, EntryText Text)> Entries)[files.Count];
        // A small catalog is through sooner than another thread gets going.
        if (files.Sum(f => (long)f.Bytes.Length) > ManyBytes)
            Parallel.For(0, read.Length, Read);
        else
            for (var i = 0; i < read.Length; i++)
                Read(i);
        for (var i = 0; i < read.Length; i++)
        {
            hash.Append(Encoding.UTF8.GetBytes($"{Path.GetRelativePath(root, files[i].Path).Replace('\\', '/')}\n{read[i].Digest}\n"));
            foreach (var (id, entry) in read[i].Entries)
            {
                if (here.TryAdd(id, entry))
                    byId[id] = entry;
                else
                    Tell(new TakenId(id, entry.IdPlace(), here[id].File), problems);
            }
        }

        void Read(int i)
        {
            var (kind, path, bytes) = files[i];
            read[i] = (Sha256.Of(bytes), [.. EntryText.Of(kind, ShownPath.Of(path), bytes).Select(e => (IdOf(e, path), e))]);
        }
    }

    /// <summary>
    /// The files of a catalog folder with the kind of their entries, in the order in which they are read; what is no file of it is told.
    /// </summary>
    public static IEnumerable<(string Kind, FoundFile File)> In(string root, ProblemList problems)
    {
        var folders = Array.ConvertAll(Directory.GetDirectories(root), f => Path.GetFileName(f));
        Array.Sort(folders, StringComparer.Ordinal);
        foreach (var folder in folders)
        {
            if (Kinds.KindOf(folder) is not { } kind)
                continue;
            foreach (var file in InputFolder.Files(root, Path.Combine(root, folder), [".yaml"], problems))
                yield return (kind, file);
        }
    }

    /// <summary>Tells files of a catalog folder that nobody reads: of another ending, or in a folder of no kind.</summary>
    public static void TellUnread(string root, ProblemList problems)
    {
        foreach (var folder in Directory.GetDirectories(root).Order(StringComparer.Ordinal))
        {
            var name = Path.GetFileName(folder);
            if (Kinds.KindOf(name) is null)
            {
                if (!Beside.Contains(name, StringComparer.Ordinal) && !name.StartsWith('.')
                    && InputFolder.Files(root, folder, [".yaml"], new ProblemList(), depth: 0).Count > 0)
                    problems.Warn(new Location(ShownPath.Of(folder), 0, 0),
                        $"not read: no kind of entry has a folder of this name{Nearest.Hint(name, Kinds.All.Select(k => k.Folder))}",
                        ProblemKind.NotRead);
                continue;
            }
            foreach (var file in InputFolder.Files(root, folder, [".yml"], new ProblemList()))
                problems.Warn(new Location(ShownPath.Of(file.Path), 0, 0), "not read: the name of a catalog file ends in `.yaml`",
                    ProblemKind.NotRead);
        }
        foreach (var path in Directory.GetFiles(root, "*.yaml").Order(StringComparer.Ordinal))
            problems.Warn(new Location(ShownPath.Of(path), 0, 0), "not read: entries stand in the folder of their kind",
                ProblemKind.NotRead);
    }

    /// <summary>Tells that an id is taken.</summary>
    public static void Tell(TakenId taken, ProblemList problems) =>
        problems.Error(taken.At, $"the id `{taken.Id}` is taken by {taken.First}; ids are unique in the catalog");

    /// <summary>
    /// A file of its own is named after its entry; an item of a list names itself. One that doesn't is known by its place, so that its
    /// schema can tell.
    /// </summary>
    public static string IdOf(EntryText entry, string path) => entry.InList
        ? entry.WrittenId() ?? ((entry.Parse(new ProblemList()) as YamlMap)?["id"] as YamlScalar)?.Text ?? $"{entry.File}:{entry.Line}"
        : Path.GetFileNameWithoutExtension(path);

    public static void TellUnreadable(string name, ProblemList problems) =>
        problems.Error(new Location(name, 0, 0), "the file can't be read", ProblemKind.Unreadable);
}
