using Microsoft.Playwright;
using Xunit;

namespace FitCheck.Browser.Page;

/// <summary>
/// The page of plain files for those who see little, have no mouse, or hold a telephone: its own words as it loads, and its states.
/// </summary>
[Collection(InChromium.Name)]
public class StaticReadersTests(Chromium chromium, StaticSite site) : IClassFixture<StaticSite>
{
    private static readonly LocatorAssertionsToBeVisibleOptions Soon = new() { Timeout = 30_000 };

    [Theory]
    [InlineData(1280, ColorScheme.Light)]
    [InlineData(390, ColorScheme.Dark)]
    public async Task Every_state_is_fit_for_all(int width, ColorScheme scheme)
    {
        await using var opened = await StaticPage.OpenAsync(chromium, site.Space.Address, options: Seen(width, scheme));
        var page = opened.Shown;
        await page.FitForAllAsync("start");
        await page.ClickAsync("button[value='vehicle:tansy-hatch']");
        await page.ClickAsync("button[value='place:front-door-left']");
        await page.Locator("button[value^='slot:']").First.ClickAsync();
        await Assertions.Expect(page.Locator(".offer button").First).ToBeVisibleAsync(Soon);
        await page.FitForAllAsync("choices");
        await page.Locator(".offer button").First.ClickAsync();
        await Assertions.Expect(page.Locator("#verdict .status")).ToBeVisibleAsync(Soon);
        await page.FitForAllAsync("a choice taken");
        foreach (var side in new[] { "measure", "ways", "buy", "beside", "text" })
        {
            await page.ClickAsync($"#side-{side}");
            await Assertions.Expect(page.Locator($"#side-{side}[aria-current]"))
                .ToBeVisibleAsync(Soon);
            await page.FitForAllAsync(side);
        }
        Assert.Empty(opened.Complaints);
    }

    [Theory]
    [InlineData(1280, ColorScheme.Dark)]
    [InlineData(390, ColorScheme.Light)]
    public async Task What_it_says_as_it_loads_is_fit_for_all(int width, ColorScheme scheme)
    {
        await using var context = await chromium.NewContextAsync(Seen(width, scheme));
        var page = await context.NewPageAsync();
        var held = new TaskCompletionSource();
        await context.RouteAsync("**/fitcheck.data", async route =>
        {
            await held.Task;
            await route.FulfillAsync(new() { Status = 503 });
        });
        await page.GotoAsync(site.Space.Address);
        await Assertions.Expect(page.GetByRole(AriaRole.Progressbar)).ToBeVisibleAsync(Soon);
        await page.FitForAllAsync("loading");

        held.SetResult();
        await Assertions.Expect(page.GetByRole(AriaRole.Status).Filter(new() { HasText = "could not be loaded" })).ToBeVisibleAsync(Soon);
        await page.FitForAllAsync("not loaded");
    }

    [Fact]
    public async Task Without_scripts_it_is_fit_for_all()
    {
        await using var context = await chromium.NewContextAsync(Seen(390, ColorScheme.Light));
        var page = await context.NewPageAsync();
        // axe is a script itself: only the page's own are kept away, and what is shown then is shown.
        await context.RouteAsync("**/*.js", route => route.FulfillAsync(new() { ContentType = "text/javascript", Body = "" }));
        await page.GotoAsync(site.Space.Address);
        await page.FitForAllAsync("no scripts");
    }

    private static BrowserNewContextOptions Seen(int width, ColorScheme scheme) =>
        new() { ViewportSize = new() { Width = width, Height = 844 }, ColorScheme = scheme };
}
