using System.Text;
using FitCheck.Foundation.Problems;

namespace FitCheck.Foundation.Files;

/// <summary>The text of one input file, with the name under which it is reported.</summary>
internal sealed record SourceText(string File, string Text)
{
    /// <summary>Largest file that is read; a catalog entry has a few hundred lines.</summary>
    public const int MaxBytes = 4 * 1024 * 1024;

    /// <summary>The line of the file in which the text begins, from 1: an entry of a longer file begins further down.</summary>
    public int FirstLine { get; init; } = 1;

    private static readonly UTF8Encoding Strict = new(encoderShouldEmitUTF8Identifier: false, throwOnInvalidBytes: true);

    /// <summary>Decodes a file's bytes. Tells binary, huge and wrongly encoded files as problems, and returns null then.</summary>
    public static SourceText? Decode(string file, ReadOnlySpan<byte> bytes, ProblemList problems)
    {
        var whole = new Location(file, 0, 0);
        if (bytes.Length > MaxBytes)
        {
            problems.Error(whole, $"the file has {bytes.Length} bytes; FitCheck reads YAML files of up to {MaxBytes} bytes",
                ProblemKind.Unreadable);
            return null;
        }
        var span = bytes;
        if (span.StartsWith((ReadOnlySpan<byte>)[0xEF, 0xBB, 0xBF]))
            span = span[3..];
        else if (span.StartsWith((ReadOnlySpan<byte>)[0xFF, 0xFE]) || span.StartsWith((ReadOnlySpan<byte>)[0xFE, 0xFF]))
        {
            problems.Error(whole, "the file is UTF-16; save it as UTF-8", ProblemKind.Unreadable);
            return null;
        }
        if (span.Contains((byte)0))
        {
            problems.Error(whole, "the file is binary, not YAML text", ProblemKind.Unreadable);
            return null;
        }
        try
        {
            return new SourceText(file, Strict.GetString(span));
        }
        catch (DecoderFallbackException)
        {
            problems.Error(whole, "the file is not UTF-8 text; save it as UTF-8", ProblemKind.Unreadable);
            return null;
        }
    }
}
