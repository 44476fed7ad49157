using System.Buffers.Binary;
using System.IO.Hashing;
using FitCheck.Foundation.Files;

namespace FitCheck.LintCache;

/// <summary>
/// The notes of a whole catalog in one file of the cache folder. It is written beside and then moved into its place, so that a reader sees
/// the old or the new one whole, and two runs at once the one or the other. A file that is torn, foreign or of another program, schema or
/// rules is as good as none.
/// </summary>
/// <param name="Files">By path.</param>
/// <param name="Classes">The classes of figures that the entries are in.</param>
/// <param name="Overlays">True when an id stood for several entries, of which one counts.</param>
/// <param name="Across">What the rules find across these files; null when that is not known.</param>
internal sealed record CachedLint(IReadOnlyDictionary<string, CachedFile> Files, FigureClasses Classes, bool Overlays,
    IReadOnlyList<CrossEntryProblem>? Across)
{
    private const int Head = 2 * sizeof(ulong);
    private const ulong Mark = 0x32_65_74_6F_6E_74_69_66;

    /// <summary>The notes in a file; none when it can't be used.</summary>
    /// <param name="path">The file; null for none.</param>
    /// <param name="key">What the notes depend on besides the entries.</param>
    public static CachedLint Read(string? path, string key)
    {
        try
        {
            if (path is not null && File.Exists(path) && Content(File.ReadAllBytes(path), key) is { } notes)
                return notes;
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException or IndexOutOfRangeException or ArgumentException
            or InvalidOperationException)
        {
            // As good as none.
        }
        return new CachedLint(new Dictionary<string, CachedFile>(StringComparer.Ordinal), new FigureClasses(), Overlays: false, null);
    }

    /// <summary>Writes the notes; when the folder or the disk refuses, the next run does without.</summary>
    public void Write(string? path, string key)
    {
        if (path is null)
            return;
        try
        {
            Directory.CreateDirectory(Path.GetDirectoryName(path)!);
            AtomicFile.Write(path, to => WriteContent(to, key));
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            // Not noted: the next run lints again.
        }
    }

    private static CachedLint? Content(byte[] bytes, string key)
    {
        // The sum tells a torn file from a whole one; it is no defence against one that was made to deceive, which could as well say that
        // all is well.
        if (bytes.Length < Head || BinaryPrimitives.ReadUInt64LittleEndian(bytes) != Mark
            || BinaryPrimitives.ReadUInt64LittleEndian(bytes.AsSpan(sizeof(ulong))) != XxHash3.HashToUInt64(bytes.AsSpan(Head)))
            return null;
        var from = new CacheReader(bytes) { At = Head };
        if (from.Text() != key)
            return null;
        var count = from.Number();
        var files = new Dictionary<string, CachedFile>(count, StringComparer.Ordinal);
        for (; count > 0; count--)
        {
            var file = CachedFile.Read(ref from, bytes);
            files[file.Path] = file;
        }
        var classes = FigureClasses.Read(ref from);
        var overlays = from.Truth();
        if (!from.Truth())
            return new CachedLint(files, classes, overlays, null);
        var across = new CrossEntryProblem[from.Number()];
        for (var i = 0; i < across.Length; i++)
            across[i] = CrossEntryProblem.Read(ref from);
        return new CachedLint(files, classes, overlays, across);
    }

    private void WriteContent(Stream to, string key)
    {
        var (sum, small) = (new XxHash3(), new CacheWriter());
        to.Write(new byte[Head]);
        small.Write(key);
        small.Write7BitEncodedInt(Files.Count);
        foreach (var file in Files.Values)
        {
            file.Write(small);
            Pass(small.TakeAll());
            Pass(file.Entries.Span);
        }
        Classes.Write(small);
        small.Write(Overlays);
        small.Write(Across is not null);
        if (Across is not null)
        {
            small.Write7BitEncodedInt(Across.Count);
            foreach (var problem in Across)
                problem.Write(small);
        }
        Pass(small.TakeAll());

        Span<byte> head = stackalloc byte[Head];
        BinaryPrimitives.WriteUInt64LittleEndian(head, Mark);
        BinaryPrimitives.WriteUInt64LittleEndian(head[sizeof(ulong)..], sum.GetCurrentHashAsUInt64());
        to.Seek(0, SeekOrigin.Begin);
        to.Write(head);

        void Pass(ReadOnlySpan<byte> bytes)
        {
            sum.Append(bytes);
            to.Write(bytes);
        }
    }
}
