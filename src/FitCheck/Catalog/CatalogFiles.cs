using System.Text;
using FitCheck.Yaml;

namespace FitCheck.Catalog;

/// <summary>One file of the catalog: the entry's id is its name, its kind that of its folder.</summary>
internal sealed record CatalogFile(string Id, string Kind, string Name, byte[] Bytes);

/// <summary>
/// The catalog's files as bytes with their digest. Nothing is parsed here: a build touches a dozen entries out of hundreds, and those are read when
/// asked for. Later folders overlay earlier ones by id.
/// </summary>
internal sealed class CatalogFiles
{
    private CatalogFiles(IReadOnlyDictionary<string, CatalogFile> byId, string digest) => (ById, Digest) = (byId, digest);

    public IReadOnlyDictionary<string, CatalogFile> ById { get; }

    /// <summary>SHA-256 over names and contents, hexadecimal.</summary>
    public string Digest { get; }

    public static CatalogFiles Read(IReadOnlyList<string> folders, ProblemList problems)
    {
        var byId = new Dictionary<string, CatalogFile>(StringComparer.Ordinal);
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

    private static void ReadFolder(string root, Dictionary<string, CatalogFile> byId, Sha256 hash, ProblemList problems)
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
                    problems.Error(new Location(name, 1, 1), $"the id `{id}` is taken by {first}; ids are unique in the catalog");
                else
                {
                    here[id] = name;
                    byId[id] = new CatalogFile(id, kind, name, bytes);
                }
            }
        }
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
