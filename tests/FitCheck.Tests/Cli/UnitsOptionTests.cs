using Xunit;

namespace FitCheck.Tests.Cli;

/// <summary>`--units inch`, and `units: inch` in a build: for people, not for programs.</summary>
public sealed class UnitsOptionTests : IDisposable
{
    private readonly TemporaryFolder _folder = new();

    public UnitsOptionTests()
    {
        var text = File.ReadAllText(RepositoryRoot.Of("catalog", "builds", "alder-missing-data.yaml"));
        _folder.Write("mine.yaml", text);
        _folder.Write("inch/mine.yaml", text.TrimEnd() + "\nunits: inch\n");
    }

    public void Dispose() => _folder.Dispose();

    [Fact]
    public void The_json_is_the_same_to_the_byte()
    {
        var plain = Run.Of(_folder.Path, "check", "mine.yaml", "--format", "json").Out;

        Assert.Equal(plain, Run.Of(_folder.Path, "check", "mine.yaml", "--format", "json", "--units", "inch").Out);
        Assert.Equal(plain, Run.Of(Path.Combine(_folder.Path, "inch"), "check", "mine.yaml", "--format", "json").Out);
    }

    [Fact]
    public void A_run_with_both_kinds_of_formats_tells_each_in_its_units()
    {
        var run = Run.Of(_folder.Path, "check", "mine.yaml", "--units", "inch", "--format", "text", "--format", "json", "--output", "a.txt",
            "--output", "a.json", "--sheet", "sheet.html");

        Assert.InRange(run.Status, 0, 1);
        Assert.Contains(" in or more", File.ReadAllText(_folder.Of("a.txt")), StringComparison.Ordinal);
        Assert.DoesNotContain(" in or more", File.ReadAllText(_folder.Of("a.json")), StringComparison.Ordinal);
        Assert.Matches("[0-9.]+ mm \\([0-9 /.]+ in\\)", File.ReadAllText(_folder.Of("sheet.html")));
    }

    [Fact]
    public void What_is_asked_for_goes_before_what_the_build_says()
    {
        Assert.Contains(" in or more", Run.Of(Path.Combine(_folder.Path, "inch"), "check", "mine.yaml").Out, StringComparison.Ordinal);
        Assert.DoesNotContain(" in or more", Run.Of(Path.Combine(_folder.Path, "inch"), "check", "mine.yaml", "--units", "mm").Out,
            StringComparison.Ordinal);
    }

    [Fact]
    public void Other_units_are_wrong_usage() => Assert.Equal(3, Run.Of(_folder.Path, "check", "mine.yaml", "--units", "cubits").Status);

    [Theory]
    [InlineData("chart", "--vehicle", "tansy-hatch", "--driver", "orrin-c165")]
    [InlineData("measure", "mine.yaml")]
    [InlineData("suggest", "mine.yaml")]
    public void Every_command_that_tells_lengths_takes_it(params string[] command)
    {
        var run = Run.Of(_folder.Path, [.. command, "--units", "inch"]);

        Assert.InRange(run.Status, 0, 1);
        Assert.Matches("[0-9] in\\b", run.Out);
        Assert.NotEqual(run.Out, Run.Of(_folder.Path, command).Out);
    }
}
