using System.Buffers;
using FitCheck.Foundation.Files;
using FitCheck.Foundation.Problems;

namespace FitCheck.Catalog;

/// <summary>Some whole entries of a file. A long list is read block after block, so that it is never in memory at once.</summary>
internal sealed class EntryBlock : IDisposable
{
    private const int UsualBytes = 1 << 19;

    private readonly byte[] _bytes;
    private readonly int _length;
    private readonly int _line;

    private EntryBlock(byte[] bytes, int length, int line) => (_bytes, _length, _line) = (bytes, length, line);

    /// <summary>The blocks of a file, each to be disposed of when its entries have been read; a file that can't be read is told.</summary>
    /// <param name="path">The file.</param>
    /// <param name="name">What it is called.</param>
    /// <param name="problems">Where it is told.</param>
    /// <param name="usualBytes">About how many bytes a block has, when its entries are not longer.</param>
    public static IEnumerable<EntryBlock> Of(string path, string name, ProblemList problems, int usualBytes = UsualBytes)
    {
        using var file = Open(path, name, problems);
        if (file is null)
            yield break;
        // One byte more than there are tells the end.
        var (bytes, filled, line, all) = (ArrayPool<byte>.Shared.Rent((int)Math.Min(usualBytes, file.Length + 1)), 0, 1, 0L);
        while (Read(file, bytes.AsSpan(filled), name, problems) is { } read)
        {
            (filled, all) = (filled + read, all + read);
            if (all > CatalogFiles.MostBytes)
            {
                problems.Error(new Location(name, 0, 0), $"the file is larger than the {CatalogFiles.MostBytes} bytes that FitCheck reads",
                    ProblemKind.Unreadable);
                yield break;
            }
            if (filled < bytes.Length)
            {
                yield return new EntryBlock(bytes, filled, line);
                yield break;
            }
            var whole = EntryText.LastItem(bytes);
            if (whole == 0 && filled > SourceText.MaxBytes)
            {
                problems.Error(new Location(name, line, 1),
                    $"from here on an entry has more than the {SourceText.MaxBytes} bytes that FitCheck reads", ProblemKind.Unreadable);
                yield break;
            }
            var next = ArrayPool<byte>.Shared.Rent(whole > 0 ? Math.Max(usualBytes, filled - whole + 1) : 2 * bytes.Length);
            bytes.AsSpan(whole, filled - whole).CopyTo(next);
            if (whole > 0)
            {
                var begun = line;
                line += bytes.AsSpan(0, whole).Count((byte)'\n');
                yield return new EntryBlock(bytes, whole, begun);
            }
            else
                ArrayPool<byte>.Shared.Return(bytes);
            (bytes, filled) = (next, filled - whole);
        }
    }

    /// <summary>Its entries; not to be kept longer than the block.</summary>
    public IEnumerable<EntryText> Entries(string kind, string name) => EntryText.Of(kind, name, _bytes, _length, _line);

    public void Dispose() => ArrayPool<byte>.Shared.Return(_bytes);

    private static FileStream? Open(string path, string name, ProblemList problems)
    {
        try
        {
            return new FileStream(path, FileMode.Open, FileAccess.Read, FileShare.Read, bufferSize: 0);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            CatalogFiles.TellUnreadable(name, problems);
            return null;
        }
    }

    // As many as there is room for, and fewer at the end of the file only.
    private static int? Read(FileStream file, Span<byte> into, string name, ProblemList problems)
    {
        try
        {
            return file.ReadAtLeast(into, into.Length, throwOnEndOfStream: false);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            CatalogFiles.TellUnreadable(name, problems);
            return null;
        }
    }
}
