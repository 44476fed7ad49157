using System.Text;

namespace FitCheck.Cli;

/// <summary>Writes a file whole or not at all.</summary>
internal static class AtomicFile
{
    /// <returns>Null when written, else a sentence that says what went wrong.</returns>
    public static string? Write(string path, string text)
    {
        var full = Path.GetFullPath(path);
        var beside = Path.Combine(Path.GetDirectoryName(full) ?? ".", $".{Path.GetFileName(full)}.{Environment.ProcessId}.part");
        try
        {
            if (Directory.Exists(full))
                return $"{path} is a folder; name a file";
            File.WriteAllText(beside, text, new UTF8Encoding(encoderShouldEmitUTF8Identifier: false));
            File.Move(beside, full, overwrite: true);
            return null;
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException or NotSupportedException)
        {
            TryDelete(beside);
            return $"{path} can't be written: {(e is DirectoryNotFoundException ? "there is no such folder" : e is UnauthorizedAccessException ? "no permission" : "the disk refused it")}";
        }
    }

    private static void TryDelete(string path)
    {
        try
        {
            File.Delete(path);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            // It was never written.
        }
    }
}
