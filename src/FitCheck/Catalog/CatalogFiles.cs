using System.Text;
using FitCheck.Yaml;

namespace FitCheck.Catalog;

/// <summary>One file of the catalog: the entry's id is its name, its kind that of its folder.</summary>
internal sealed record CatalogFile(string Id, string Kind, string Name, byte[] Bytes);

/// <summary>An id that two files of one folder claim: where the second stands, and the file that came first.</summary>
public sealed record TakenId(string Id, Location At, string First);

/// <summary>
/// The catalog's files as bytes with their digest. Nothing is parsed here: a build touches a dozen entries out of hundreds, and those are read when
/// asked for. Later folders overlay earlier ones by id.
/// </summary>
internal sealed class CatalogFiles
{
    private CatalogFiles(IReadOnlyDictionary<string, CatalogFile> byId, IReadOnlyList<TakenId> taken, string digest) => (ById, Taken, Digest) = (byId, taken, digest);

    public IReadOnlyDictionary<string, CatalogFile> ById { get; }

    /// <summary>Files that were left out because their id is taken.</summary>
    public IReadOnlyList<TakenId> Taken { get; }

    /// <summary>SHA-256 over names and contents, hexadecimal.</summary>
    public string Digest { get; }

    public static CatalogFiles Read(IReadOnlyList<string> folders, ProblemList problems)
    {
        var byId = new Dictionary<string, CatalogFile>(StringComparer.Ordinal);
        var taken = new List<TakenId>();
        var hash = new Sha256();
        foreach (var root in folders)
        {
            if (!Directory.Exists(root))
            {
                problems.Error(new Location(ShownPath.Of(root), 0, 0), "no such catalog folder", ProblemKind.Unreadable);
                continue;
            }
            ReadFolder(root, byId, taken, hash, problems);
        }
        return new CatalogFiles(byId, taken, hash.Finish());
    }

    private static void ReadFolder(string root, Dictionary<string, CatalogFile> byId, List<TakenId> taken, Sha256 hash, ProblemList problems)
    {
        var here = new Dictionary<string, string>(StringComparer.Ordinal);
        var folders = Array.ConvertAll(Directory.GetDirectories(root), f => Path.GetFileName(f));
        Array.Sort(folders, StringComparer.Ordinal);
        foreach (var folder in folders)
        {
            if (Kinds.KindOf(folder) is not { } kind)
                continue;
            var paths = Directory.GetFiles(Path.Combine(root, folder), "*.yaml", SearchOption.AllDirectories);
            Array.Sort(paths, StringComparer.Ordinal);
            foreach (var path in paths)
            {
                var name = ShownPath.Of(path);
                var id = Path.GetFileNameWithoutExtension(path);
                if (Bytes(path, name, problems) is not { } bytes)
                    continue;
                hash.Append(Encoding.UTF8.GetBytes($"{Path.GetRelativePath(root, path).Replace('\\', '/')}\n{bytes.Length}\n"));
                hash.Append(bytes);
                if (here.TryGetValue(id, out var first))
                {
                    taken.Add(new TakenId(id, new Location(name, IdLine(bytes), "id: ".Length + 1), first));
                    problems.Error(taken[^1].At, $"the id `{id}` is taken by {first}; ids are unique in the catalog");
                }
                else
                {
                    here[id] = name;
                    byId[id] = new CatalogFile(id, kind, name, bytes);
                }
            }
        }
    }

    // Only the second of two is looked into, and only for the line of its id.
    private static int IdLine(byte[] bytes)
    {
        var lines = Encoding.UTF8.GetString(bytes).Split('\n');
        return Math.Max(0, Array.FindIndex(lines, l => l.StartsWith("id: ", StringComparison.Ordinal))) + 1;
    }

    private static byte[]? Bytes(string path, string name, ProblemList problems)
    {
        try
        {
            return File.ReadAllBytes(path);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            problems.Error(new Location(name, 0, 0), "the file can't be read", ProblemKind.Unreadable);
            return null;
        }
    }
}
