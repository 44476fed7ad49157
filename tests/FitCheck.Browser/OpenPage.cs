using Deque.AxeCore.Commons;
using Deque.AxeCore.Playwright;
using Microsoft.Playwright;

namespace FitCheck.Browser;

/// <summary>A page on the screen, and what can be told of it.</summary>
public sealed class OpenPage(IBrowserContext context, IPage page, IReadOnlyList<string> requests) : IAsyncDisposable
{
    private static readonly AxeRunOptions Wcag = new()
    {
        RunOnly = new() { Type = "tag", Values = ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa"] },
    };

    /// <summary>The requests for anything but the file itself and what stands inside it.</summary>
    public IReadOnlyList<string> RequestsThatLeave() =>
        [.. requests.Where(url => url != page.Url && !url.StartsWith("data:", StringComparison.Ordinal))];

    /// <summary>What a reader without a mouse, or with weak eyes, stumbles over: WCAG 2.1 A and AA as far as axe can tell.</summary>
    public async Task<IReadOnlyList<string>> ObstaclesAsync()
    {
        var result = await page.RunAxe(Wcag);
        return [.. result.Violations.SelectMany(v => v.Nodes.Select(n => $"{v.Id}: {v.Help}: {n.Html}"))];
    }

    /// <summary>How many CSS pixels the page is wider than its window.</summary>
    public Task<int> PixelsTooWideAsync() =>
        page.EvaluateAsync<int>("document.documentElement.scrollWidth - document.documentElement.clientWidth");

    public Task<int> CountAsync(string selector) => page.Locator(selector).CountAsync();

    /// <summary>How many of them a reader sees.</summary>
    public async Task<int> VisibleAsync(string selector)
    {
        var seen = 0;
        foreach (var one in await page.Locator(selector).AllAsync())
            seen += await one.IsVisibleAsync() ? 1 : 0;
        return seen;
    }

    /// <summary>What an attribute of the first one says.</summary>
    public Task<string?> AttributeAsync(string selector, string name) => page.Locator(selector).First.GetAttributeAsync(name);

    public Task ClickAsync(string selector) => page.Locator(selector).First.ClickAsync();

    /// <summary>What an expression of the page's own language says.</summary>
    public Task<T> AskAsync<T>(string expression) => page.EvaluateAsync<T>(expression);

    public Task<string> TextAsync() => page.Locator("body").InnerTextAsync();

    /// <summary>
    /// The page as a PDF on this paper, as the browser's own dialogue prints it before anybody changes a setting: with its lines above and
    /// below, and without grounds.
    /// </summary>
    public async Task<byte[]> PrintAsync(string paper)
    {
        var (width, height) = paper == "A4" ? (210, 297) : (215.9, 279.4); // ISO 216 and ANSI/ASME Y14.1, in mm
        var session = await context.NewCDPSessionAsync(page);
        var printed = await session.SendAsync("Page.printToPDF",
            new() { ["displayHeaderFooter"] = true, ["paperWidth"] = width / 25.4, ["paperHeight"] = height / 25.4 });
        return printed!.Value.GetProperty("data").GetBytesFromBase64();
    }

    /// <summary>What is folded is opened.</summary>
    public Task UnfoldAsync() => page.EvaluateAsync("document.querySelectorAll('details').forEach(d => d.open = true)");

    public Task StyleAsync(string css) => page.AddStyleTagAsync(new() { Content = css });

    /// <summary>
    /// Every drawing that passes the window's edge, and every word of one that passes the drawing's edge or is set smaller than this, in
    /// CSS pixels.
    /// </summary>
    public Task<string[]> LostInDrawingsAsync(double smallest) => page.EvaluateAsync<string[]>("""
        smallest => [...document.querySelectorAll('svg:not(.icon)')].flatMap(svg => {
            const name = svg.querySelector('title').textContent, frame = svg.getBoundingClientRect(), room = svg.viewBox.baseVal;
            const lost = [];
            if (frame.left < 0 || frame.right > innerWidth + 0.5)
                lost.push(`${name}: from ${frame.left} to ${frame.right} of ${innerWidth}`);
            for (const text of svg.querySelectorAll('text')) {
                const box = text.getBBox(), size = parseFloat(getComputedStyle(text).fontSize) * frame.width / room.width;
                if (box.x < 0 || box.y < 0 || box.x + box.width > room.width || box.y + box.height > room.height)
                    lost.push(`${name}: "${text.textContent}" from ${box.x}, ${box.y} to ${box.x + box.width}, ${box.y + box.height} `
                        + `in ${room.width} by ${room.height}`);
                if (!(size >= smallest))
                    lost.push(`${name}: "${text.textContent}" is ${size} px`);
            }
            return lost;
        })
        """, smallest);

    /// <summary>From here on the page looks as on paper.</summary>
    public Task AsPrintedAsync() => page.EmulateMediaAsync(new() { Media = Media.Print });

    /// <summary>Width of the first such element, in CSS pixels, without what its line adds.</summary>
    public Task<double> WidthAsync(string selector) =>
        page.Locator(selector).First.EvaluateAsync<double>("e => e.getBBox().width * e.getScreenCTM().a");

    /// <summary>The colour behind the text.</summary>
    public Task<string> GroundAsync() => page.EvaluateAsync<string>("getComputedStyle(document.body).backgroundColor");

    public ValueTask DisposeAsync() => context.DisposeAsync();
}
