using System.Diagnostics;

namespace FitCheck.Tests.Cli;

/// <summary>Runs the program inside a line of bash, for what only a shell can give it: closed streams, devices, readers that go.</summary>
internal static class Shell
{
    /// <summary>Runs a line in which `fitcheck` is the built program. Standard output is what the whole line leaves there.</summary>
    public static (int Status, string Out, string Error) Of(string folder, string line)
    {
        var program = Path.Combine(AppContext.BaseDirectory, "fitcheck.dll");
        var start = new ProcessStartInfo("bash", ["-c", $"fitcheck() {{ dotnet '{program}' \"$@\"; }}\n{line}"])
        {
            WorkingDirectory = folder,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
            UseShellExecute = false,
        };
        start.Environment["FITCHECK_CACHE"] = Path.Combine(folder, "cache");
        using var process = Process.Start(start)!;
        var error = process.StandardError.ReadToEndAsync();
        var output = process.StandardOutput.ReadToEnd();
        process.WaitForExit();
        return (process.ExitCode, output, error.Result);
    }
}
