using System.Diagnostics;

namespace FitCheck.Tests.Cli;

/// <summary>Runs the built program as a user does.</summary>
internal static class Run
{
    private static readonly string Program = Path.Combine(AppContext.BaseDirectory, "fitcheck.dll");

    public static (int Status, string Out, string Error) Of(string folder, params string[] arguments)
    {
        using var process = Start(folder, arguments);
        var error = process.StandardError.ReadToEndAsync();
        var output = process.StandardOutput.ReadToEnd();
        process.WaitForExit();
        return (process.ExitCode, output, error.Result);
    }

    /// <summary>The same, but one that takes longer than any input may keep it is ended and fails.</summary>
    public static (int Status, string Out, string Error) InTime(string folder, params string[] arguments)
    {
        using var process = Start(folder, arguments);
        var (output, error) = (process.StandardOutput.ReadToEndAsync(), process.StandardError.ReadToEndAsync());
        if (!process.WaitForExit(TimeSpan.FromSeconds(60)))
        {
            process.Kill(entireProcessTree: true);
            Xunit.Assert.Fail($"fitcheck {string.Join(' ', arguments)} does not end");
        }
        return (process.ExitCode, output.Result, error.Result);
    }

    /// <summary>A run that goes on by itself.</summary>
    public static Process Start(string folder, params string[] arguments)
    {
        var start = new ProcessStartInfo("dotnet", [Program, .. arguments])
        {
            WorkingDirectory = folder,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
            UseShellExecute = false,
            StandardOutputEncoding = System.Text.Encoding.UTF8,
            StandardErrorEncoding = System.Text.Encoding.UTF8,
        };
        start.Environment["FITCHECK_CACHE"] = Path.Combine(folder, "cache");
        start.Environment["LANG"] = "de_DE.UTF-8";
        start.Environment["LC_ALL"] = "de_DE.UTF-8";
        return Process.Start(start)!;
    }
}
