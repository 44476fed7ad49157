using System.Buffers.Binary;
using System.Runtime.InteropServices;
using System.Text;

namespace FitCheck.Foundation.Files;

/// <summary>What a name on the disk stands for.</summary>
internal enum FileType
{
    Plain,
    Folder,
    Link,
    Pipe,
    /// <summary>A device, a terminal, a socket.</summary>
    Other,
}

/// <summary>What the system tells of a file without opening it. Linux only.</summary>
/// <param name="Type">What it is.</param>
/// <param name="Node">The file's number on its disk.</param>
/// <param name="Length">Bytes.</param>
/// <param name="Changed">Last change of content or of what is told of the file, in nanoseconds since 1970.</param>
/// <param name="Disk">The disk that it is on: with its number there, which thing it is, whatever it is called.</param>
/// <param name="Owner">The number of the user whose it is.</param>
internal readonly record struct FileLook(FileType Type, long Node, long Length, long Changed, ulong Disk, uint Owner)
{
    private const int CurrentFolder = -100;
    private const int LinkItself = 0x100;
    private const uint BasicData = 0x7FF;
    private const int BufferBytes = 256;

    [ThreadStatic]
    private static byte[]? Buffer;

    private static bool Unknown = !OperatingSystem.IsLinux();

    /// <summary>How a file looks; null where nothing is there, and where the system doesn't tell.</summary>
    /// <param name="path">The file.</param>
    /// <param name="followed">What a link leads to rather than the link.</param>
    public static FileLook? Of(string path, bool followed = true)
    {
        if (Unknown)
            return null;
        try
        {
            var told = Buffer ??= new byte[BufferBytes];
            return statx(CurrentFolder, Encoding.UTF8.GetBytes(path + "\0"), followed ? 0 : LinkItself, BasicData, told) != 0 ? null
                : new FileLook(TypeOf(BinaryPrimitives.ReadUInt16LittleEndian(told.AsSpan(28))), At(32), At(40),
                (At(96) * 1_000_000_000) + BinaryPrimitives.ReadUInt32LittleEndian(told.AsSpan(104)),
                    BinaryPrimitives.ReadUInt64LittleEndian(told.AsSpan(136)),
                    BinaryPrimitives.ReadUInt32LittleEndian(told.AsSpan(20)));

            long At(int offset) => BinaryPrimitives.ReadInt64LittleEndian(told.AsSpan(offset));
        }
        catch (Exception e) when (e is DllNotFoundException or EntryPointNotFoundException)
        {
            Unknown = true;
            return null;
        }
    }

    private static FileType TypeOf(ushort mode) => (mode & 0xF000) switch
    {
        0x8000 => FileType.Plain,
        0x4000 => FileType.Folder,
        0xA000 => FileType.Link,
        0x1000 => FileType.Pipe,
        _ => FileType.Other,
    };

    // Of struct statx: owner at 20, mode at 28, inode at 32, size at 40, time of last change at 96, the disk's two numbers at 136 (Linux,
    // include/uapi/linux/stat.h).
    [DllImport("libc.so.6", EntryPoint = "statx")]
    [DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
    private static extern int statx(int folder, byte[] path, int flags, uint mask, byte[] told);
}
