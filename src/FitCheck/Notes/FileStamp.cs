using System.Buffers.Binary;
using System.Runtime.InteropServices;
using System.Text;

namespace FitCheck.Notes;

/// <summary>
/// What the system tells of a file without opening it. The same stamp means the same content: the time of the last change is the system's own, which no program
/// can set back, and no stamp is kept of a file that changed within the two seconds before it was read. Linux only; elsewhere files are read and digested.
/// </summary>
/// <param name="Node">The file's number on its disk: another file that is put in its place has another one.</param>
/// <param name="Length">Bytes.</param>
/// <param name="Changed">Last change of content or of what is told of the file, in nanoseconds since 1970.</param>
internal sealed record FileStamp(long Node, long Length, long Changed)
{
    private const int CurrentFolder = -100;
    private const uint BasicData = 0x7FF;
    private const int BufferBytes = 256;
    private const long Young = 2_000_000_000;

    [ThreadStatic]
    private static byte[]? Buffer;

    private static bool Unknown = !OperatingSystem.IsLinux();

    /// <summary>The stamp of a file; null where the system doesn't tell.</summary>
    public static FileStamp? Of(string path)
    {
        if (Unknown)
            return null;
        try
        {
            var told = Buffer ??= new byte[BufferBytes];
            return statx(CurrentFolder, Encoding.UTF8.GetBytes(path + "\0"), 0, BasicData, told) != 0 ? null
                : new FileStamp(At(32), At(40), (At(96) * 1_000_000_000) + BinaryPrimitives.ReadUInt32LittleEndian(told.AsSpan(104)));

            long At(int offset) => BinaryPrimitives.ReadInt64LittleEndian(told.AsSpan(offset));
        }
        catch (Exception e) when (e is DllNotFoundException or EntryPointNotFoundException)
        {
            Unknown = true;
            return null;
        }
    }

    /// <summary>True for what is there and no plain file: a device, a pipe, and whatever stands under /dev. False where the system doesn't tell.</summary>
    public static bool IsOther(string path)
    {
        const int Mode = 28, Type = 0xF000, PlainFile = 0x8000, Link = 0xA000;
        if (path.StartsWith("/dev/", StringComparison.Ordinal))
            return File.Exists(path);
        return Of(path) is not null && (BinaryPrimitives.ReadUInt16LittleEndian(Buffer.AsSpan(Mode)) & Type) is not (PlainFile or Link);
    }

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

    public static FileStamp Read(ref NoteReader from) => new(from.Long(), from.Long(), from.Long());

    // Of struct statx: inode at 32, size at 40, time of last change at 96 (Linux, include/uapi/linux/stat.h).
    [DllImport("libc.so.6", EntryPoint = "statx")]
    [DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
    private static extern int statx(int folder, byte[] path, int flags, uint mask, byte[] told);
}
