using Xunit;

namespace FitCheck.Browser;

/// <summary>All drawings of all reference builds on the screen of a telephone.</summary>
[Collection(InChromium.Name)]
public class DrawingTests(Chromium chromium, Reports reports) : IClassFixture<Reports>
{
    private const int Telephone = 390;
    private const double SmallestPx = 9;

    private static readonly string[] Kinds = ["Cross-section of", "Screw holes of", "Load of", "What reaches the tweeters of", "Wiring of",
        "Supply of"];

    [Theory]
    [InlineData("DejaVu")]
    [InlineData("Liberation")]
    public async Task Every_word_is_whole_and_large_enough(string typeface)
    {
        await using var page = await chromium.OpenAsync(reports.OfAllBuilds(), width: Telephone, typeface: Typeface.Named(typeface));
        await page.UnfoldAsync();

        foreach (var kind in Kinds)
            Assert.NotEqual(0, await page.CountAsync($"svg > title:text('{kind}')"));
        Assert.NotEqual(0, await page.CountAsync("svg.bar"));
        Assert.Empty(await page.LostInDrawingsAsync(SmallestPx));
    }
}
