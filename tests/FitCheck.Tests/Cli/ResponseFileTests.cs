using Xunit;

namespace FitCheck.Tests.Cli;

/// <summary>
/// What stands in a file whose name begins with `@` never becomes options: a change can bring such a file, and a shell that is asked for
/// all builds names it.
/// </summary>
public sealed class ResponseFileTests : IDisposable
{
    private readonly TemporaryFolder _folder = new();

    public ResponseFileTests() => _folder.Write("x.yaml", "--format\njson\n");

    public void Dispose() => _folder.Dispose();

    [Theory]
    [InlineData("check", "{0}", "@x.yaml")]
    [InlineData("check", "{0}", "--fail-on=warn", "@x.yaml")]
    [InlineData("list", "{0}", "@x.yaml")]
    [InlineData("lint", "@x.yaml")]
    [InlineData("lint", "--format=text", "@x.yaml")]
    public void A_name_with_an_at_sign_is_the_name_of_a_file(params string[] arguments)
    {
        var build = RepositoryRoot.Of("catalog", "builds", "tansy-quote.yaml");
        var (status, output, error) =
            Run.InTime(_folder.Path, [.. arguments.Select(a => a.Replace("{0}", build, StringComparison.Ordinal))]);
        Assert.Equal(2, status);
        Assert.Contains("@x.yaml: error: no such file", output + error, StringComparison.Ordinal);
        Assert.DoesNotContain("\"format\"", output, StringComparison.Ordinal);
    }

    [Fact]
    public void A_build_may_be_called_so()
    {
        _folder.Write("@mine.yaml", File.ReadAllText(RepositoryRoot.Of("catalog", "builds", "tansy-quote.yaml")));
        var (status, output, _) = Run.InTime(_folder.Path, "check", "@mine.yaml", "--no-color=true");
        Assert.Equal(1, status);
        Assert.Contains("  @mine.yaml:", output, StringComparison.Ordinal);
    }
}
