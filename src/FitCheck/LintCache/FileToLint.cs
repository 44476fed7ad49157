using FitCheck.Catalog;
using FitCheck.Foundation.Files;
using FitCheck.Foundation.Problems;

namespace FitCheck.LintCache;

/// <summary>A file of a catalog that has to be read: block after block, and several at once.</summary>
/// <param name="path">The file.</param>
/// <param name="kind">The kind of its entries.</param>
/// <param name="stamp">How it looks; null where the system doesn't tell.</param>
/// <param name="now">When it looked so.</param>
/// <param name="known">What is known of it from an earlier run.</param>
internal sealed class FileToLint(string path, string kind, FileStamp? stamp, long now, CachedFile? known)
{
    private readonly string _name = ShownPath.Of(path);
    private readonly Dictionary<EntryDigest, CachedEntry> _known = (known?.All ?? []).GroupBy(e => e.Digest)
        .ToDictionary(g => g.Key, g => g.First());
    private readonly List<byte[]> _parts = [];
    private bool _isUnreadable;

    /// <summary>How many bytes it has; a great many when that isn't known.</summary>
    public long Length => stamp?.Length ?? int.MaxValue;

    /// <summary>The blocks, of which the next is read when it is asked for; a file that can't be read is told.</summary>
    public IEnumerable<(FileToLint File, int Number, EntryBlock Block)> Blocks(ProblemList problems)
    {
        var told = problems.Count;
        foreach (var block in EntryBlock.Of(path, _name, problems))
        {
            int number;
            lock (_parts)
            {
                number = _parts.Count;
                _parts.Add([]);
            }
            yield return (this, number, block);
        }
        _isUnreadable = problems.Count > told;
    }

    /// <summary>Makes the notes of a block's entries. Several threads may do so at once.</summary>
    /// <param name="number">Of the block.</param>
    /// <param name="block">The block, which is disposed of.</param>
    /// <param name="examine">Makes the note of an entry of which none is known.</param>
    /// <param name="classes">Where figures find the numbers of their classes.</param>
    public void Read(int number, EntryBlock block, Func<string, EntryText, ExaminedEntry> examine, FigureClasses classes)
    {
        using var to = new CacheWriter();
        foreach (var text in block.Entries(kind, _name))
        {
            var digest = EntryDigest.Of(text);
            if (_known.TryGetValue(digest, out var kept) && (kept.MayMove || kept.Line == text.Line))
                kept.Write(to, text.Line);
            else
                CachedEntry.Write(to, examine(CatalogFiles.IdOf(text, path), text), digest, classes);
        }
        var notes = to.TakeAll().ToArray();
        block.Dispose();
        lock (_parts)
            _parts[number] = notes;
    }

    /// <summary>The notes when all blocks are read; null when the file could not be.</summary>
    public CachedFile? Notes() =>
        _isUnreadable ? null
            : new CachedFile(path, _name, kind, stamp?.IsSettled(now) == true ? stamp : null, _parts is [var one] ? one : Joined());

    private byte[] Joined()
    {
        var (all, at) = (new byte[_parts.Sum(p => p.Length)], 0);
        foreach (var part in _parts)
        {
            part.CopyTo(all, at);
            at += part.Length;
        }
        return all;
    }
}
