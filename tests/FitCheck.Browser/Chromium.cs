using Microsoft.Playwright;
using Xunit;

namespace FitCheck.Browser;

/// <summary>Headless Chromium for all tests: Debian's, or the one that FITCHECK_CHROMIUM names.</summary>
public sealed class Chromium : IAsyncLifetime
{
    private static readonly string[] Arguments =
    [
        "--headless", "--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run",
        "--disable-background-networking", "--disable-component-update", "--disable-sync",
    ];

    private readonly DirectoryInfo _folder = Directory.CreateTempSubdirectory("fitcheck-fonts-");
    private readonly Dictionary<string, IBrowser> _browsers = new(StringComparer.Ordinal);
    private IPlaywright? _playwright;
    private string _program = "";

    public async Task InitializeAsync()
    {
        _program = Environment.GetEnvironmentVariable("FITCHECK_CHROMIUM") ?? "/usr/bin/chromium";
        Assert.True(File.Exists(_program), $"There is no {_program}. Install chromium, or name another one in FITCHECK_CHROMIUM.");
        _playwright = await Playwright.CreateAsync();
    }

    public async Task DisposeAsync()
    {
        foreach (var browser in _browsers.Values)
            await browser.DisposeAsync();
        _playwright?.Dispose();
        _folder.Delete(recursive: true);
    }

    // One for the fonts of the machine, and one for each typeface by itself: a browser keeps to the fonts that it starts with.
    private async Task<IBrowser> BrowserAsync(Typeface? typeface)
    {
        var name = typeface?.Name ?? "";
        if (_browsers.TryGetValue(name, out var running))
            return running;
        var variables = Environment.GetEnvironmentVariables().Cast<System.Collections.DictionaryEntry>()
            .ToDictionary(v => (string)v.Key, v => (string)v.Value!, StringComparer.Ordinal);
        if (typeface is not null)
            variables["FONTCONFIG_FILE"] = typeface.Configuration(_folder.FullName);
        return _browsers[name] =
            await _playwright!.Chromium.LaunchAsync(new() { ExecutablePath = _program, Args = Arguments, Env = variables });
    }

    /// <summary>A browser of one's own that has seen nothing yet, and keeps to what pages say of themselves.</summary>
    public async Task<IBrowserContext> NewContextAsync(BrowserNewContextOptions? options = null) =>
        await (await BrowserAsync(typeface: null)).NewContextAsync(options);

    /// <summary>Opens an HTML file as a reader would, in a window of its own, and keeps book of what it asks for.</summary>
    public async Task<OpenPage> OpenAsync(string file, ColorScheme scheme = ColorScheme.Light, int width = 1280, Typeface? typeface = null,
        bool scripts = true)
    {
        var browser = await BrowserAsync(typeface);
        var context = await browser.NewContextAsync(new()
        {
            ColorScheme = scheme,
            ViewportSize = new() { Width = width, Height = 844 },
            JavaScriptEnabled = scripts,
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
