using Microsoft.Playwright;
using Xunit;

namespace FitCheck.Browser.Page;

/// <summary>What a web space serves works by itself, asks nobody else, and works on without a network.</summary>
[Collection(InChromium.Name)]
public class StaticPageTests(Chromium chromium, StaticSite site) : IClassFixture<StaticSite>
{
    [Fact]
    public async Task It_gets_ready_under_any_path_without_a_complaint_and_asks_nobody_else()
    {
        await using var page = await StaticPage.OpenAsync(chromium, site.Space.Address);

        Assert.Equal(0, await page.Shown.Locator("#loading").CountAsync());
        await page.Shown.EvaluateAsync("fetch('', { method: 'POST', body: new URLSearchParams({ text: 'a: [' }) }).then(a => a.text())");
        await page.KeptAsync();

        Assert.Empty(page.Complaints);
        Assert.All(page.Requests, r => Assert.StartsWith(site.Space.Address, r, StringComparison.Ordinal));
        Assert.Empty(site.Space.Missing);
        Assert.Empty(site.Space.Sent);
    }

    [Fact]
    public async Task What_its_policy_forbids_is_seen()
    {
        await using var page = await StaticPage.OpenAsync(chromium, site.Space.Address);

        await page.Shown.EvaluateAsync("document.body.append(Object.assign(document.createElement('script'), { textContent: '1' }))");
        await page.Shown.EvaluateAsync("fetch('http://127.0.0.1:9/').catch(() => {})");
        await page.Shown.EvaluateAsync("document.body.append(Object.assign(document.createElement('style'), { textContent: 'p {}' }))");

        foreach (var forbidden in new[] { "script-src", "connect-src", "style-src" })
            Assert.Contains(page.Complaints, c => c.Contains($"{forbidden} 'self'", StringComparison.Ordinal));
    }

    [Fact]
    public async Task It_opens_without_a_network_after_the_first_visit()
    {
        var space = new WebSpace(site.Folder, "/club/fit/");
        await using var page = await StaticPage.OpenAsync(chromium, space.Address);
        await page.KeptAsync();
        space.Dispose();

        await page.Shown.ReloadAsync();
        await page.ReadyAsync();

        Assert.NotEmpty(await page.Shown.EvaluateAsync<string>("fetch('', { method: 'POST' }).then(a => a.text())"));
        Assert.Empty(page.Complaints);
    }

    [Fact]
    public async Task Without_scripts_it_says_what_is_needed()
    {
        await using var page = await StaticPage.OpenAsync(chromium, site.Space.Address, scripts: false);

        Assert.True(await page.Shown.GetByText("please switch scripts on").IsVisibleAsync());
        Assert.False(await page.Shown.Locator("#loading").IsVisibleAsync());
        Assert.Empty(page.Complaints);
    }

    [Fact]
    public async Task While_it_loads_it_says_so_and_what_was_asked_meanwhile_is_answered()
    {
        await using var context = await chromium.NewContextAsync();
        var page = await context.NewPageAsync();
        var held = new TaskCompletionSource();
        await context.RouteAsync("**/fitcheck.data", async route =>
        {
            await held.Task;
            await route.ContinueAsync();
        });
        await page.GotoAsync(site.Space.Address);

        await Assertions.Expect(page.GetByRole(AriaRole.Status).Filter(new() { HasText = "is being loaded" })).ToBeVisibleAsync();
        await Assertions.Expect(page.GetByRole(AriaRole.Progressbar, new() { Name = "Loading FitCheck" })).ToBeVisibleAsync();
        var asked = page.EvaluateAsync<string>("fetch('', { method: 'POST' }).then(a => a.text())");
        Assert.False(asked.IsCompleted);
        held.SetResult();

        Assert.Contains("<html", await asked, StringComparison.Ordinal);
        await Assertions.Expect(page.Locator("#loading")).ToHaveCountAsync(0);
    }

    [Fact]
    public async Task What_can_not_be_loaded_is_told()
    {
        await using var context = await chromium.NewContextAsync();
        var page = await context.NewPageAsync();
        await context.RouteAsync("**/fitcheck.data", route => route.FulfillAsync(new() { Status = 503 }));
        await page.GotoAsync(site.Space.Address);

        var told = page.GetByRole(AriaRole.Status).Filter(new() { HasText = "could not be loaded (Error: fitcheck.data: 503)" });
        await Assertions.Expect(told).ToBeVisibleAsync();
        await Assertions.Expect(page.GetByRole(AriaRole.Progressbar)).ToHaveCountAsync(0);
    }
}
