using System.Text;
using System.Text.RegularExpressions;
using Microsoft.Playwright;
using Xunit;

namespace FitCheck.Browser.Page;

/// <summary>Work on the local page by real clicks and keys.</summary>
[Collection(InChromium.Name)]
public class LocalWorkTests(Chromium chromium, LocalServer server) : IClassFixture<LocalServer>
{
    private static readonly Regex GoesTogether = new("pass|warn");

    [Theory]
    [InlineData("tansy-hatch", "tansy", true)]
    [InlineData("corvid-sedan", "averstone corvid", true)]
    [InlineData("gannet-coupe", "gannet", false)]
    public async Task From_nothing_to_a_build_that_goes_together(string vehicle, string words, bool scripts)
    {
        await using var page = await server.OpenAsync(chromium, new() { JavaScriptEnabled = scripts });
        await page.Shown.FillAsync("#sought", words);
        if (!scripts)
            await page.SendAsync("seek");
        await page.PressAsync($"#vehicle-{vehicle}");
        await page.SendAsync("place:front-door-left");
        await page.SendAsync("slot:");
        await page.TakeBestAsync();

        await Assertions.Expect(page.Shown.Locator("#verdict .status")).ToHaveTextAsync(GoesTogether);
        await page.PressAsync("#side-buy");
        await Assertions.Expect(page.Shown.Locator("main")).ToContainTextAsync("Total");
        Clean(page);
    }

    [Fact]
    public async Task What_fails_is_mended_by_hand()
    {
        await using var page = await OpenedAsync("pellet-too-deep");
        await Assertions.Expect(page.Shown.Locator("#verdict .status")).ToHaveTextAsync("fail");
        await page.SendAsync("place:front-door-left");
        await page.SendAsync("slot:driver@");
        await page.TakeBestAsync();

        await Assertions.Expect(page.Shown.Locator("#verdict .status")).Not.ToHaveTextAsync("fail");
        await Assertions.Expect(page.Shown.Locator("#moved")).ToContainTextAsync("gone");
        await Assertions.Expect(page.Shown.Locator(".rows .changed").First).ToBeVisibleAsync();
        Clean(page);
    }

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public async Task What_fails_is_mended_by_the_search_with_one_click_and_one_undo(bool scripts)
    {
        await using var page = await OpenedAsync("tansy-bare-tweeter", scripts);
        var before = await page.TextAsync();
        await page.PressAsync("#side-ways");
        await page.PressAsync("#look");
        await Assertions.Expect(page.Shown.Locator(".way").Nth(1)).ToBeVisibleAsync(new() { Timeout = 60_000 });
        await page.SendAsync("step:");
        await Assertions.Expect(page.Shown.Locator("#verdict .status")).ToHaveTextAsync(GoesTogether);

        await page.PressAsync("#undo");
        Assert.Equal(before, await page.TextAsync());
        Clean(page);
    }

    [Fact]
    public async Task A_tills_export_is_dropped_and_what_is_unsure_is_asked()
    {
        await using var page = await server.OpenAsync(chromium);
        await page.PressAsync("#vehicle-tansy-hatch");
        await page.Shown.DropAsync("till.csv", "article;quantity\npellworth-p165;1\nAn unheard thing;2\n"u8.ToArray());
        for (var asked = 0; asked < 6; asked++)
        {
            await page.SettledAsync();
            if (await page.Shown.Locator(".quote fieldset").CountAsync() == 0)
                break;
            foreach (var question in await page.Shown.Locator(".quote fieldset").AllAsync())
                await question.Locator("input").Last.CheckAsync();
            await page.PressAsync(".quote button[value=quote]");
        }

        await page.SettledAsync();
        Assert.Contains("quote:", await page.TextAsync(), StringComparison.Ordinal);
        Assert.Contains("pellworth-p165", await page.TextAsync(), StringComparison.Ordinal);
        Clean(page);
    }

    [Fact]
    public async Task A_workbook_is_dropped_and_its_articles_are_in_the_build()
    {
        await using var page = await server.OpenAsync(chromium);
        await page.PressAsync("#vehicle-tansy-hatch");
        await page.Shown.DropWorkbookAsync();
        Clean(page);
    }

    [Fact]
    public async Task A_car_is_measured_reading_by_reading()
    {
        await using var page = await OpenedAsync("alder-missing-data");
        await page.PressAsync("#side-measure");
        var fields = await page.Shown.Locator(".readings input[name^='read.']").CountAsync();
        var first = page.Shown.Locator(".readings input[name*='mounting']").First;
        var name = await first.GetAttributeAsync("name");
        await first.FillAsync("nonsense");
        await first.PressAsync("Enter");
        await page.SettledAsync();
        await Assertions.Expect(page.Shown.Locator($"input[name='{name}'][aria-invalid]")).ToBeVisibleAsync();

        await page.Shown.FillAsync($"input[name='{name}']", "2 1/2 in");
        await page.Shown.PressAsync($"input[name='{name}']", "Enter");
        await page.SettledAsync();
        await Assertions.Expect(page.Shown.Locator($"input[name='{name}']")).ToHaveCountAsync(0);
        Assert.True(await page.Shown.Locator(".readings input[name^='read.']").CountAsync() < fields);
        Assert.Contains("2 1/2 in", await page.TextAsync(), StringComparison.Ordinal);
        Clean(page);
    }

    [Fact]
    public async Task Undo_and_redo_hold_over_a_reload_and_answer_to_keys()
    {
        await using var page = await server.OpenAsync(chromium);
        await page.PressAsync("#vehicle-tansy-hatch");
        await page.SendAsync("slot:driver@front-door-left");
        await page.TakeBestAsync();
        var (text, verdict) = (await page.TextAsync(), await page.VerdictAsync());
        await page.Shown.ReloadAsync();
        await Assertions.Expect(page.Shown.Locator("#undo")).ToBeEnabledAsync();
        await page.SettledAsync();
        Assert.Equal((text, verdict), (await page.TextAsync(), await page.VerdictAsync()));

        await page.Shown.Keyboard.PressAsync("Control+z");
        await page.SettledAsync();
        Assert.NotEqual(text, await page.TextAsync());
        await page.Shown.Keyboard.PressAsync("Control+Shift+z");
        await page.SettledAsync();
        Assert.Equal(text, await page.TextAsync());
        Clean(page);
    }

    [Fact]
    public async Task A_link_carries_the_build_and_no_server_hears_of_it()
    {
        await using var page = await OpenedAsync("front-rear-two-amps");
        var text = await page.TextAsync();
        await page.Shown.EvaluateAsync(
            "Object.defineProperty(navigator, 'clipboard', { value: { writeText: async t => { window.copied = t; } } })");
        await page.Shown.ClickAsync("#link");
        await page.Shown.WaitForFunctionAsync("window.copied");
        var link = await page.Shown.EvaluateAsync<string>("window.copied");
        Assert.Contains("#build=", link, StringComparison.Ordinal);

        await page.Shown.EvaluateAsync("sessionStorage.clear()");
        await page.Shown.GotoAsync("about:blank");
        await page.Shown.GotoAsync(link);
        await Assertions.Expect(page.Shown.Locator("#verdict .status")).ToBeVisibleAsync();
        Assert.Equal(text, await page.TextAsync());
        Assert.DoesNotContain("build=", page.Shown.Url, StringComparison.Ordinal);
        Clean(page);
    }

    [Fact]
    public async Task The_verdict_is_told_once_for_each_change()
    {
        await using var page = await OpenedAsync("tansy-bare-tweeter");
        await page.Shown.EvaluateAsync("""
            () => {
              window.told = 0;
              new MutationObserver(all => { window.told += all.length; })
                .observe(document.getElementById('say'), { childList: true, characterData: true, subtree: true });
            }
            """);
        await page.PressAsync("#side-text");
        await page.PressAsync("#side-places");
        Assert.Equal(0, await page.Shown.EvaluateAsync<int>("window.told"));
        await page.SendAsync("slot:");
        await page.TakeBestAsync();

        Assert.Equal(1, await page.Shown.EvaluateAsync<int>("window.told"));
        Assert.Contains((await page.VerdictAsync()).Split('\n')[^1].Trim(), await page.Shown.Locator("#say").InnerTextAsync(),
            StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_build_is_saved_as_it_stands()
    {
        await using var page = await OpenedAsync("tansy-bare-tweeter");
        var download = await page.Shown.RunAndWaitForDownloadAsync(() => page.Shown.ClickAsync("button[formaction=save]"));

        Assert.Equal("tansy-bare-tweeter.yaml", download.SuggestedFilename);
        Assert.Equal(await page.TextAsync(), await File.ReadAllTextAsync((await download.PathAsync())!, Encoding.UTF8));
    }

    private async Task<LocalPage> OpenedAsync(string build, bool scripts = true)
    {
        var page = await server.OpenAsync(chromium,
            new() { JavaScriptEnabled = scripts, ViewportSize = new() { Width = 1280, Height = 900 } });
        await page.Shown.SetInputFilesAsync("#build-file", Reports.BuildOfCatalog(build + ".yaml"));
        if (!scripts)
            await page.SendAsync("open");
        await page.SettledAsync();
        await Assertions.Expect(page.Shown.Locator("#verdict .status")).ToBeVisibleAsync();
        return page;
    }

    private void Clean(LocalPage page)
    {
        Assert.Empty(page.Complaints);
        var own = new Uri(server.Address).GetLeftPart(UriPartial.Authority);
        Assert.All(page.Requests,
            r => Assert.True(r.StartsWith(own, StringComparison.Ordinal) || r.StartsWith("data:", StringComparison.Ordinal)
            || r.StartsWith("blob:", StringComparison.Ordinal), r));
    }
}
