using System.CommandLine;
using Xunit;

namespace FitCheck.Tests.Cli;

/// <summary>Wrong usage names a help that exists and is about the command.</summary>
public sealed class UsageTests
{
    public static TheoryData<string> Commands => [.. Paths("", FitCheck.Cli.Program.Root())];

    [Theory, MemberData(nameof(Commands))]
    public void Wrong_usage_points_to_the_help_of_its_command(string command)
    {
        using var folder = new TemporaryFolder();
        var words = command.Split(' ', StringSplitOptions.RemoveEmptyEntries);

        var (status, output, error) = Run.Of(folder.Path, [.. words, "--no-such-option"]);

        Assert.Equal((3, ""), (status, output));
        var said = error.TrimEnd().Split('\n')[^1];
        Assert.Equal($"Try `fitcheck {command}{(command.Length > 0 ? " " : "")}--help`.", said);
        var help = Run.Of(folder.Path, [.. said["Try `fitcheck ".Length..^"`.".Length].Split(' ')]);
        Assert.Equal((0, ""), (help.Status, help.Error));
        Assert.Contains($"fitcheck {command}".TrimEnd(), help.Out.Split("Usage:")[1].TrimStart().Split('\n')[0], StringComparison.Ordinal);
    }

    [Theory, MemberData(nameof(Commands))]
    public void The_help_of_each_command_has_two_examples_that_are_well_formed(string command)
    {
        using var folder = new TemporaryFolder();
        var (_, output, _) = Run.Of(folder.Path, [.. command.Split(' ', StringSplitOptions.RemoveEmptyEntries), "--help"]);
        var lines = output.ReplaceLineEndings("\n").Split('\n')
            .Where(l => $"{l.TrimStart()} ".StartsWith($"fitcheck {command}{(command.Length > 0 ? " " : "")}", StringComparison.Ordinal)
                && !l.Contains('<', StringComparison.Ordinal) && !l.Contains('[', StringComparison.Ordinal))
            .Select(l => l.Trim().Split("   ")[0].Split(" > ")[0]).Where(l => l.Length > "fitcheck ".Length).ToList();

        Assert.True(lines.Count >= 2, output);
        Assert.All(lines, l => Assert.Empty(FitCheck.Cli.Program.Root().Parse(l["fitcheck ".Length..].Split(' ')).Errors));
    }

    [Theory]
    [InlineData("new part gadget", "new part")]
    [InlineData("new part", "new part")]
    [InlineData("new", "new")]
    [InlineData("completion bash twice", "completion")]
    [InlineData("completion fish", "completion")]
    [InlineData("schema", "schema")]
    [InlineData("check b.yaml --format pdf", "check")]
    public void So_does_a_word_that_is_wrong_or_missing(string words, string command)
    {
        using var folder = new TemporaryFolder();
        var (status, _, error) = Run.Of(folder.Path, words.Split(' '));

        Assert.Equal(3, status);
        Assert.EndsWith($"Try `fitcheck {command} --help`.\n", error, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("chek b.yaml", "there is no command `chek`; did you mean `check`?")]
    [InlineData("new prat driver", "there is no command `prat`; did you mean `part`?")]
    [InlineData("new", "`new` needs one of build and part")]
    [InlineData("new part spacer", "there is no kind `spacer`; what is called so is of the kind `adapter`")]
    [InlineData("new part drivr", "there is no kind `drivr`; did you mean `driver`?")]
    [InlineData("find orrin --kind spacer", "there is no kind `spacer`; what is called so is of the kind `adapter`")]
    public void A_wrong_command_or_kind_is_answered_with_the_nearest(string words, string told)
    {
        using var folder = new TemporaryFolder();
        var (status, output, error) = Run.Of(folder.Path, words.Split(' '));

        Assert.Equal((3, ""), (status, output));
        Assert.StartsWith($"fitcheck: {told}\n", error, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("check b.yaml --formt json", "unknown option `--formt`; did you mean `--format`?")]
    [InlineData("lint --catlog=catalog", "unknown option `--catlog`; did you mean `--catalog`?")]
    [InlineData("list -x b.yaml", "unknown option `-x`")]
    public void A_misspelled_option_is_no_file(string words, string told)
    {
        using var folder = new TemporaryFolder();
        var (status, output, error) = Run.Of(folder.Path, words.Split(' '));

        Assert.Equal((3, ""), (status, output));
        Assert.StartsWith($"fitcheck: {told}", error, StringComparison.Ordinal);
    }

    [Fact]
    public void A_file_may_be_called_like_an_option_behind_two_dashes()
    {
        using var folder = new TemporaryFolder();
        folder.Write("-x.yaml", File.ReadAllText(RepositoryRoot.Of("catalog", "builds", "tansy-bare-tweeter.yaml")));

        Assert.Equal((1, ""), Run.Of(folder.Path, "check", "--", "-x.yaml") is var (status, _, error) ? (status, error) : default);
    }

    private static IEnumerable<string> Paths(string above, Command command) =>
        command.Subcommands.Select(c => (Path: $"{above} {c.Name}".TrimStart(), c)).SelectMany(c => Paths(c.Path, c.c)).Prepend(above);
}
