using System.Text;

namespace FitCheck.Reports.Json;

/// <summary>Takes UTF-8 and writes it on as letters, piece by piece: a letter may begin in one piece and end in the next.</summary>
internal sealed class LettersOf(TextWriter to) : Stream
{
    private readonly Decoder _decoder = Encoding.UTF8.GetDecoder();

    public override bool CanRead => false;
    public override bool CanSeek => false;
    public override bool CanWrite => true;
    public override long Length => throw new NotSupportedException();
    public override long Position { get => throw new NotSupportedException(); set => throw new NotSupportedException(); }

    public override void Write(ReadOnlySpan<byte> buffer)
    {
        const int Piece = 4096;
        Span<char> letters = stackalloc char[Piece + 1];
        for (var from = 0; from < buffer.Length; from += Piece)
        {
            var bytes = buffer[from..Math.Min(from + Piece, buffer.Length)];
            to.Write(letters[.._decoder.GetChars(bytes, letters, flush: false)]);
        }
    }

    public override void Write(byte[] buffer, int offset, int count) => Write(buffer.AsSpan(offset, count));

    public override void Flush()
    {
    }

    public override int Read(byte[] buffer, int offset, int count) => throw new NotSupportedException();
    public override long Seek(long offset, SeekOrigin origin) => throw new NotSupportedException();
    public override void SetLength(long value) => throw new NotSupportedException();
}
