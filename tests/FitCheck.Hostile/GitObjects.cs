using System.Globalization;
using System.IO.Compression;
using System.Security.Cryptography;
using System.Text;

namespace FitCheck.Hostile;

/// <summary>A leaf of a tree: a file, a link, or what only a hand can write.</summary>
internal sealed record Leaf(string Mode, byte[] Bytes)
{
    public const string File = "100644", Link = "120000", Module = "160000";
}

/// <summary>
/// A git repository written object by object, in the format that git's own manual gives ("Git Internals", loose objects): quickly, and with
/// trees that no git would make.
/// </summary>
internal sealed class GitObjects
{
    private readonly string _folder;

    public GitObjects(string folder)
    {
        _folder = folder;
        Directory.CreateDirectory(Path.Combine(folder, "refs/heads"));
        File.WriteAllText(Path.Combine(folder, "HEAD"), "ref: refs/heads/main\n");
    }

    /// <summary>The files of objects that were written since somebody looked.</summary>
    public List<string> Written { get; } = [];

    public void Branch(string name, string commit) => File.WriteAllText(Path.Combine(_folder, "refs/heads", name), commit + "\n");

    public string Commit(string tree) => Hex(Write("commit", Encoding.UTF8.GetBytes(
        $"tree {tree}\nauthor x <x@example.invalid> 0 +0000\ncommitter x <x@example.invalid> 0 +0000\n\nx\n")));

    /// <summary>The trees of such leaves by their paths; returns the top's id.</summary>
    /// <param name="leaves">What is in it.</param>
    /// <param name="damaged">Makes another tree of each; itself for none.</param>
    public string Tree(IEnumerable<KeyValuePair<string, Leaf>> leaves, Func<byte[], byte[]> damaged) => Hex(Tree([.. leaves], 0, damaged));

    private byte[] Tree(IReadOnlyList<KeyValuePair<string, Leaf>> leaves, int from, Func<byte[], byte[]> damaged)
    {
        using var tree = new MemoryStream();
        foreach (var below in leaves.GroupBy(l => l.Key[from..].Split('/')[0], StringComparer.Ordinal))
        {
            var inside = below.Where(l => l.Key.Length > from + below.Key.Length).ToList();
            var leaf = below.FirstOrDefault(l => l.Key.Length == from + below.Key.Length).Value;
            if (leaf is not null)
                tree.Write(Entry(leaf.Mode, below.Key, leaf.Mode == Leaf.Module ? new byte[20] : Write("blob", leaf.Bytes)));
            if (inside.Count > 0)
                tree.Write(Entry("40000", below.Key, Tree(inside, from + below.Key.Length + 1, damaged)));
        }
        return Write("tree", damaged(tree.ToArray()));
    }

    /// <summary>A line of a tree: mode, name, and the id of what it is.</summary>
    public static byte[] Entry(string mode, string name, byte[] id) => [.. Encoding.UTF8.GetBytes($"{mode} {name}\0"), .. id];

    private byte[] Write(string type, byte[] bytes)
    {
        byte[] whole = [.. Encoding.ASCII.GetBytes(string.Create(CultureInfo.InvariantCulture, $"{type} {bytes.Length}\0")), .. bytes];
#pragma warning disable CA5350 // Git names its objects so.
        var id = SHA1.HashData(whole);
#pragma warning restore CA5350
        var path = Path.Combine(_folder, "objects", Hex(id)[..2], Hex(id)[2..]);
        if (File.Exists(path))
            return id;
        Directory.CreateDirectory(Path.GetDirectoryName(path)!);
        using var packed = new ZLibStream(new FileStream(path, FileMode.CreateNew), CompressionLevel.Fastest);
        packed.Write(whole);
        Written.Add(path);
        return id;
    }

    private static string Hex(byte[] id) => Convert.ToHexStringLower(id);
}
