using System.Diagnostics;

namespace FitCheck.Benchmarks;

/// <summary>`fitcheck page` as a user starts it; it ends when it is disposed of.</summary>
internal sealed class StartedPage : IDisposable
{
    public StartedPage()
    {
        Process = Process.Start(new ProcessStartInfo(Built.Program("src", "FitCheck.Cli", "fitcheck"), ["page", "--no-open"])
        {
            RedirectStandardOutput = true,
            RedirectStandardError = true,
            UseShellExecute = false,
        })!;
        Process.ErrorDataReceived += (_, _) => { };
        Process.BeginErrorReadLine();
        Address = Process.StandardOutput.ReadLine() ?? throw new InvalidOperationException("the page did not start");
    }

    public Process Process { get; }

    /// <summary>With the word by which it is opened.</summary>
    public string Address { get; }

    public void Dispose()
    {
        Process.Kill(entireProcessTree: true);
        Process.WaitForExit();
        Process.Dispose();
    }
}
