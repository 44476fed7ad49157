using Microsoft.Playwright;
using Xunit;

namespace FitCheck.Browser;

/// <summary>The pages besides the report of a build: builds side by side, the list of parts, the chart.</summary>
[Collection(InChromium.Name)]
public class OtherPagesTests(Chromium chromium, Reports reports) : IClassFixture<Reports>
{
    private const int Telephone = 390;
    private const int Desk = 1280;

    private static readonly (string Command, string[] Builds)[] Shown =
    [
        ("check", ["tansy-door-swap.yaml", "tansy-quote.yaml", "tansy-active-two-way.yaml"]),
        ("list", ["tansy-quote.yaml"]),
        ("chart --vehicle tansy-hatch", []),
    ];

    public static TheoryData<int, ColorScheme, int> Views
    {
        get
        {
            var views = new TheoryData<int, ColorScheme, int>();
            for (var page = 0; page < Shown.Length; page++)
            {
                views.Add(page, ColorScheme.Light, Desk);
                views.Add(page, ColorScheme.Dark, Telephone);
            }
            return views;
        }
    }

    [Theory]
    [MemberData(nameof(Views))]
    public async Task Everyone_can_read_it(int shown, ColorScheme scheme, int width)
    {
        await using var page = await chromium.OpenAsync(reports.Page(Shown[shown].Command, Shown[shown].Builds), scheme, width);

        Assert.Empty(await page.ObstaclesAsync());
        Assert.Equal(0, await page.PixelsTooWideAsync());
        Assert.Empty(page.RequestsThatLeave());
    }
}
