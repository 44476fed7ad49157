using System.Text;

namespace FitCheck.Page.Static;

/// <summary>Many files in one: how many, and of each its path, its length and its bytes.</summary>
internal static class Bundle
{
    /// <summary>Packs.</summary>
    /// <param name="files">Paths, with `/`, relative to where they will be laid out, and what is in them.</param>
    /// <param name="into">Where it is written.</param>
    public static void Pack(IReadOnlyList<(string Path, byte[] Bytes)> files, Stream into)
    {
        using var writer = new BinaryWriter(into, Encoding.UTF8, leaveOpen: true);
        writer.Write(files.Count);
        foreach (var (path, bytes) in files)
        {
            writer.Write(path);
            writer.Write(bytes.Length);
            writer.Write(bytes);
        }
    }

    /// <summary>Lays them out in a folder.</summary>
    public static void Unpack(byte[] packed, string folder)
    {
        using var reader = new BinaryReader(new MemoryStream(packed), Encoding.UTF8);
        for (var left = reader.ReadInt32(); left > 0; left--)
        {
            var file = Path.Combine(folder, reader.ReadString());
            Directory.CreateDirectory(Path.GetDirectoryName(file)!);
            File.WriteAllBytes(file, reader.ReadBytes(reader.ReadInt32()));
        }
    }
}
