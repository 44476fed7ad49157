namespace FitCheck.Foundation.Files;

/// <summary>
/// What the system tells of a file without opening it. The same stamp means the same content: the time of the last change is the system's
/// own, which no program can set back, and no stamp is kept of a file that changed within the two seconds before it was read. Linux only;
/// elsewhere files are read and digested.
/// </summary>
/// <param name="Node">The file's number on its disk: another file that is put in its place has another one.</param>
/// <param name="Length">Bytes.</param>
/// <param name="Changed">Last change of content or of what is told of the file, in nanoseconds since 1970.</param>
internal sealed record FileStamp(long Node, long Length, long Changed)
{
    private const long Young = 2_000_000_000;

    /// <summary>The stamp of a file; null where the system doesn't tell.</summary>
    public static FileStamp? Of(string path) => Of(FileLook.Of(path));

    /// <summary>The stamp of a file that was looked at.</summary>
    public static FileStamp? Of(FileLook? look) => look is { } known ? new FileStamp(known.Node, known.Length, known.Changed) : null;

    /// <summary>
    /// True for what is there and no plain file: a device, a pipe, and what the system shows of them under /dev and /proc, wherever that
    /// leads. False where the system doesn't tell.
    /// </summary>
    public static bool IsOther(string path) =>
        (path.StartsWith("/dev/", StringComparison.Ordinal) && !path.StartsWith("/dev/shm/", StringComparison.Ordinal))
            || path.StartsWith("/proc/", StringComparison.Ordinal)
            ? File.Exists(path) : FileLook.Of(path) is { Type: not (FileType.Plain or FileType.Folder) };

    /// <summary>True when a change after this moment gives another stamp.</summary>
    /// <param name="now">From before the file was read.</param>
    public bool IsSettled(long now) => Changed < now - Young;

    /// <summary>This moment, in nanoseconds since 1970.</summary>
#pragma warning disable RS0030 // Decides only whether a file is read again, never what is said of it.
    public static long Now() => (DateTime.UtcNow - DateTime.UnixEpoch).Ticks * TimeSpan.NanosecondsPerTick;
#pragma warning restore RS0030

    public void Write(BinaryWriter to)
    {
        to.Write(Node);
        to.Write(Length);
        to.Write(Changed);
    }
}
