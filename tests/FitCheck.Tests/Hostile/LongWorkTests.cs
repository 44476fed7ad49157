using System.Diagnostics;
using System.Text;
using Xunit;

namespace FitCheck.Tests.Hostile;

/// <summary>What lasts tells on a terminal how far it has come, and ends when it is interrupted, with nothing half done.</summary>
public sealed class LongWorkTests : IDisposable
{
    private const int Interrupted = 130; // 128 and the signal's number, as a shell tells it

    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(60);

    private readonly TemporaryFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    [Fact]
    public async Task A_search_tells_how_far_it_is_and_an_interruption_leaves_no_file()
    {
        if (!OperatingSystem.IsLinux())
            return;
        var build = RepositoryRoot.Of("catalog", "builds", "sedge-overpowered-rears.yaml");
        var command = $"exec dotnet '{Path.Combine(AppContext.BaseDirectory, "fitcheck.dll")}' suggest '{build}' --time 60 -o out.txt";
        // In the background of a shell an interruption is ignored, and would be by what is started here.
        using var terminal = Process.Start(new ProcessStartInfo("env", ["--default-signal=INT", "script", "-qefc", command, "/dev/null"])
        {
            WorkingDirectory = _folder.Path,
            RedirectStandardInput = true,
            RedirectStandardOutput = true,
            UseShellExecute = false,
            Environment = { ["FITCHECK_CACHE"] = _folder.Of("cache") },
        })!;
        var seen = new StringBuilder();
        var letters = new byte[1024];
        using var patience = new CancellationTokenSource(Patience);
        while (!seen.ToString().Contains("changes are enough", StringComparison.Ordinal))
        {
            var count = await terminal.StandardOutput.BaseStream.ReadAsync(letters, patience.Token);
            Assert.True(count > 0, $"it ended before it told anything: {seen}");
            seen.Append(Encoding.UTF8.GetString(letters, 0, count));
        }
        await terminal.StandardInput.WriteAsync('\u0003');
        await terminal.StandardInput.FlushAsync(patience.Token);
        await terminal.StandardOutput.BaseStream.CopyToAsync(Stream.Null, patience.Token);
        await terminal.WaitForExitAsync(patience.Token);

        Assert.Equal(Interrupted, terminal.ExitCode);
        Assert.Empty(Directory.GetFiles(_folder.Path));
    }
}
