using Xunit;

namespace FitCheck.Tests.Cli;

/// <summary>
/// Standard output and standard error that take nothing: /dev/full is a disk without room (full(4), Linux manual pages), `&gt;&amp;-`
/// leaves a stream closed (POSIX, shell command language, 2.7.6).
/// </summary>
public sealed class StandardStreamsTests : IDisposable
{
    private readonly TemporaryFolder _folder = new();

    public StandardStreamsTests() =>
        _folder.Write("b.yaml", File.ReadAllText(RepositoryRoot.Of("catalog", "builds", "tansy-bare-tweeter.yaml")));

    public void Dispose() => _folder.Dispose();

    [Theory]
    [InlineData("check b.yaml")]
    [InlineData("check b.yaml --format html")]
    [InlineData("check b.yaml --format json --output /dev/stdout")]
    [InlineData("suggest b.yaml")]
    [InlineData("lint --format json")]
    [InlineData("list b.yaml")]
    [InlineData("chart --vehicle tansy-hatch")]
    [InlineData("explain")]
    [InlineData("explain mount/too-deep")]
    [InlineData("schema driver")]
    [InlineData("new build")]
    [InlineData("new part driver")]
    [InlineData("completion bash")]
    [InlineData("--help")]
    public void Data_that_finds_no_room_is_told_in_a_line(string command)
    {
        if (!OperatingSystem.IsLinux())
            return;
        var (status, _, error) = Shell.Of(_folder.Path, $"fitcheck {command} > /dev/full");

        Assert.Equal((2, "fitcheck: standard output can't be written: the disk refused it\n"), (status, error));
    }

    [Theory]
    [InlineData("fitcheck check b.yaml >&-", "fitcheck: standard output can't be written: it is closed\n")]
    [InlineData("fitcheck check b.yaml <&- >&- 2>&-", "")]
    public void Data_that_nobody_takes_is_an_output_that_can_not_be_written(string line, string told)
    {
        if (!OperatingSystem.IsLinux())
            return;
        var (status, _, error) = Shell.Of(_folder.Path, line);

        Assert.Equal((2, told), (status, error));
    }

    // The build of the bare tweeter fails, so the verdict's own status is 1.
    [Theory]
    [InlineData("check b.yaml --format html", 1)]
    [InlineData("check b.yaml --format json --output /dev/stdout", 1)]
    [InlineData("chart", 0)]
    [InlineData("explain", 0)]
    public void A_reader_who_has_seen_enough_changes_nothing(string command, int expected)
    {
        if (!OperatingSystem.IsLinux())
            return;
        var (_, output, error) = Shell.Of(_folder.Path, $"fitcheck {command} | head -n 1 > /dev/null; echo ${{PIPESTATUS[0]}}");

        Assert.Equal(($"{expected}\n", ""), (output, error));
    }

    [Theory]
    [InlineData("check nowhere.yaml", 2)]
    [InlineData("check b.yaml", 1)]
    [InlineData("check", 3)]
    [InlineData("check ''", 3)]
    [InlineData("lint nowhere.yaml", 2)]
    [InlineData("explain mount/too-depe", 2)]
    [InlineData("impact --from nowhere", 2)]
    public void Standard_error_that_takes_nothing_changes_no_status(string command, int expected)
    {
        if (!OperatingSystem.IsLinux())
            return;
        foreach (var error in new[] { "2>&-", "2> /dev/full", "<&- 2>&-" })
            Assert.Equal(expected, Shell.Of(_folder.Path, $"fitcheck {command} {error}").Status);
    }

    [Fact]
    public void Nothing_of_what_is_told_gets_into_a_file_that_took_the_place_of_a_closed_stream()
    {
        if (!OperatingSystem.IsLinux())
            return;
        _folder.Write("waiver.yaml",
            File.ReadAllText(_folder.Of("b.yaml"))
                + "\nwaive:\n  - {rule: mount/too-deep, at: front-tweeter-left, reason: nothing there}\n");
        var whole = Shell.Of(_folder.Path, "fitcheck check waiver.yaml --format json --output whole.json");
        var (status, _, _) = Shell.Of(_folder.Path, "fitcheck check waiver.yaml --format json --output r.json <&- >&- 2>&-");

        Assert.Contains("nothing to waive", whole.Error, StringComparison.Ordinal);
        Assert.Equal(whole.Status, status);
        Assert.Equal(File.ReadAllText(_folder.Of("whole.json")), File.ReadAllText(_folder.Of("r.json")));
    }

    [Fact]
    public void What_goes_to_standard_output_by_its_name_adds_to_a_file_there()
    {
        if (!OperatingSystem.IsLinux())
            return;
        _folder.Write("log.txt", "before\n");
        var (status, _, _) = Shell.Of(_folder.Path, "fitcheck check b.yaml --format json --output /dev/stdout >> log.txt");

        Assert.Equal(1, status);
        Assert.StartsWith("before\n{", File.ReadAllText(_folder.Of("log.txt")), StringComparison.Ordinal);
    }
}
