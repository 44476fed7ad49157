using Microsoft.Playwright;
using Xunit;

namespace FitCheck.Browser.Page;

/// <summary>What a web server and a browser do together elsewhere, the page of plain files does by itself.</summary>
[Collection(InChromium.Name)]
public class FrontTests(Chromium chromium, StaticSite site) : IClassFixture<StaticSite>
{
    private const string Text = "kind: build\nname: Öl & \"Wasser\"\n";

    [Fact]
    public async Task A_form_that_no_script_takes_shows_the_next_page_and_back_shows_the_one_before()
    {
        await using var page = await StaticPage.OpenAsync(chromium, site.Space.Address);
        await AddFormAsync(page.Shown, action: "");

        await page.Shown.ClickAsync("#own button");

        await Assertions.Expect(page.Shown.Locator("#own")).ToHaveCountAsync(0);
        Assert.Equal(site.Space.Address, page.Shown.Url);
        await page.Shown.GoBackAsync();
        await Assertions.Expect(page.Shown.Locator("#own")).ToHaveCountAsync(1);
        await page.Shown.GoForwardAsync();
        await Assertions.Expect(page.Shown.Locator("#own")).ToHaveCountAsync(0);
        Assert.Empty(page.Complaints);
        Assert.Empty(site.Space.Sent);
    }

    [Fact]
    public async Task What_is_to_be_saved_is_saved_and_the_page_stays()
    {
        await using var page = await StaticPage.OpenAsync(chromium, site.Space.Address);
        await AddFormAsync(page.Shown, action: "save");

        var saved = await page.Shown.RunAndWaitForDownloadAsync(() => page.Shown.ClickAsync("#own button"));

        Assert.EndsWith(".yaml", saved.SuggestedFilename, StringComparison.Ordinal);
        Assert.Equal(Text, await File.ReadAllTextAsync((await saved.PathAsync())!));
        Assert.Equal(1, await page.Shown.Locator("#own").CountAsync());
        Assert.Empty(page.Complaints);
    }

    [Fact]
    public async Task What_is_to_be_printed_opens_beside_the_page_in_its_own_style()
    {
        await using var page = await StaticPage.OpenAsync(chromium, site.Space.Address);
        var build = await File.ReadAllTextAsync(Path.Combine(AppContext.BaseDirectory, "catalog", "builds", "front-rear-two-amps.yaml"));
        await AddFormAsync(page.Shown, action: "print", target: "_blank", text: build);

        var beside = await page.Shown.RunAndWaitForPopupAsync(() => page.Shown.ClickAsync("#own button"));

        await Assertions.Expect(beside.Locator("main")).ToBeVisibleAsync();
        Assert.Equal([site.Space.Address + "report.css"],
            await beside.EvaluateAsync<string[]>("[...document.styleSheets].map(s => s.href)"));
        Assert.StartsWith("Tansy, component set", await beside.TitleAsync(), StringComparison.Ordinal);
        Assert.Equal(1, await page.Shown.Locator("#own").CountAsync());
        Assert.Empty(page.Complaints);
    }

    [Fact]
    public async Task A_request_that_is_given_up_leaves_a_page_that_answers_again()
    {
        await using var page = await StaticPage.OpenAsync(chromium, site.Space.Address);

        // The second one waits behind the first, which is given up while it runs.
        var said = await page.Shown.EvaluateAsync<string[]>("""
            async () => {
                const stop = new AbortController(), ask = signal => fetch('', { method: 'POST', body: new FormData(), signal });
                const first = ask(stop.signal).then(() => 'answered', e => e.name);
                const second = ask(null).then(a => a.status);
                await new Promise(done => setTimeout(done));
                stop.abort();
                return [await first, String(await second)];
            }
            """);

        Assert.Equal(["AbortError", "200"], said);
        Assert.Empty(page.Complaints);
    }

    private static Task AddFormAsync(IPage page, string action, string? target = null, string text = Text) => page.EvaluateAsync("""
        ([text, action, target]) => {
            const form = Object.assign(document.createElement('form'), { id: 'own', method: 'post', action, target: target ?? '' });
            const area = Object.assign(document.createElement('textarea'), { name: 'text', value: text });
            form.append(area, document.createElement('button'));
            document.body.prepend(form);
        }
        """, new[] { text, action, target });
}
