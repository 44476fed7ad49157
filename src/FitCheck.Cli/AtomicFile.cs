using System.Text;

namespace FitCheck.Cli;

/// <summary>Writes a file whole or not at all, and says in words why not.</summary>
internal static class AtomicFile
{
    /// <returns>Null when written, else a sentence that says what went wrong.</returns>
    public static string? Write(string path, string text) => Write(path, new UTF8Encoding(encoderShouldEmitUTF8Identifier: false).GetBytes(text));

    /// <summary>A file that a link leads to is written, not the link; one that exists keeps its permissions.</summary>
    /// <returns>Null when written, else a sentence that says what went wrong.</returns>
    public static string? Write(string path, byte[] bytes)
    {
        var full = Target(Path.GetFullPath(path));
        try
        {
            if (Directory.Exists(full))
                return $"{path} is a folder; name a file";
            WholeFile.Write(full, bytes);
            return null;
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException or NotSupportedException)
        {
            return $"{path} can't be written: {(e is DirectoryNotFoundException ? "there is no such folder" : e is UnauthorizedAccessException ? "no permission" : "the disk refused it")}";
        }
    }

    private static string Target(string path)
    {
        // Where these lead is not for a file to stand.
        if (path.StartsWith("/dev/", StringComparison.Ordinal))
            return path;
        try
        {
            return File.ResolveLinkTarget(path, returnFinalTarget: true)?.FullName ?? path;
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            return path;
        }
    }
}
