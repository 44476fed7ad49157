using Xunit;

namespace FitCheck.Tests.Cli;

public sealed class ListCommandTests : IDisposable
{
    private readonly TemporaryFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    [Fact]
    public void A_quote_becomes_a_build_and_the_build_a_list_in_a_culture_with_commas()
    {
        _folder.Write("quote.csv",
            "Bezeichnung;Menge\nOrrin C165 coaxial;1\nTansy front spacer 18 mm;1\nDuo-A harness to 4.8 and 2.8 mm tabs;1\n");

        var (made, _, told) = Run.Of(_folder.Path, "new", "build", "--from", "quote.csv", "--vehicle", "tansy-hatch", "-o", "made.yaml");
        Assert.Equal((0, ""), (made, told));
        var (kept, _, error) = Run.Of(_folder.Path, "new", "build", "--from", "quote.csv", "--vehicle", "tansy-hatch", "-o", "made.yaml");
        Assert.Equal((2, "fitcheck: made.yaml exists; it is kept as it is\n"), (kept, error.ReplaceLineEndings("\n")));

        var (status, output, _) = Run.Of(_folder.Path, "list", "made.yaml", "--tax", "8.1", "--net");
        Assert.Equal(0, status);
        Assert.Matches("Total +130.50 EUR", output); // 89.00 + 32.00 + 9.50
        Assert.Matches("and 8.1 % tax +10.57 EUR", output); // by hand: 10.5705
        Assert.Matches("with tax +141.07 EUR", output);
        Assert.Contains("asked for by seal/gap-to-the-door-card", output, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(3, "list")]
    [InlineData(3, "list", "a.yaml", "--net")]
    [InlineData(3, "list", "a.yaml", "--tax", "8,1")]
    [InlineData(3, "list", "a.yaml", "--format", "sarif")]
    [InlineData(2, "list", "missing.yaml")]
    [InlineData(3, "new", "build", "--at", "a=b")]
    [InlineData(3, "new", "build", "--from", "quote.csv")]
    [InlineData(2, "new", "build", "--from", "missing.csv", "--vehicle", "tansy-hatch")]
    public void Wrong_use_and_wrong_input_have_their_statuses(int status, params string[] arguments)
    {
        var (actual, output, error) = Run.Of(_folder.Path, arguments);

        Assert.Equal((status, ""), (actual, output));
        Assert.NotEqual("", error);
        Assert.DoesNotContain("   at ", error, StringComparison.Ordinal);
    }
}
