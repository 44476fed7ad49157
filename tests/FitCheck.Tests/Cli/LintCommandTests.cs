using System.Text.Json;
using Xunit;

namespace FitCheck.Tests.Cli;

public sealed class LintCommandTests : IDisposable
{
    private readonly TemporaryFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    [Fact]
    public void Problems_go_to_files_and_to_standard_output_at_once()
    {
        _folder.Write("bad.yaml", "kind: build\nnaem: x\n\"a\\n::error::b\": 1\n");
        var (status, output, error) =
            Run.Of(_folder.Path, "lint", "bad.yaml", "--format", "sarif", "--output", "lint.sarif", "--format", "json", "--output",
                "lint.json", "--format", "github");

        Assert.Equal(2, status);
        Assert.All(output.Split('\n', StringSplitOptions.RemoveEmptyEntries), line => Assert.Matches("^::(error|warning) file=", line));
        Assert.Contains("::error file=bad.yaml,line=2,col=", output, StringComparison.Ordinal);
        Assert.Contains(" read: ", error, StringComparison.Ordinal);
        var problems = JsonDocument.Parse(File.ReadAllText(_folder.Of("lint.json"))).RootElement.GetProperty("problems");
        var results = JsonDocument.Parse(File.ReadAllText(_folder.Of("lint.sarif"))).RootElement.GetProperty("runs")[0]
            .GetProperty("results");
        Assert.Equal(problems.EnumerateArray().Select(p => (p.GetProperty("rule").GetString(), p.GetProperty("fingerprint").GetString())),
            results.EnumerateArray()
                .Select(r =>
                (r.GetProperty("ruleId").GetString(), r.GetProperty("partialFingerprints").GetProperty("fitcheck/v1").GetString())));
    }

    [Theory]
    [InlineData("--format", "pdf")]
    [InlineData("--format", "html", "--format", "json")]
    [InlineData("--output", "a.json", "--output", "a.json")]
    public void A_wrong_command_line_writes_nothing(params string[] options)
    {
        var (status, output, error) = Run.Of(_folder.Path, ["lint", .. options]);

        Assert.Equal((3, ""), (status, output));
        Assert.NotEqual("", error);
        Assert.Empty(Directory.GetFiles(_folder.Path));
    }

    [Fact]
    public void A_plain_problem_is_one_line_whatever_stands_in_the_file()
    {
        _folder.Write("bad.yaml", "kind: build\n\"a\\n::error::b\": 1\n");
        var (_, output, _) = Run.Of(_folder.Path, "lint", "bad.yaml");

        Assert.DoesNotContain("\n::", output, StringComparison.Ordinal);
    }
}
