using System.Diagnostics;
using System.Runtime.InteropServices;

namespace FitCheck.Cli.Programs;

/// <summary>The program with all its libraries, which stands beside the quick one under this name.</summary>
internal static class WholeProgram
{
    private const string Name = "fitcheck-whole";

    /// <summary>
    /// Runs it with the same arguments, on the same terminal, and returns its exit status. On Linux it takes this process over: whoever
    /// ends or interrupts what was started has then ended or interrupted all there is.
    /// </summary>
    public static int Run(string[] args) => Instead(Path.Combine(AppContext.BaseDirectory, Name), args, []);

    /// <summary>Runs a program in the place of this one.</summary>
    /// <param name="program">Its file.</param>
    /// <param name="args">What it is given.</param>
    /// <param name="asChild">What it is given too where it becomes a child.</param>
    public static int Instead(string program, string[] args, string[] asChild)
    {
        if (OperatingSystem.IsLinux())
            TakeOver(program, args);
        var start = new ProcessStartInfo(program, [.. args, .. asChild]) { UseShellExecute = false };
        using var process = Process.Start(start)!;
        process.WaitForExit();
        return process.ExitCode;
    }

    // Returns only where it can't be done. The memory goes with the process.
    private static void TakeOver(string program, string[] args)
    {
        var words = new IntPtr[args.Length + 2];
        words[0] = Marshal.StringToCoTaskMemUTF8(program);
        for (var i = 0; i < args.Length; i++)
            words[i + 1] = Marshal.StringToCoTaskMemUTF8(args[i]);
        try
        {
            _ = execv(words[0], words);
        }
        catch (Exception e) when (e is DllNotFoundException or EntryPointNotFoundException)
        {
            // Another C library: it becomes a child.
        }
    }

    // POSIX, execv: the arguments end with a null.
    [DllImport("libc.so.6", EntryPoint = "execv")]
    [DefaultDllImportSearchPaths(DllImportSearchPath.SafeDirectories)]
    private static extern int execv(IntPtr path, IntPtr[] arguments);
}
