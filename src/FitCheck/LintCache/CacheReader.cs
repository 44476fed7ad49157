using System.Buffers.Binary;
using System.Text;
using FitCheck.Foundation.Files;

namespace FitCheck.LintCache;

/// <summary>Reads what a <see cref="CacheWriter"/> wrote, from memory.</summary>
internal ref struct CacheReader(ReadOnlySpan<byte> bytes)
{
    private const int BitsOfByte = 7;
    private readonly ReadOnlySpan<byte> _bytes = bytes;

    /// <summary>The place of what is read next.</summary>
    public int At { get; set; }

    /// <exception cref="IndexOutOfRangeException">It was not written so, as for all others.</exception>
    public bool Truth() => _bytes[At++] != 0;

    public int Number()
    {
        var number = 0;
        for (var shift = 0; ; shift += BitsOfByte)
        {
            var next = _bytes[At++];
            number |= (next & 0x7F) << shift;
            if (next < 0x80)
                return number;
        }
    }

    public double Double() => BinaryPrimitives.ReadDoubleLittleEndian(Take(sizeof(double)));

    public long Long() => BinaryPrimitives.ReadInt64LittleEndian(Take(sizeof(long)));

    /// <summary>What <see cref="FileStamp.Write"/> wrote.</summary>
    public FileStamp Stamp() => new(Long(), Long(), Long());

    public string Text() => Take(Number()) is { IsEmpty: false } text ? Encoding.UTF8.GetString(text) : "";

    /// <summary>A text that there need not be.</summary>
    public string? Given() => Text() is { Length: > 0 } text ? text : null;

    public void SkipText() => Take(Number());

    /// <exception cref="ArgumentOutOfRangeException">There are not so many.</exception>
    public ReadOnlySpan<byte> Take(int count)
    {
        var taken = _bytes.Slice(At, count);
        At += count;
        return taken;
    }
}
