using System.Diagnostics;
using Xunit;

namespace FitCheck.Tests.Hostile;

/// <summary>A small run of each of what `tests/hostile.sh` does, by another seed than that.</summary>
public sealed class HostileRunTests
{
    [Fact]
    public void A_thousand_inputs_end_in_time_with_an_answer_or_a_place()
    {
        var (status, output) = Run("1000", "41");
        Assert.True(status == 0, output);
        Assert.Matches("(^|\n)1000 inputs, [0-9]{3,} runs, ", output);
    }

    [Fact]
    public void Whatever_is_killed_leaves_files_whole_or_as_they_were()
    {
        if (!OperatingSystem.IsLinux())
            return;
        var (status, output) = Run("kill", "20", "41");
        Assert.True(status == 0, output);
        Assert.Matches("(^|\n)2[0-7] kills in ", output);
    }

    private static (int Status, string Output) Run(params string[] words)
    {
        var start = new ProcessStartInfo("dotnet", [Path.Combine(AppContext.BaseDirectory, "FitCheck.Hostile.dll"), .. words])
        {
            RedirectStandardOutput = true,
            RedirectStandardError = true,
            UseShellExecute = false,
        };
        using var process = Process.Start(start)!;
        var error = process.StandardError.ReadToEndAsync();
        var output = process.StandardOutput.ReadToEnd();
        process.WaitForExit();
        return (process.ExitCode, output + error.Result);
    }
}
