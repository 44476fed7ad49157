using Xunit;

namespace FitCheck.Tests.Cli;

/// <summary>`find`: a line for each thing that has every word, and one thing alone as it is written.</summary>
public sealed class FindCommandTests : IDisposable
{
    private readonly TemporaryFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    [Theory]
    [InlineData("tansy front spacer", "spacer-165-tansy-18", "adapter")]
    [InlineData("Orrin C165", "orrin-c165", "driver")]
    [InlineData("45mm tansy cup", "cup-45-tansy", "cup")]
    [InlineData("orrin 165 comp", "orrin-set-165", "component-set")]
    [InlineData("glass --kind rule", "mount/", "rule")]
    [InlineData("tansy door --kind place", "tansy-hatch/front-door-left", "place")]
    public void Things_are_found_by_beginnings_of_their_words(string words, string id, string kind)
    {
        var (status, output, _) = Run.Of(_folder.Path, ["find", .. words.Split(' ')]);

        Assert.Equal(0, status);
        Assert.Contains(output.Split('\n'),
            l => l.StartsWith(id, StringComparison.Ordinal) && l.Contains($"  {kind}", StringComparison.Ordinal));
    }

    [Fact]
    public void A_price_and_a_kind_cut_them_down()
    {
        var (_, all, _) = Run.Of(_folder.Path, "find", "woofer", "--kind", "driver");
        var (_, cheap, _) = Run.Of(_folder.Path, "find", "woofer", "--kind", "driver", "--price-to", "60");

        Assert.All(cheap.TrimEnd().Split('\n')[..^1], l => Assert.Contains($"{l.Split(' ')[0]} ", all, StringComparison.Ordinal));
        Assert.InRange(cheap.Split('\n').Length, 3, all.Split('\n').Length - 1);
    }

    [Fact]
    public void One_alone_is_shown_as_it_is_written()
    {
        var (_, output, _) = Run.Of(_folder.Path, "find", "orrin-c165");

        Assert.StartsWith("orrin-c165  driver  ", output, StringComparison.Ordinal);
        Assert.Contains("\n  id: orrin-c165\n", output.ReplaceLineEndings("\n"), StringComparison.Ordinal);
    }

    [Fact]
    public void Nothing_found_is_told() =>
        Assert.Equal((2, "", "fitcheck: nothing has all of these words: zebra spacer\n"), Run.Of(_folder.Path, "find", "zebra", "spacer"));
}
