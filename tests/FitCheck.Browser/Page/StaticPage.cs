using System.Collections.Concurrent;
using Microsoft.Playwright;

namespace FitCheck.Browser.Page;

/// <summary>The page of a web space in a browser, and all that it complains of or asks for.</summary>
public sealed class StaticPage : IAsyncDisposable
{
    private StaticPage(IBrowserContext context, IPage page) => (Context, Shown) = (context, page);

    public IBrowserContext Context { get; }

    public IPage Shown { get; }

    /// <summary>Errors that the browser tells, broken policies among them.</summary>
    public ConcurrentQueue<string> Complaints { get; } = new();

    public ConcurrentQueue<string> Requests { get; } = new();

    /// <summary>Opens it in a browser that has never seen it.</summary>
    public static async Task<StaticPage> OpenAsync(Chromium chromium, string address, bool scripts = true,
        BrowserNewContextOptions? options = null)
    {
        options ??= new();
        options.JavaScriptEnabled = scripts;
        var context = await chromium.NewContextAsync(options);
        var page = new StaticPage(context, await context.NewPageAsync());
        context.Request += (_, request) => page.Requests.Enqueue(request.Url);
        context.Console += (_, message) =>
        {
            if (message.Type == "error")
                page.Complaints.Enqueue(message.Text);
        };
        page.Shown.PageError += (_, error) => page.Complaints.Enqueue(error);
        await page.Shown.GotoAsync(address);
        if (scripts)
            await page.ReadyAsync();
        return page;
    }

    /// <summary>Waits until the engine answers.</summary>
    public Task ReadyAsync() =>
        Shown.WaitForSelectorAsync("html[data-engine=ready]", new() { State = WaitForSelectorState.Attached, Timeout = 60_000 });

    /// <summary>Waits until it is kept for times without a network.</summary>
    public Task KeptAsync() => Shown.EvaluateAsync("navigator.serviceWorker.ready.then(() => {})");

    public ValueTask DisposeAsync() => Context.DisposeAsync();
}
