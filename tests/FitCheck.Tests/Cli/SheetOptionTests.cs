using Xunit;

namespace FitCheck.Tests.Cli;

public sealed class SheetOptionTests : IDisposable
{
    private static readonly string Build = RepositoryRoot.Of("catalog", "builds", "tansy-bare-tweeter.yaml");

    private readonly TemporaryFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    [Fact]
    public void The_sheet_is_written_beside_the_usual_report()
    {
        var (status, output, error) = Run.Of(_folder.Path, "check", Build, "--sheet", "s.html");

        Assert.Equal((1, ""), (status, error));
        Assert.Contains("FAIL", output, StringComparison.Ordinal);
        Assert.Contains("do not start", File.ReadAllText(_folder.Of("s.html")), StringComparison.Ordinal);
        Assert.Equal(["s.html"], Directory.GetFiles(_folder.Path).Select(f => Path.GetFileName(f)));
    }

    [Fact]
    public void Two_sheets_are_wrong_usage() =>
        Assert.Equal(3, Run.Of(_folder.Path, "check", Build, "--sheet", "a.html", "--sheet", "b.html").Status);

    [Fact]
    public void One_file_can_t_take_the_sheet_and_a_report()
    {
        var (status, _, error) = Run.Of(_folder.Path, "check", Build, "--output", "a.html", "--sheet", "./a.html");

        Assert.Equal(3, status);
        Assert.Contains("a.html is named twice, by --output and by --sheet", error, StringComparison.Ordinal);
    }

    [Fact]
    public void A_bad_build_leaves_an_old_sheet_as_it_was()
    {
        _folder.Write("s.html", "yesterday's");

        Assert.Equal(2, Run.Of(_folder.Path, "check", "missing.yaml", "--sheet", "s.html").Status);
        Assert.Equal("yesterday's", File.ReadAllText(_folder.Of("s.html")));
    }
}
