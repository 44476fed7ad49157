using System.Diagnostics;
using Xunit;

namespace FitCheck.Tests.Cli;

/// <summary>
/// The packages hold what they need: the tool runs, and a program of somebody else's restores the library and runs what the readme shows.
/// </summary>
public sealed class PackageTests
{
    [Fact]
    public async Task A_program_of_somebody_elses_runs_on_the_package_and_the_tool_installs()
    {
        var start = new ProcessStartInfo("bash", [RepositoryRoot.Of("tests", "pack.sh")])
        {
            RedirectStandardOutput = true,
            RedirectStandardError = true,
            UseShellExecute = false
        };
        using var process = Process.Start(start)!;
        var error = process.StandardError.ReadToEndAsync();
        var output = await process.StandardOutput.ReadToEndAsync();
        await process.WaitForExitAsync();

        Assert.True(process.ExitCode == 0, output + await error);
        Assert.EndsWith("both packages are sound\n", output, StringComparison.Ordinal);
    }
}
