using FitCheck.Foundation.Problems;

namespace FitCheck.Foundation.Files;

/// <summary>
/// Reads a file up to a bound, whatever length the system tells of it: a device has none, and a file may grow while it is read.
/// </summary>
internal static class InputFile
{
    private const int FirstBytes = 1 << 16;

    /// <summary>What is in a file; null when it can't be read or is too large, which is told.</summary>
    /// <param name="path">The file.</param>
    /// <param name="name">What it is called.</param>
    /// <param name="problems">Where it is told.</param>
    /// <param name="most">The most bytes that are read.</param>
    public static byte[]? Bytes(string path, string name, ProblemList problems, int most = SourceText.MaxBytes)
    {
        try
        {
            using var file = new FileStream(path, FileMode.Open, FileAccess.Read, FileShare.Read, bufferSize: 0);
            if (Bytes(file, most) is { } bytes)
                return bytes;
            problems.Error(new Location(name, 0, 0), $"the file is larger than the {most} bytes that FitCheck reads",
                ProblemKind.Unreadable);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            problems.Error(new Location(name, 0, 0), "the file can't be read", ProblemKind.Unreadable);
        }
        return null;
    }

    private static byte[]? Bytes(FileStream file, int most)
    {
        var bytes = new byte[file.CanSeek ? Math.Min(file.Length, most) : FirstBytes];
        var filled = file.ReadAtLeast(bytes, bytes.Length, throwOnEndOfStream: false);
        Span<byte> next = stackalloc byte[1];
        while (filled == bytes.Length && file.Read(next) > 0)
        {
            if (filled >= most)
                return null;
            Array.Resize(ref bytes, (int)Math.Min(Math.Max(FirstBytes, 2L * filled), most));
            bytes[filled++] = next[0];
            filled += file.ReadAtLeast(bytes.AsSpan(filled), bytes.Length - filled, throwOnEndOfStream: false);
        }
        if (filled < bytes.Length)
            Array.Resize(ref bytes, filled);
        return bytes;
    }
}
