using System.Diagnostics;

namespace FitCheck.Cli;

/// <summary>The program with all its libraries, which stands beside the quick one under this name.</summary>
internal static class WholeProgram
{
    private const string Name = "fitcheck-whole";

    /// <summary>Runs it with the same arguments, on the same terminal, and returns its exit status.</summary>
    public static int Run(string[] args)
    {
        var start = new ProcessStartInfo(Path.Combine(AppContext.BaseDirectory, Name), args) { UseShellExecute = false };
        using var process = Process.Start(start)!;
        process.WaitForExit();
        return process.ExitCode;
    }
}
