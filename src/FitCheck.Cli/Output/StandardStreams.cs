using System.Runtime.InteropServices;
using System.Text;
using FitCheck.Reports.Format;

namespace FitCheck.Cli.Output;

/// <summary>Standard output can't take what is told.</summary>
internal sealed class OutputLostException(string why) : Exception(why);

/// <summary>
/// Standard output and standard error as the caller gave them, or did not: what can't be told on standard error changes nothing, what can't
/// be told on standard output is data that is lost. A reader who has seen enough and goes is neither: the runtime lets that pass.
/// </summary>
internal static class StandardStreams
{
    private const int Output = 1, Error = 2;
    private const int Narrowest = 40, Widest = 160;

    private static readonly UTF8Encoding Utf8 = new(encoderShouldEmitUTF8Identifier: false);

    /// <summary>Makes all that writes to the console write through here. A terminal keeps what the runtime has for it.</summary>
    public static void Open()
    {
        // The report has ohm, degree and minus signs; a pipe gets UTF-8 without a mark.
        Console.OutputEncoding = Utf8;
        Console.SetError(
            IsOpen(Error)
                ? Shown(new StreamWriter(new Outlet(Console.OpenStandardError(), mayFail: true), Utf8) { AutoFlush = true })
                : TextWriter.Null);
        if (Console.IsOutputRedirected)
            Console.SetOut(Shown(new StreamWriter(OutputBytes(), Utf8) { AutoFlush = true }));
    }

    /// <summary>Width of a line: that of the terminal, if it is one and says it, within what can be read.</summary>
    public static int Columns
    {
        get
        {
            if (Console.IsOutputRedirected)
                return ReportOptions.Default.Columns;
            try
            {
                return Console.WindowWidth is > 0 and var width ? Math.Clamp(width, Narrowest, Widest) : ReportOptions.Default.Columns;
            }
            catch (IOException)
            {
                return ReportOptions.Default.Columns;
            }
        }
    }

    /// <summary>Standard output for a report of this format.</summary>
    public static TextWriter ForReport(string format) => Report(new StreamWriter(OutputBytes(), Utf8), format);

    /// <summary>A report of this format, on its way to where it goes: see <see cref="ShownText"/>.</summary>
    public static TextWriter Report(TextWriter to, string format) => new ShownText(to, format) { NewLine = "\n" };

    /// <summary>Standard output; what can't be written there ends as an <see cref="OutputLostException"/>.</summary>
    public static Stream OutputBytes() => new Outlet(IsOpen(Output) ? Console.OpenStandardOutput() : null, mayFail: false);

    private static ShownText Shown(TextWriter to) => new(to, "text");

    // Whoever starts a program with one of them closed leaves its number free, and the runtime takes it for something of its own: a pipe,
    // which a message must not get into. What the caller gave has come through the start of a program, so it is not marked to be closed
    // there.
    private static bool IsOpen(int number)
    {
        const int AskFlags = 1, ClosedAtStart = 1;
        if (!OperatingSystem.IsLinux())
            return true;
        try
        {
            return (fcntl(number, AskFlags) & ClosedAtStart) == 0;
        }
        catch (Exception e) when (e is DllNotFoundException or EntryPointNotFoundException)
        {
            return true;
        }
    }

    // POSIX, fcntl: F_GETFD is 1 on Linux, FD_CLOEXEC is 1; -1 for what is closed.
    [DllImport("libc.so.6", EntryPoint = "fcntl")]
    [DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
    private static extern int fcntl(int number, int command);

    private sealed class Outlet(Stream? to, bool mayFail) : Stream
    {
        public override bool CanRead => false;
        public override bool CanSeek => false;
        public override bool CanWrite => true;
        public override long Length => throw new NotSupportedException();
        public override long Position { get => throw new NotSupportedException(); set => throw new NotSupportedException(); }

        public override void Write(ReadOnlySpan<byte> buffer)
        {
            if (to is null)
                throw new OutputLostException("it is closed");
            try
            {
                to.Write(buffer);
                to.Flush();
            }
            catch (Exception e) when (e is IOException or UnauthorizedAccessException)
            {
                if (!mayFail)
                    throw new OutputLostException("the disk refused it");
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
}
