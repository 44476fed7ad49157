using System.Collections.Concurrent;
using System.Diagnostics;
using Microsoft.Playwright;

namespace FitCheck.Browser.Page;

/// <summary>`fitcheck page` as a user starts it, for the tests of a class.</summary>
public sealed class LocalServer : IDisposable
{
    private readonly DirectoryInfo _cache = Directory.CreateTempSubdirectory("fitcheck-page-");
    private readonly Process _process;

    public LocalServer()
    {
        var start = new ProcessStartInfo("dotnet", [Reports.Program(), "page", "--no-open"])
        {
            RedirectStandardOutput = true,
            RedirectStandardError = true,
            UseShellExecute = false,
        };
        start.Environment["FITCHECK_CACHE"] = _cache.FullName;
        _process = Process.Start(start)!;
        _process.ErrorDataReceived += (_, _) => { };
        _process.BeginErrorReadLine();
        Address = _process.StandardOutput.ReadLine() ?? throw new InvalidOperationException("the page did not start");
    }

    /// <summary>With the word by which it is opened.</summary>
    public string Address { get; }

    /// <summary>Opens it in a browser that has never seen it.</summary>
    public async Task<LocalPage> OpenAsync(Chromium chromium, BrowserNewContextOptions? options = null)
    {
        var context = await chromium.NewContextAsync(options ?? new() { ViewportSize = new() { Width = 1280, Height = 900 } });
        var page = new LocalPage(context, await context.NewPageAsync());
        await page.Shown.GotoAsync(Address);
        return page;
    }

    public void Dispose()
    {
        _process.Kill(entireProcessTree: true);
        _process.WaitForExit();
        _process.Dispose();
        _cache.Delete(recursive: true);
    }
}

/// <summary>The page in a browser, and all that it complains of or asks for.</summary>
public sealed class LocalPage : IAsyncDisposable
{
    private readonly IBrowserContext _context;

    public LocalPage(IBrowserContext context, IPage page)
    {
        (_context, Shown) = (context, page);
        context.Request += (_, request) => Requests.Enqueue(request.Url);
        context.Console += (_, message) =>
        {
            if (message.Type == "error")
                Complaints.Enqueue(message.Text);
        };
        page.PageError += (_, error) => Complaints.Enqueue(error);
    }

    public IPage Shown { get; }

    public ConcurrentQueue<string> Complaints { get; } = new();

    public ConcurrentQueue<string> Requests { get; } = new();

    /// <summary>Presses a button and waits for what it brings; with scripts off a whole page.</summary>
    public async Task PressAsync(string selector)
    {
        await Shown.Locator(selector).First.ClickAsync();
        await SettledAsync();
    }

    /// <summary>Presses the button of the form that sends this.</summary>
    public Task SendAsync(string beginning) => PressAsync($"button[name='do'][value^='{beginning}']");

    /// <summary>Takes the offer that is the best once all are judged.</summary>
    public async Task TakeBestAsync()
    {
        await Assertions.Expect(Shown.Locator(".offer button").First).ToBeVisibleAsync(new() { Timeout = 30_000 });
        await SettledAsync();
        await PressAsync(".offer button");
    }

    /// <summary>Waits until nothing is on its way.</summary>
    public async Task SettledAsync()
    {
        await Shown.WaitForLoadStateAsync(LoadState.Load);
        for (var quiet = 0; quiet < 3;)
        {
            await Shown.WaitForTimeoutAsync(60);
            quiet = await Shown.Locator(".htmx-request, html.scripted [hx-trigger=load]").CountAsync() == 0 ? quiet + 1 : 0;
        }
    }

    public Task<string> VerdictAsync() => Shown.Locator("#verdict").InnerTextAsync();

    public Task<string> TextAsync() => Shown.Locator("#build input[name=text]").InputValueAsync();

    /// <summary>As <see cref="Readers.FitForAllAsync"/>.</summary>
    public Task FitForAllAsync(string where) => Shown.FitForAllAsync(where);

    public ValueTask DisposeAsync() => _context.DisposeAsync();
}
