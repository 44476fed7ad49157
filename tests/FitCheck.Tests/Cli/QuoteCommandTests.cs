using Xunit;

namespace FitCheck.Tests.Cli;

/// <summary>
/// From a seller's list to verdict, list and changes in one command: the same as over a build that `new build --from` writes.
/// </summary>
public sealed class QuoteCommandTests : IDisposable
{
    private readonly TemporaryFolder _folder = new();

    public QuoteCommandTests() => _folder.Write("quote.csv", "Bezeichnung;Menge\nOrrin C165 coaxial;1\nTansy front spacer 18 mm;1\n"
        + "Duo-A harness to 4.8 and 2.8 mm tabs;1\nEinbau;1\n");

    public void Dispose() => _folder.Dispose();

    [Fact]
    public void A_list_is_checked_as_the_build_that_it_becomes()
    {
        var (made, _, _) = Run.Of(_folder.Path, "new", "build", "--from", "quote.csv", "--vehicle", "tansy-hatch", "-o", "made.yaml");
        var (status, output, _) = Run.Of(_folder.Path, "check", "made.yaml", "--format", "text");

        var (same, direct, told) = Run.Of(_folder.Path, "check", "quote.csv", "--vehicle", "tansy-hatch", "--format", "text");

        Assert.Equal((0, status), (made, same));
        Assert.Equal(output.Replace("made.yaml", "FILE", StringComparison.Ordinal),
            direct.Replace("quote.csv as a build", "FILE", StringComparison.Ordinal));
        Assert.Contains("quote.csv: warning: 2 lines are no parts: 1 (what stands above); 5 (labour)", told, StringComparison.Ordinal);
    }

    [Fact]
    public void A_list_is_listed_and_changed_too()
    {
        Assert.Matches("Total +130.50 EUR", Run.Of(_folder.Path, "list", "quote.csv", "--vehicle", "tansy-hatch").Out);
        var (status, output, _) = Run.Of(_folder.Path, "suggest", "quote.csv", "--vehicle", "tansy-hatch", "--write", "better.yaml");

        Assert.True(status is 0 or 1, output);
        Assert.NotEqual("", output);
    }

    [Theory]
    [InlineData(3, "check", "quote.csv", "--at", "orrin-c165=front-door-left")]
    [InlineData(2, "check", "quote.csv", "--vehicle", "tansyhatch")]
    [InlineData(2, "check", "missing.csv", "--vehicle", "tansy-hatch")]
    [InlineData(2, "check", "quote.csv", "--vehicle", "tansy-hatch", "--as", "9=orrin-c165")]
    [InlineData(3, "list", "quote.csv", "--skip", "2")]
    [InlineData(3, "suggest", "quote.csv", "--as", "2=orrin-c165")]
    public void Wrong_use_and_wrong_input_have_their_statuses(int status, params string[] arguments)
    {
        var (actual, output, error) = Run.Of(_folder.Path, arguments);

        Assert.Equal((status, ""), (actual, output));
        Assert.NotEqual("", error);
        Assert.DoesNotContain("   at ", error, StringComparison.Ordinal);
    }

    [Fact]
    public void Of_a_list_that_nobody_has_saved_as_a_build_no_file_is_named_that_is_not_there()
    {
        _folder.Write("quote.csv", "orrin-c165,1\n");

        var (_, output, _) = Run.Of(_folder.Path, "check", "quote.csv", "--vehicle", "alder-mpv", "--at",
            "orrin-c165=front-door-left,front-door-right");

        Assert.Contains("Measure first", output, StringComparison.Ordinal);
        Assert.Contains("fitcheck new build --from quote.csv", output.ReplaceLineEndings(" ").Replace("  ", "", StringComparison.Ordinal),
            StringComparison.Ordinal);
        Assert.DoesNotContain("fitcheck measure \"", output, StringComparison.Ordinal);
    }
}
