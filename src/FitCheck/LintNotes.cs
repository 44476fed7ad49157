using System.Numerics;
using System.Runtime.InteropServices;
using FitCheck.Yaml;

namespace FitCheck;

/// <summary>
/// The notes of a whole catalog in one file of the cache folder. It is written beside and then moved into its place, so that a reader sees the old or the new
/// one whole, and two runs at once the one or the other. A file that is torn, foreign or of another program, schema or rules is as good as none.
/// </summary>
/// <param name="Files">By path.</param>
/// <param name="Across">What the rules find across these files; null when that is not known.</param>
internal sealed record LintNotes(IReadOnlyDictionary<string, FileNotes> Files, IReadOnlyList<AcrossProblem>? Across)
{
    private const int BytesOfEntry = 400;
    private const ulong Mark = 0x31_65_74_6F_6E_74_69_66;

    private static readonly LintNotes None = new(new Dictionary<string, FileNotes>(StringComparer.Ordinal), null);

    /// <summary>The notes in a file; none when it can't be used.</summary>
    /// <param name="path">The file; null for none.</param>
    /// <param name="key">What the notes depend on besides the entries.</param>
    public static LintNotes Read(string? path, string key)
    {
        try
        {
            if (path is null || !File.Exists(path) || Content(File.ReadAllBytes(path)) is not { } content)
                return None;
            using var from = new NoteReader(new MemoryStream(content.Array!, content.Offset, content.Count));
            if (from.ReadString() != key)
                return None;
            var files = new Dictionary<string, FileNotes>(StringComparer.Ordinal);
            for (var count = from.ReadInt32(); count > 0; count--)
            {
                var file = FileNotes.Read(from);
                files[file.Path] = file;
            }
            return new LintNotes(files, from.ReadBoolean() ? NoteText.Several(from, () => AcrossProblem.Read(from)) : null);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException or FormatException or ArgumentException or InvalidOperationException)
        {
            return None;
        }
    }

    /// <summary>Writes the notes; when the folder or the disk refuses, the next run does without.</summary>
    public void Write(string? path, string key)
    {
        if (path is null)
            return;
        // Room enough for most, so that it is not copied while it grows.
        using var memory = new MemoryStream(Files.Values.Sum(f => f.Entries.Count) * BytesOfEntry);
        using var to = new NoteWriter(memory);
        to.Write(Mark);
        to.Write(0UL);
        to.Write(key);
        to.Write(Files.Count);
        foreach (var file in Files.Values)
            file.Write(to);
        to.Write(Across is not null);
        if (Across is not null)
        {
            to.Write7BitEncodedInt(Across.Count);
            foreach (var problem in Across)
                problem.Write(to);
        }
        to.Flush();
        to.Seek(sizeof(ulong), SeekOrigin.Begin);
        to.Write(Sum(memory.GetBuffer().AsSpan(2 * sizeof(ulong), (int)memory.Length - (2 * sizeof(ulong)))));
        try
        {
            Directory.CreateDirectory(Path.GetDirectoryName(path)!);
            WholeFile.Write(path, memory.GetBuffer().AsSpan(0, (int)memory.Length));
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            // Not noted: the next run lints again.
        }
    }

    private static ArraySegment<byte>? Content(byte[] bytes)
    {
        const int Head = 2 * sizeof(ulong);
        if (bytes.Length < Head || BitConverter.ToUInt64(bytes, 0) != Mark || BitConverter.ToUInt64(bytes, sizeof(ulong)) != Sum(bytes.AsSpan(Head)))
            return null;
        return new ArraySegment<byte>(bytes, Head, bytes.Length - Head);
    }

    // Tells a torn file from a whole one; no defence against one that was made to deceive, which could as well say that all is well.
    private static ulong Sum(ReadOnlySpan<byte> bytes)
    {
        var sum = (ulong)bytes.Length;
        var words = MemoryMarshal.Cast<byte, ulong>(bytes);
        foreach (var word in words)
            sum = BitOperations.RotateLeft((sum ^ word) * 0x9E3779B97F4A7C15, 29);
        foreach (var b in bytes[(words.Length * sizeof(ulong))..])
            sum = BitOperations.RotateLeft((sum ^ b) * 0x9E3779B97F4A7C15, 29);
        return sum;
    }
}
