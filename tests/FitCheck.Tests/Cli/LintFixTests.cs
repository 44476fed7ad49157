using Xunit;

namespace FitCheck.Tests.Cli;

/// <summary>`fitcheck lint --fix` as a person runs it: files on the disk, what it tells, and its exit status.</summary>
public sealed class LintFixTests
{
    private static readonly string Good = File.ReadAllText(RepositoryRoot.Of("catalog", "sundries", "ring-165-20.yaml"))
        .Replace("\n", "\r\n", StringComparison.Ordinal);

    [Fact]
    public void A_file_is_put_right_and_the_rest_of_it_kept()
    {
        using var folder = new TemporaryFolder();
        var file = folder.Write("own/sundries/ring-165-20.yaml",
            Good.Replace("free_height: 20 mm", "free_height: 20mm", StringComparison.Ordinal)
                .Replace("pack: 2", "pack: 2 ", StringComparison.Ordinal));

        var (status, output, error) = Lint(folder, "--fix");

        Assert.Equal((0, ""), (status, output));
        Assert.Equal(Good, File.ReadAllText(file));
        Assert.Equal(
            ["own/sundries/ring-165-20.yaml:13:14: fixed: `20mm ± 1 mm` spelled `20 mm ± 1 mm`",
                "own/sundries/ring-165-20.yaml:8:8: fixed: spaces at the end of the line taken off", "2 places put right in 1 file"],
            error.Split('\n', StringSplitOptions.RemoveEmptyEntries).Select(l => l.TrimEnd('\r')).Take(3));
    }

    [Fact]
    public void Without_a_slip_nothing_is_written()
    {
        using var folder = new TemporaryFolder();
        var file = folder.Write("own/sundries/ring-165-20.yaml", Good);
        var before = File.GetLastWriteTimeUtc(file);

        var (status, _, error) = Lint(folder, "--fix");

        Assert.Equal((0, before), (status, File.GetLastWriteTimeUtc(file)));
        Assert.StartsWith("nothing to fix", error, StringComparison.Ordinal);
    }

    [Fact]
    public void A_figure_that_cannot_be_is_invalid_and_never_fixed()
    {
        using var folder = new TemporaryFolder();
        var text = Good.Replace("free_height: 20 mm ± 1 mm", "free_height: 2 mm", StringComparison.Ordinal);
        var file = folder.Write("own/sundries/ring-165-20.yaml", text);

        var (status, output, _) = Lint(folder, "--fix");

        Assert.Equal(2, status);
        Assert.Equal(
            "own/sundries/ring-165-20.yaml:14:20: error: Foam gasket ring for 165 mm drivers, 20 mm high, pair: when it is pressed "
                + "it is 3 mm high, but free only 2 mm, 1 mm less: were the two swapped? [data/gasket-not-compressed]", output.TrimEnd());
        Assert.Equal(text, File.ReadAllText(file));
    }

    private static (int Status, string Out, string Error) Lint(TemporaryFolder folder, params string[] options) =>
        Run.Of(folder.Path, ["lint", "--catalog", "own", .. options]);
}
