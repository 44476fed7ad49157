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

    public Task<string> TextAsync() => page.Locator("body").InnerTextAsync();

    /// <summary>The page as a PDF on this paper, at 100 %, with the margins that the page itself asks for.</summary>
    public Task<byte[]> PrintAsync(string paper) => page.PdfAsync(new() { Format = paper, PreferCSSPageSize = false });

    /// <summary>From here on the page looks as on paper.</summary>
    public Task AsPrintedAsync() => page.EmulateMediaAsync(new() { Media = Media.Print });

    /// <summary>Width of the first such element, in CSS pixels, without what its line adds.</summary>
    public Task<double> WidthAsync(string selector) => page.Locator(selector).First.EvaluateAsync<double>("e => e.getBBox().width * e.getScreenCTM().a");

    /// <summary>The colour behind the text.</summary>
    public Task<string> GroundAsync() => page.EvaluateAsync<string>("getComputedStyle(document.body).backgroundColor");

    public ValueTask DisposeAsync() => context.DisposeAsync();
}
