using System.Buffers.Binary;
using System.Numerics;

namespace FitCheck.Foundation;

/// <summary>
/// SHA-256 (FIPS 180-4, section 6.2), for telling inputs apart. The framework's own asks the system's cryptography library, and loading
/// that takes longer than digesting every file of a catalog does here.
/// </summary>
internal sealed class Sha256
{
    /// <summary>How many bytes a digest has.</summary>
    public const int Bytes = 32;

    private const int BlockBytes = 64;

    private static readonly uint[] Constants =
    [
        0x428a2f98, 0x71374491, 0xb5c0fbcf, 0xe9b5dba5, 0x3956c25b, 0x59f111f1, 0x923f82a4, 0xab1c5ed5, 0xd807aa98, 0x12835b01, 0x243185be,
        0x550c7dc3,
        0x72be5d74, 0x80deb1fe, 0x9bdc06a7, 0xc19bf174, 0xe49b69c1, 0xefbe4786, 0x0fc19dc6, 0x240ca1cc, 0x2de92c6f, 0x4a7484aa, 0x5cb0a9dc,
        0x76f988da,
        0x983e5152, 0xa831c66d, 0xb00327c8, 0xbf597fc7, 0xc6e00bf3, 0xd5a79147, 0x06ca6351, 0x14292967, 0x27b70a85, 0x2e1b2138, 0x4d2c6dfc,
        0x53380d13,
        0x650a7354, 0x766a0abb, 0x81c2c92e, 0x92722c85, 0xa2bfe8a1, 0xa81a664b, 0xc24b8b70, 0xc76c51a3, 0xd192e819, 0xd6990624, 0xf40e3585,
        0x106aa070,
        0x19a4c116, 0x1e376c08, 0x2748774c, 0x34b0bcb5, 0x391c0cb3, 0x4ed8aa4a, 0x5b9cca4f, 0x682e6ff3, 0x748f82ee, 0x78a5636f, 0x84c87814,
        0x8cc70208,
        0x90befffa, 0xa4506ceb, 0xbef9a3f7, 0xc67178f2,
    ];

    private readonly uint[] _state = [0x6a09e667, 0xbb67ae85, 0x3c6ef372, 0xa54ff53a, 0x510e527f, 0x9b05688c, 0x1f83d9ab, 0x5be0cd19];
    private readonly byte[] _block = new byte[BlockBytes];
    private int _filled;
    private long _length;

    /// <summary>The digest of one piece, in lower-case hexadecimal.</summary>
    public static string Of(ReadOnlySpan<byte> bytes)
    {
        var hash = new Sha256();
        hash.Append(bytes);
        return hash.Finish();
    }

    public void Append(ReadOnlySpan<byte> bytes)
    {
        _length += bytes.Length;
        if (_filled > 0)
        {
            var taken = Math.Min(bytes.Length, BlockBytes - _filled);
            bytes[..taken].CopyTo(_block.AsSpan(_filled));
            _filled += taken;
            bytes = bytes[taken..];
            if (_filled < BlockBytes)
                return;
            Digest(_block);
            _filled = 0;
        }
        for (; bytes.Length >= BlockBytes; bytes = bytes[BlockBytes..])
            Digest(bytes[..BlockBytes]);
        bytes.CopyTo(_block);
        _filled = bytes.Length;
    }

    /// <summary>The digest of everything, in lower-case hexadecimal. Nothing can be appended after it.</summary>
    public string Finish()
    {
        Span<byte> digest = stackalloc byte[Bytes];
        Finish(digest);
        return Convert.ToHexStringLower(digest);
    }

    /// <summary>Writes the digest of everything, 32 bytes. Nothing can be appended after it.</summary>
    public void Finish(Span<byte> digest)
    {
        var bits = _length * 8;
        Span<byte> padding = stackalloc byte[(_filled < 56 ? BlockBytes : 2 * BlockBytes) - _filled];
        padding.Clear();
        padding[0] = 0x80;
        BinaryPrimitives.WriteInt64BigEndian(padding[^sizeof(long)..], bits);
        Append(padding);
        for (var i = 0; i < _state.Length; i++)
            BinaryPrimitives.WriteUInt32BigEndian(digest[(i * sizeof(uint))..], _state[i]);
    }

    private void Digest(ReadOnlySpan<byte> block)
    {
        Span<uint> w = stackalloc uint[BlockBytes];
        for (var t = 0; t < 16; t++)
            w[t] = BinaryPrimitives.ReadUInt32BigEndian(block[(t * sizeof(uint))..]);
        for (var t = 16; t < w.Length; t++)
        {
            var (early, late) = (w[t - 15], w[t - 2]);
            w[t] = w[t - 16] + w[t - 7] + (Turned(early, 7) ^ Turned(early, 18) ^ (early >> 3))
                + (Turned(late, 17) ^ Turned(late, 19) ^ (late >> 10));
        }

        uint a = _state[0], b = _state[1], c = _state[2], d = _state[3], e = _state[4], f = _state[5], g = _state[6], h = _state[7];
        for (var t = 0; t < w.Length; t++)
        {
            var first = h + (Turned(e, 6) ^ Turned(e, 11) ^ Turned(e, 25)) + ((e & f) ^ (~e & g)) + Constants[t] + w[t];
            var second = (Turned(a, 2) ^ Turned(a, 13) ^ Turned(a, 22)) + ((a & b) ^ (a & c) ^ (b & c));
            (h, g, f, e, d, c, b, a) = (g, f, e, d + first, c, b, a, first + second);
        }
        _state[0] += a;
        _state[1] += b;
        _state[2] += c;
        _state[3] += d;
        _state[4] += e;
        _state[5] += f;
        _state[6] += g;
        _state[7] += h;
    }

    private static uint Turned(uint x, int bits) => BitOperations.RotateRight(x, bits);
}
