using Microsoft.Playwright;
using Xunit;

namespace FitCheck.Browser;

/// <summary>One headless Chromium for all tests: Debian's, or the one that FITCHECK_CHROMIUM names.</summary>
public sealed class Chromium : IAsyncLifetime
{
    private static readonly string[] Arguments =
    [
        "--headless", "--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run",
        "--disable-background-networking", "--disable-component-update", "--disable-sync",
    ];

    private IPlaywright? _playwright;
    private IBrowser? _browser;

    public async Task InitializeAsync()
    {
        var program = Environment.GetEnvironmentVariable("FITCHECK_CHROMIUM") ?? "/usr/bin/chromium";
        Assert.True(File.Exists(program), $"There is no {program}. Install chromium, or name another one in FITCHECK_CHROMIUM.");
        _playwright = await Playwright.CreateAsync();
        _browser = await _playwright.Chromium.LaunchAsync(new() { ExecutablePath = program, Args = Arguments });
    }

    public async Task DisposeAsync()
    {
        if (_browser is not null)
            await _browser.DisposeAsync();
        _playwright?.Dispose();
    }

    /// <summary>Opens an HTML file as a reader would, in a window of its own, and keeps book of what it asks for.</summary>
    public async Task<OpenPage> OpenAsync(string file, ColorScheme scheme = ColorScheme.Light, int width = 1280)
    {
        var context = await _browser!.NewContextAsync(new()
        {
            ColorScheme = scheme,
            ViewportSize = new() { Width = width, Height = 844 },
            // axe is brought in as a script, which the report's own policy may forbid; OpenPage looks at requests, whatever the policy.
            BypassCSP = true,
        });
        var page = await context.NewPageAsync();
        var requests = new List<string>();
        page.Request += (_, request) => requests.Add(request.Url);
        await page.GotoAsync(new Uri(file).AbsoluteUri, new() { WaitUntil = WaitUntilState.NetworkIdle });
        return new(context, page, requests);
    }
}

/// <summary>Tests that share the browser.</summary>
[CollectionDefinition(Name)]
public class InChromium : ICollectionFixture<Chromium>
{
    public const string Name = "in chromium";
}
