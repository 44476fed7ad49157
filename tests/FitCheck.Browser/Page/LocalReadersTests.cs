using Microsoft.Playwright;
using Xunit;

namespace FitCheck.Browser.Page;

/// <summary>The local page for those who see little, have no mouse, or hold a telephone.</summary>
[Collection(InChromium.Name)]
public class LocalReadersTests(Chromium chromium, LocalServer server) : IClassFixture<LocalServer>
{
    [Theory]
    [InlineData(1280, ColorScheme.Light, true)]
    [InlineData(390, ColorScheme.Dark, true)]
    [InlineData(390, ColorScheme.Light, false)]
    [InlineData(1280, ColorScheme.Dark, false)]
    public async Task Every_state_is_fit_for_all(int width, ColorScheme scheme, bool scripts)
    {
        await using var page = await server.OpenAsync(chromium, new()
        {
            ViewportSize = new() { Width = width, Height = 844 },
            ColorScheme = scheme,
        });
        if (!scripts)
        {
            // axe is a script itself: only the page's own are kept away.
            await page.Shown.RouteAsync("**/*.js", route => route.FulfillAsync(new() { ContentType = "text/javascript", Body = "" }));
            await page.Shown.ReloadAsync();
        }
        await page.FitForAllAsync("start");
        await page.Shown.Locator("details.missing summary").ClickAsync();
        await page.FitForAllAsync("the car is not here");
        await page.PressAsync("#vehicle-tansy-hatch");
        await page.FitForAllAsync("nothing chosen");
        await page.SendAsync("slot:");
        await Assertions.Expect(page.Shown.Locator(".offer").First).ToBeVisibleAsync(new() { Timeout = 30_000 });
        await page.FitForAllAsync("choices");
        await page.TakeBestAsync();
        await page.FitForAllAsync("a choice taken");
        await page.SendAsync("place:elsewhere");
        await page.FitForAllAsync("radio, amplifiers and cables");
        await page.Shown.SetInputFilesAsync("#build-file", Reports.BuildOfCatalog("alder-missing-data.yaml"));
        if (!scripts)
            await page.SendAsync("open");
        await page.SettledAsync();
        foreach (var side in new[] { "measure", "ways", "buy", "beside", "text" })
        {
            await page.PressAsync($"#side-{side}");
            await page.FitForAllAsync(side);
        }
        await page.SendAsync("side:beside");
        await page.SendAsync("hold");
        await page.FitForAllAsync("two builds");
        await page.PressAsync("#side-text");
        await page.Shown.FillAsync("textarea[name=typed]", "vehicle: tansy-hach\nfit: nothing\n");
        await page.SendAsync("typed");
        await page.FitForAllAsync("a broken text");
    }

    [Fact]
    public async Task The_keyboard_alone_is_enough()
    {
        await using var page = await server.OpenAsync(chromium);
        await page.Shown.FocusAsync("#sought");
        await page.Shown.Keyboard.TypeAsync("tansy");
        await page.SettledAsync();
        Assert.Equal("sought", await FocusAsync(page));
        await TabToAsync(page, "vehicle-tansy-hatch");
        await page.Shown.Keyboard.PressAsync("Enter");
        await page.SettledAsync();
        await TabToAsync(page, "place-front-tweeter-left");
        await page.Shown.Keyboard.PressAsync("Space");
        await page.SettledAsync();
        // What was pressed keeps the focus, so that nobody begins at the top again.
        Assert.Equal("place-front-tweeter-left", await FocusAsync(page));
        await TabToAsync(page, "slot-");
        await page.Shown.Keyboard.PressAsync("Enter");
        await page.SettledAsync();
        await TabToAsync(page, "take-");
        await page.Shown.Keyboard.PressAsync("Enter");
        await page.SettledAsync();

        await Assertions.Expect(page.Shown.Locator("#verdict .status")).ToBeVisibleAsync();
        Assert.Contains("front-tweeter-left", await page.TextAsync(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task On_a_telephone_the_verdict_stays_in_sight_and_everything_can_be_touched()
    {
        await using var page = await server.OpenAsync(chromium, new()
        {
            ViewportSize = new() { Width = 390, Height = 844 },
            HasTouch = true,
            IsMobile = true,
        });
        await page.Shown.Locator("#vehicle-tansy-hatch").TapAsync();
        await page.SettledAsync();
        await page.Shown.Locator("#place-front-door-left").TapAsync();
        await page.SettledAsync();
        await page.Shown.EvaluateAsync("scrollTo(0, document.body.scrollHeight)");
        await Assertions.Expect(page.Shown.Locator("#verdict")).ToBeInViewportAsync();
        var small = await page.Shown.EvaluateAsync<string[]>("""
            () => [...document.querySelectorAll('button, input:not([type=hidden], [type=radio]), select, summary')]
              .filter(e => e.offsetParent && !e.closest('.unseen') && !e.classList.contains('unseen'))
              .filter(e => e.getBoundingClientRect().height < 24 || e.getBoundingClientRect().width < 24)
              .map(e => e.outerHTML.slice(0, 100))
            """);
        // WCAG 2.2, 2.5.8: 24 pixels at least.
        Assert.Empty(small);
    }

    [Fact]
    public async Task Forced_colours_and_paper_lose_nothing()
    {
        await using var page = await server.OpenAsync(chromium,
            new() { ForcedColors = ForcedColors.Active, ReducedMotion = ReducedMotion.Reduce });
        await page.Shown.SetInputFilesAsync("#build-file", Reports.BuildOfCatalog("tansy-bare-tweeter.yaml"));
        await page.SettledAsync();
        await Assertions.Expect(page.Shown.Locator("#verdict .status")).ToHaveTextAsync("fail");
        Assert.Equal(0, await page.Shown.EvaluateAsync<int>("document.getAnimations().length"));
        foreach (var what in new[] { "report", "sheet", "list" })
        {
            var paper = await page.Shown.RunAndWaitForPopupAsync(() => page.Shown.ClickAsync($"button[value={what}]"));
            await paper.WaitForLoadStateAsync();
            await Assertions.Expect(paper.Locator("h1").First).ToBeVisibleAsync();
            Assert.True(await paper.EvaluateAsync<int>("document.styleSheets[0].cssRules.length") > 10, $"{what} has no style");
            await paper.CloseAsync();
        }
        Assert.Empty(page.Complaints);
    }

    private static Task<string> FocusAsync(LocalPage page) => page.Shown.EvaluateAsync<string>("document.activeElement.id");

    private static async Task TabToAsync(LocalPage page, string id)
    {
        for (var i = 0; i < 120; i++)
        {
            await page.Shown.Keyboard.PressAsync("Tab");
            if ((await FocusAsync(page)).StartsWith(id, StringComparison.Ordinal))
                return;
        }
        Assert.Fail($"the Tab key never comes to {id}");
    }
}
