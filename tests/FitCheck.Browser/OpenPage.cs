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

    public ValueTask DisposeAsync() => context.DisposeAsync();
}
