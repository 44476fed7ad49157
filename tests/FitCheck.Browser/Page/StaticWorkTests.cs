using Microsoft.Playwright;
using Xunit;

namespace FitCheck.Browser.Page;

/// <summary>Real clicks on the page of plain files.</summary>
[Collection(InChromium.Name)]
public class StaticWorkTests(Chromium chromium, StaticSite site) : IClassFixture<StaticSite>
{
    private static readonly LocatorAssertionsToBeVisibleOptions Soon = new() { Timeout = 30_000 };

    [Fact]
    public async Task A_car_is_picked_a_place_filled_and_all_is_there_after_a_reload()
    {
        await using var opened = await StaticPage.OpenAsync(chromium, site.Space.Address);
        var page = opened.Shown;

        await page.ClickAsync("button[value='vehicle:tansy-hatch']");
        await Assertions.Expect(page.Locator("#side-measure")).ToBeVisibleAsync(Soon);
        await page.ClickAsync("button[value='place:front-door-left']");
        await page.Locator("button[value^='slot:']").First.ClickAsync();
        await page.Locator(".offer button").First.ClickAsync(new() { Timeout = 30_000 });
        await Assertions.Expect(page.Locator("#undo")).ToBeEnabledAsync();
        await Assertions.Expect(page.Locator("#verdict .status")).ToBeVisibleAsync(Soon);
        var verdict = await page.Locator("#verdict").InnerTextAsync();
        await page.ReloadAsync();

        await Assertions.Expect(page.Locator("#verdict")).ToHaveTextAsync(verdict, new() { Timeout = 30_000, UseInnerText = true });
        Assert.Empty(opened.Complaints);
        Assert.Empty(site.Space.Sent);
        Assert.All(opened.Requests, r => Assert.StartsWith(site.Space.Address, r, StringComparison.Ordinal));
    }

    [Fact]
    public async Task A_workbook_is_dropped_and_its_articles_are_in_the_build()
    {
        await using var opened = await StaticPage.OpenAsync(chromium, site.Space.Address);
        var page = opened.Shown;
        await page.ClickAsync("button[value='vehicle:tansy-hatch']");
        await Assertions.Expect(page.Locator("#quote-file")).ToBeAttachedAsync(new() { Timeout = 30_000 });
        await page.DropWorkbookAsync();
        Assert.Empty(opened.Complaints);
        Assert.Empty(site.Space.Sent);
    }

    [Fact]
    public async Task A_search_tells_how_far_it_is_and_ends_when_it_is_stopped()
    {
        await using var opened = await StaticPage.OpenAsync(chromium, site.Space.Address);
        var page = opened.Shown;
        await page.SetInputFilesAsync("#build-file",
            Path.Combine(AppContext.BaseDirectory, "catalog", "builds", "sedge-overpowered-rears.yaml"));
        await page.ClickAsync("#side-ways");
        await page.ClickAsync("#look");

        await Assertions.Expect(page.Locator("#progress")).ToHaveTextAsync(new System.Text.RegularExpressions.Regex("[0-9]"),
            new() { Timeout = 30_000 });
        await page.ClickAsync("#stop");
        await page.ClickAsync("#side-places");

        // Long before the search would have ended by itself.
        await Assertions.Expect(page.Locator("button[value^='place:']").First).ToBeVisibleAsync(Soon);
        Assert.Empty(opened.Complaints);
    }

    [Fact]
    public async Task What_is_pressed_before_an_answer_has_come_comes_about_after_it()
    {
        await using var opened = await StaticPage.OpenAsync(chromium, site.Space.Address);
        var page = opened.Shown;
        await page.ClickAsync("button[value='vehicle:tansy-hatch']");
        await page.WaitForSelectorAsync("button[value='place:front-door-left']", new() { Timeout = 30_000 });

        // The file is still on its way when a place is pressed that is in no other state of the page.
        await page.SetInputFilesAsync("#build-file",
            Path.Combine(AppContext.BaseDirectory, "catalog", "builds", "front-rear-two-amps.yaml"));
        await page.EvaluateAsync("document.querySelector(\"button[value='place:front-door-right']\").click()");
        await Assertions.Expect(page.Locator("#build input[name=file]")).ToHaveValueAsync(
            new System.Text.RegularExpressions.Regex("front-rear-two-amps"), new() { Timeout = 30_000 });
        await Assertions.Expect(page.Locator("button[value='place:front-door-right']")).ToHaveAttributeAsync("aria-current", "true",
            new() { Timeout = 30_000 });

        // Twice at once: the opened file and the vehicle before it are both taken back.
        await page.EvaluateAsync("() => { for (let i = 0; i < 2; i++) document.getElementById('undo').click(); }");
        await Assertions.Expect(page.Locator("button[value='vehicle:tansy-hatch']")).ToBeVisibleAsync(Soon);
        Assert.Empty(opened.Complaints);
    }
}
