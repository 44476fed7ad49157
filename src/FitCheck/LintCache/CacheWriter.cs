namespace FitCheck.LintCache;

/// <summary>Writes notes: numbers in as few bytes as they need, texts in UTF-8 after their length.</summary>
internal sealed class CacheWriter(MemoryStream to) : BinaryWriter(to)
{
    public CacheWriter()
        : this(new MemoryStream())
    {
    }

    /// <summary>Bytes so far.</summary>
    public int Length => (int)to.Length;

    /// <summary>All that was written, before the next is; then it begins anew.</summary>
    public ReadOnlySpan<byte> TakeAll()
    {
        var all = to.GetBuffer().AsSpan(0, Length);
        to.SetLength(0);
        return all;
    }

    /// <summary>What was written from a place on, to be put right there.</summary>
    public Span<byte> From(int place) => to.GetBuffer().AsSpan(place, Length - place);
}
