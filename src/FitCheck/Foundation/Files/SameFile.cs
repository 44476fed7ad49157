using System.Globalization;

namespace FitCheck.Foundation.Files;

/// <summary>Tells whether two paths lead to one file, by whatever spelling or link, also where the file is yet to be written.</summary>
internal static class SameFile
{
    private static readonly bool CaseCounts = OperatingSystem.IsLinux();

    /// <summary>
    /// A text by which paths to be written are compared: alike for two that lead to one file. Null for a device, a pipe and the like: those
    /// can be written again and again.
    /// </summary>
    public static string? Key(string path)
    {
        var full = Path.GetFullPath(path);
        // What the system shows of open files, and of this process, may lead to any plain file.
        if (IsStandardOutput(full) || (FileLook.Of(full) is { } look ? look.Type is not (FileType.Plain or FileType.Folder)
            : FileStamp.IsOther(full)))
            return null;
        full = AtomicFile.Target(full);
        return Of(full)
            ?? (Path.GetDirectoryName(full) is { } folder ? $"{Of(folder) ?? Cased(Plain(folder))}/{Cased(Path.GetFileName(full))}"
            : Cased(full));
    }

    /// <summary>
    /// A text by which a path to be read is compared with those to be written: a device may lead to a file, as standard input does.
    /// </summary>
    public static string? KeyOfInput(string path) => Of(Path.GetFullPath(path)) ?? Key(path);

    /// <summary>
    /// True for the names of what the caller gave as standard output, to which all reports are written one after the other.
    /// </summary>
    /// <param name="full">The path in full.</param>
    public static bool IsStandardOutput(string full) => full is "/dev/stdout" or "/dev/fd/1" or "/proc/self/fd/1";

    /// <summary>True for the name of a file that a process has open. It is no link to edit through, and its own name may be gone.</summary>
    /// <param name="full">The path in full.</param>
    public static bool IsOpened(string full) =>
        full is "/dev/stdin" or "/dev/stdout" or "/dev/stderr" || Path.GetDirectoryName(full) is "/dev/fd" or "/proc/self/fd"
            || (full.StartsWith("/proc/", StringComparison.Ordinal) && Path.GetFileName(Path.GetDirectoryName(full)) == "fd");

    private static string? Of(string path) =>
        FileLook.Of(path) is { } look ? string.Create(CultureInfo.InvariantCulture, $"{look.Disk}:{look.Node}") : null;

    // Where the system tells no numbers: without links to folders on the way. Two hard links are two files then.
    private static string Plain(string folder)
    {
        if (Path.GetDirectoryName(folder) is not { } above)
            return folder;
        try
        {
            return new DirectoryInfo(folder).ResolveLinkTarget(returnFinalTarget: true)?.FullName
                ?? Path.Combine(Plain(above), Path.GetFileName(folder));
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            return folder;
        }
    }

    private static string Cased(string text) => CaseCounts ? text : text.ToUpperInvariant();
}
