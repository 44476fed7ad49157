using System.Diagnostics;
using Xunit;

namespace FitCheck.Tests.Cli;

/// <summary>Reports and what is remembered, when the disk is full and when the process dies.</summary>
public sealed class HardTreatmentTests : IDisposable
{
    private const string Build = "tansy-quote.yaml";
    private const string Old = "<!doctype html>yesterday's</html>\n";

    private readonly TemporaryFolder _folder = new();

    public HardTreatmentTests() => _folder.Write(Build, File.ReadAllText(RepositoryRoot.Of("catalog", "builds", Build)));

    public void Dispose() => _folder.Dispose();

    // The shell's limit on the size of files stands for a full disk: a write fails when a part of the file is there.
    [Fact]
    public void A_full_disk_leaves_the_old_report_and_says_so()
    {
        if (!OperatingSystem.IsLinux())
            return;
        _folder.Write("r.html", Old);
        var (status, error) = Limited("check", Build, "--format", "html", "--output", "r.html");

        Assert.Equal(2, status);
        Assert.Contains("r.html can't be written: the disk refused it", error, StringComparison.Ordinal);
        Assert.Equal(Old, File.ReadAllText(_folder.Of("r.html")));
        Assert.Equal(["r.html", Build], Directory.GetFiles(_folder.Path).Select(f => Path.GetFileName(f)).Order(StringComparer.Ordinal));
    }

    [Fact]
    public void A_full_disk_costs_lint_its_notes_and_nothing_else()
    {
        if (!OperatingSystem.IsLinux())
            return;
        string[] lint = ["lint", "--catalog", RepositoryRoot.Of("catalog"), "--rules", RepositoryRoot.Of("rules")];
        var (status, error) = Limited(lint);

        Assert.Equal(0, status);
        Assert.DoesNotContain("Exception", error, StringComparison.Ordinal);
        Assert.All(Directory.Exists(_folder.Of("cache")) ? Directory.GetFiles(_folder.Of("cache")) : [],
            f => Assert.DoesNotContain(".part", f, StringComparison.Ordinal));
        Assert.Equal(0, Run.Of(_folder.Path, lint).Status);
    }

    [Fact]
    public void A_report_is_whole_or_the_old_one_whenever_the_process_is_killed()
    {
        _folder.Write("r.html", Old);
        var watch = Stopwatch.StartNew();
        Run.Of(_folder.Path, "check", Build, "--format", "html", "--output", "r.html");
        var takes = watch.ElapsedMilliseconds;
        var whole = File.ReadAllText(_folder.Of("r.html"));
        Assert.EndsWith("</html>\n", whole, StringComparison.Ordinal);

        // The last third of a run is when it writes.
        for (var i = 0; i < 12; i++)
        {
            _folder.Write("r.html", Old);
            using var process = Run.Start(_folder.Path, "check", Build, "--format", "html", "--output", "r.html");
            process.WaitForExit((int)(takes * (24 + i) / 36));
            process.Kill();
            process.WaitForExit();
            Assert.Contains(File.ReadAllText(_folder.Of("r.html")), new[] { Old, whole });
        }
        Assert.Equal(0, Run.Of(_folder.Path, "check", Build, "--fail-on", "fail", "--format", "html", "--output", "r.html").Status & ~1);
        Assert.Equal(whole, File.ReadAllText(_folder.Of("r.html")));
    }

    private (int Status, string Error) Limited(params string[] arguments)
    {
        var quoted = string.Join(' ', arguments.Select(a => $"'{a}'"));
        var start = new ProcessStartInfo("bash",
            ["-c", $"trap '' XFSZ; ulimit -f 16; exec dotnet '{Path.Combine(AppContext.BaseDirectory, "fitcheck.dll")}' {quoted}"])
        {
            WorkingDirectory = _folder.Path,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
            UseShellExecute = false,
        };
        start.Environment["FITCHECK_CACHE"] = _folder.Of("cache");
        // The runtime keeps its own code in a file that is longer than that.
        start.Environment["DOTNET_EnableWriteXorExecute"] = "0";
        using var process = Process.Start(start)!;
        var error = process.StandardError.ReadToEndAsync();
        process.StandardOutput.ReadToEnd();
        process.WaitForExit();
        return (process.ExitCode, error.Result);
    }
}
