using FitCheck.Foundation.Files;

namespace FitCheck.LintCache;

/// <summary>
/// What lint keeps of one file of a catalog: how the file looks from outside, and the notes of its entries, one after the other.
/// </summary>
/// <param name="Path">Where it is.</param>
/// <param name="Name">What it is called.</param>
/// <param name="Kind">The kind of its entries.</param>
/// <param name="Stamp">How it looked; null when it was too young to be sure that a later change would show.</param>
/// <param name="Entries">In the order of the file; see <see cref="CachedEntry"/>.</param>
internal sealed record CachedFile(string Path, string Name, string Kind, FileStamp? Stamp, ReadOnlyMemory<byte> Entries)
{
    public IEnumerable<CachedEntry> All
    {
        get
        {
            for (var at = 0; at < Entries.Length;)
            {
                var entry = new CachedEntry(this, at);
                yield return entry;
                at += entry.Size;
            }
        }
    }

    public void Write(CacheWriter to)
    {
        to.Write(Path);
        to.Write(Name == Path ? "" : Name);
        to.Write(Kind);
        to.Write(Stamp is not null);
        Stamp?.Write(to);
        to.Write7BitEncodedInt(Entries.Length);
    }

    /// <summary>What was written; the entries stand behind it.</summary>
    public static CachedFile Read(ref CacheReader from, ReadOnlyMemory<byte> bytes)
    {
        var path = from.Text();
        var (name, kind) = (from.Given() ?? path, from.Text());
        var stamp = from.Truth() ? from.Stamp() : null;
        var length = from.Number();
        var notes = new CachedFile(path, name, kind, stamp, bytes.Slice(from.At, length));
        from.At += length;
        return notes;
    }
}
