using System.Buffers.Binary;
using FitCheck.Catalog;
using FitCheck.Foundation;

namespace FitCheck.LintCache;

/// <summary>What the text of an entry is known by: half of its SHA-256, which nobody can bring two texts to agree in.</summary>
internal readonly record struct EntryDigest(ulong First, ulong Second)
{
    /// <summary>How many bytes it has when written.</summary>
    public const int Bytes = 2 * sizeof(ulong);

    /// <summary>Of the text, and of whether it is an item of a list, which is read otherwise.</summary>
    public static EntryDigest Of(EntryText text)
    {
        var hash = new Sha256();
        hash.Append([text.InList ? (byte)1 : (byte)0]);
        hash.Append(text.Text);
        Span<byte> digest = stackalloc byte[Sha256.Bytes];
        hash.Finish(digest);
        return Of(digest);
    }

    public static EntryDigest Of(ReadOnlySpan<byte> written) =>
        new(BinaryPrimitives.ReadUInt64LittleEndian(written), BinaryPrimitives.ReadUInt64LittleEndian(written[sizeof(ulong)..]));

    public void Write(CacheWriter to)
    {
        to.Write(First);
        to.Write(Second);
    }
}
