using System.Diagnostics;
using Xunit;

namespace FitCheck.Tests.Cli;

/// <summary>However a check is asked for and whichever program answers, the answer is one.</summary>
public sealed class QuickProgramTests
{
    private static readonly string Build = RepositoryRoot.Of("catalog", "builds", "front-rear-two-amps.yaml");

    // What the plain reading of a command line takes, and what it leaves to the library for command lines.
    [Theory]
    [InlineData("--format json", "--format=json")]
    [InlineData("-f json", "-f:json")]
    [InlineData("--verbose", "--verbose true")]
    [InlineData("--fail-on warn --no-color", "--fail-on=warn --no-color=true")]
    public void Two_spellings_of_a_command_line_say_the_same(string plain, string unusual)
    {
        using var folder = new TemporaryFolder();

        Assert.Equal(Run.Of(folder.Path, ["check", Build, .. plain.Split(' ')]),
            Run.Of(folder.Path, ["check", Build, .. unusual.Split(' ')]));
    }

    [Theory]
    [InlineData("")]
    [InlineData("--format json")]
    [InlineData("--format html")]
    [InlineData("--format markdown --format junit --output r.xml")]
    [InlineData("--sheet s.html")]
    [InlineData("--verbose no-such-file.yaml")]
    [InlineData("--no-such-option")]
    public void The_quick_program_says_what_the_whole_one_says(string options)
    {
        var quick = RepositoryRoot.Of("src", "FitCheck.Cli", "bin", "Release", "net10.0", "fitcheck");
        if (OperatingSystem.IsWindows())
            return; // no quick program there
        Assert.True(File.Exists(quick + "-whole"), "There is no quick program: install gcc and build in Release, as tests/run.sh does.");
        using var folder = new TemporaryFolder();
        string[] arguments = ["check", Build, .. options.Split(' ', StringSplitOptions.RemoveEmptyEntries)];

        var whole = Answer(quick + "-whole", folder.Path, arguments);

        // The first of them hands over when nothing is remembered yet.
        Assert.All(Enumerable.Range(0, 2), _ => Assert.Equal(whole, Answer(quick, folder.Path, arguments)));
    }

    [Fact]
    public void The_quick_program_lints_as_the_whole_one_does()
    {
        var quick = RepositoryRoot.Of("src", "FitCheck.Cli", "bin", "Release", "net10.0", "fitcheck");
        if (OperatingSystem.IsWindows())
            return; // no quick program there
        using var folder = new TemporaryFolder();
        var good = folder.Write("catalog/cups/cup-45-tansy.yaml",
            File.ReadAllText(RepositoryRoot.Of("catalog", "cups", "cup-45-tansy.yaml")));
        foreach (var text in new[] { "hole: 45 mm", "hole: 45 mn", "hole: -5 mm" })
        {
            File.WriteAllText(good, File.ReadAllText(good).Replace("hole: 45 mm", text, StringComparison.Ordinal));
            var whole = Answer(quick + "-whole", folder.Path, ["lint", "--catalog", "catalog"]);
            Assert.All(Enumerable.Range(0, 2), _ => Assert.Equal(whole, Answer(quick, folder.Path, ["lint", "--catalog", "catalog"])));
        }
    }

    [Theory]
    [InlineData("check b.yaml > /dev/full", 2)]
    [InlineData("check b.yaml --format json > /dev/full", 2)]
    [InlineData("check b.yaml >&-", 2)]
    [InlineData("check b.yaml --format json | head -c 1 > /dev/null; exit ${PIPESTATUS[0]}", 1)]
    [InlineData("check nowhere.yaml 2> /dev/full", 2)]
    [InlineData("check nowhere.yaml <&- >&- 2>&-", 2)]
    [InlineData("lint > /dev/full", 2)]
    [InlineData("lint 2>&-", 0)]
    [InlineData("check ''", 3)]
    [InlineData("check b.yaml --output ''", 3)]
    [InlineData("lint --catalog ''", 3)]
    [InlineData("check b.yaml --format json --output hard", 2)]
    [InlineData("check b.yaml --format json --output soft", 2)]
    [InlineData("check b.yaml --format json --output r.json --format text --output ./r.json", 3)]
    public void Both_programs_bear_what_a_shell_does_to_them(string line, int status)
    {
        var quick = RepositoryRoot.Of("src", "FitCheck.Cli", "bin", "Release", "net10.0", "fitcheck");
        if (!OperatingSystem.IsLinux())
            return;
        Assert.True(File.Exists(quick + "-whole"), "There is no quick program: install gcc and build in Release, as tests/run.sh does.");
        using var folder = new TemporaryFolder();
        var build = File.ReadAllText(RepositoryRoot.Of("catalog", "builds", "tansy-bare-tweeter.yaml"));
        folder.Write("b.yaml", build);
        Answer("bash", folder.Path, ["-c", $"ln b.yaml hard; ln -s b.yaml soft; '{quick}' check b.yaml; '{quick}' lint"]);

        foreach (var program in new[] { quick, quick + "-whole" })
        {
            Assert.Equal(status, Answer("bash", folder.Path, ["-c", $"'{program}' {line}"]).Status);
            Assert.Equal(build, File.ReadAllText(folder.Of("b.yaml")));
        }
    }

    private static (int Status, string Out, string Error) Answer(string program, string folder, string[] arguments)
    {
        var start = new ProcessStartInfo(program, arguments)
        {
            WorkingDirectory = folder,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
            UseShellExecute = false
        };
        start.Environment["FITCHECK_CACHE"] = Path.Combine(folder, "cache");
        using var process = Process.Start(start)!;
        var error = process.StandardError.ReadToEndAsync();
        var output = process.StandardOutput.ReadToEnd();
        process.WaitForExit();
        return (process.ExitCode, output, error.Result);
    }
}
