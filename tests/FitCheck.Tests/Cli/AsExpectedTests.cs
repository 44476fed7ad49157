using Xunit;

namespace FitCheck.Tests.Cli;

/// <summary>
/// What a build is meant to give counts under `--as-expected` alone, and changes no verdict. The bare tweeter is destroyed and the load too
/// low, on both sides (worked by hand in tansy-bare-tweeter.expected).
/// </summary>
public sealed class AsExpectedTests : IDisposable
{
    private const string Meant = "\nexpect:\n  verdict: fail\n  findings:\n"
        + "    - {rule: tweeter/full-range-feed, at: [front-tweeter-left, front-tweeter-right]}\n"
        + "    - {rule: load/below-rated-load, at: [front-left, front-right]}\n";

    private static readonly string Bare = Without("tansy-bare-tweeter");
    private readonly TemporaryFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    [Fact]
    public void A_place_that_the_build_does_not_have_is_told_and_changes_nothing_else()
    {
        var (status, output, error) = Check(Bare + Meant.Replace("front-left", "front-lfet", StringComparison.Ordinal));
        Assert.Equal(1, status);
        Assert.NotEmpty(output);
        Assert.Contains("nothing is found at `front-lfet`", error, StringComparison.Ordinal);
        Assert.Contains("did you mean `front-left`?", error, StringComparison.Ordinal);
    }

    [Fact]
    public void A_mistake_on_purpose_is_as_expected_and_fails_all_the_same_without_the_option()
    {
        var lines = Bare.Split('\n').Length + 2;
        var (status, output, error) = Check(Bare + Meant, "--as-expected");
        Assert.Equal((0, $"b.yaml:{lines}:12: as expected: fail\n"), (status, error));
        Assert.Contains("does not go together as planned", output, StringComparison.Ordinal);

        Assert.Equal((1, output, ""), Check(Bare + Meant));
        Assert.Equal(0, Check(Bare + "\nexpect: {verdict: fail}\n", "--as-expected").Status);
    }

    [Theory]
    [InlineData("json")]
    [InlineData("text")]
    [InlineData("sarif")]
    [InlineData("junit")]
    [InlineData("github")]
    [InlineData("markdown")]
    [InlineData("html")]
    public void What_a_person_is_told_is_the_same_to_the_byte(string format)
    {
        var without = Check(Bare, "--format", format);
        Assert.Equal((1, without.Out), Two(Check(Bare + Meant, "--format", format)));
        if (format is not ("junit" or "github" or "markdown"))
            Assert.Equal((0, without.Out), Two(Check(Bare + Meant, "--format", format, "--as-expected")));
    }

    [Theory]
    [InlineData("junit")]
    [InlineData("github")]
    [InlineData("markdown")]
    public void What_a_change_is_told_is_what_is_not_as_meant(string format)
    {
        var meant = Check(Bare + Meant, "--format", format, "--as-expected");
        Assert.DoesNotContain("full-range-feed", meant.Out, StringComparison.Ordinal);
        Assert.Equal(format != "github", meant.Out.Contains("as meant", StringComparison.Ordinal));

        var other = Check(Bare + Meant.Replace("[front-left, front-right]", "[front-left]", StringComparison.Ordinal), "--format", format,
            "--as-expected");
        Assert.Equal(1, other.Status);
        Assert.Contains("load/below-rated-load", other.Out, StringComparison.Ordinal);
        Assert.DoesNotContain("full-range-feed", other.Out, StringComparison.Ordinal);

        // One that says nothing is told as ever.
        Assert.Contains("full-range-feed", Check(Bare, "--format", format, "--as-expected").Out, StringComparison.Ordinal);
    }

    [Fact]
    public void One_that_begins_to_pass_is_told()
    {
        // Good but for a point to look at: the factory tweeters are unplugged.
        var text = File.ReadAllText(RepositoryRoot.Of("catalog", "builds", "tansy-door-swap.yaml"));
        var line = text.Split('\n').Length + 2;
        var (status, _, error) = Check(text + Meant, "--as-expected");
        Assert.Equal(1, status);
        Assert.StartsWith($"b.yaml:{line}:12: error: meant to give fail, and gives warn\n", error, StringComparison.Ordinal);
        Assert.Contains($"b.yaml:{line + 2}:44: error: meant to fail by `tweeter/full-range-feed` at `front-tweeter-left`, and it does not "
            + "apply\n", error, StringComparison.Ordinal);
        Assert.Equal(5, error.TrimEnd('\n').Split('\n').Length);
    }

    [Theory]
    [InlineData("    - {rule: load/below-rated-load, at: [front-left, front-right]}\n", "",
        "not meant: fail `load/below-rated-load` at `front-right`")]
    [InlineData("[front-left, front-right]", "[front-left]", "not meant: fail `load/below-rated-load` at `front-right`")]
    [InlineData("[front-left, front-right]", "[front-left, front-right, front-door-left]",
        "meant to fail by `load/below-rated-load` at `front-door-left`, and it does not apply")]
    [InlineData("load/below-rated-load", "load/hard-to-drive", "meant to fail by `load/hard-to-drive` at `front-left`, and it ")]
    [InlineData("load/below-rated-load", "load/below-rated-laod", "did you mean `load/below-rated-load`?")]
    [InlineData("verdict: fail", "verdict: warn", "meant to give warn, and gives fail")]
    public void One_that_fails_otherwise_is_told_with_each_difference(string good, string bad, string told)
    {
        Assert.Contains(good, Meant, StringComparison.Ordinal);
        var (status, _, error) = Check(Bare + Meant.Replace(good, bad, StringComparison.Ordinal), "--as-expected");
        Assert.Equal(1, status);
        Assert.Contains(told, error, StringComparison.Ordinal);
        Assert.All(error.TrimEnd('\n').Split('\n'), l => Assert.Matches(@"^\S+\.yaml:\d+:\d+: error: ", l));
    }

    // Without a place any place will do; a build that does not say what it is meant to give is judged as ever.
    [Fact]
    public void A_rule_alone_is_enough_and_other_builds_are_judged_as_ever()
    {
        var any = Meant.Replace(", at: [front-tweeter-left, front-tweeter-right]", "", StringComparison.Ordinal);
        Assert.Equal(0, Check(Bare + any, "--as-expected").Status);

        _folder.Write("plain.yaml", Bare);
        Assert.Equal(1, Check(Bare + Meant, "--as-expected", "plain.yaml").Status);
    }

    [Fact]
    public void All_reference_builds_are_green_by_the_command_of_the_workflow()
    {
        var builds = Directory.GetFiles(RepositoryRoot.Of("catalog", "builds"), "*.yaml");
        var (status, _, error) = Run.Of(_folder.Path, ["check", .. builds, "--as-expected", "--format", "json", "--catalog",
            RepositoryRoot.Of("catalog"), "--rules", RepositoryRoot.Of("rules")]);
        Assert.True(status == 0, error);
        Assert.DoesNotContain("error:", error, StringComparison.Ordinal);
    }

    // A summary that is read whole, and a file that a test server takes at once.
    [Fact]
    public void Reports_of_all_reference_builds_stay_short()
    {
        var builds = Directory.GetFiles(RepositoryRoot.Of("catalog", "builds"), "*.yaml");
        var (status, _, error) = Run.Of(_folder.Path, ["check", .. builds, "--as-expected", "--format", "junit", "--output", "check.xml",
            "--format", "markdown", "--output", "check.md", "--catalog", RepositoryRoot.Of("catalog"), "--rules",
            RepositoryRoot.Of("rules")]);
        Assert.True(status == 0, error);
        Assert.InRange(builds.Length, 54, int.MaxValue);
        Assert.InRange(new FileInfo(_folder.Of("check.md")).Length, 1, 10_000);
        Assert.InRange(new FileInfo(_folder.Of("check.xml")).Length, 1, 300_000);
        Assert.StartsWith($"### FitCheck: all {builds.Length} builds are as meant\n", File.ReadAllText(_folder.Of("check.md")),
            StringComparison.Ordinal);
        Assert.Equal(builds.Length, System.Xml.Linq.XDocument.Load(_folder.Of("check.xml")).Descendants("testsuite").Count());
    }

    private (int Status, string Out, string Error) Check(string text, params string[] options)
    {
        _folder.Write("b.yaml", text);
        return Run.Of(_folder.Path, ["check", "b.yaml", .. options]);
    }

    private static (int, string) Two((int Status, string Out, string Error) run) => (run.Status, run.Out);

    private static string Without(string build)
    {
        var text = File.ReadAllText(RepositoryRoot.Of("catalog", "builds", build + ".yaml"));
        return text[..text.IndexOf("\nexpect:", StringComparison.Ordinal)];
    }
}
