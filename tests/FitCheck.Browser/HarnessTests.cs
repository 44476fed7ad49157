using Microsoft.Playwright;
using Xunit;

namespace FitCheck.Browser;

/// <summary>The harness finds what it is there to find; a check that never fails proves nothing.</summary>
[Collection(InChromium.Name)]
public sealed class HarnessTests(Chromium chromium) : IDisposable
{
    private readonly string _file = Path.Combine(Path.GetTempPath(), $"fitcheck-{Guid.NewGuid():n}.html");

    public void Dispose() => File.Delete(_file);

    [Fact]
    public async Task A_plain_page_is_clean()
    {
        await using var page = await OpenAsync("<h1>Verdict: warn</h1>", width: 390);

        Assert.Empty(await page.ObstaclesAsync());
        Assert.Empty(page.RequestsThatLeave());
        Assert.Equal(0, await page.CountAsync("script"));
        Assert.Equal(0, await page.PixelsTooWideAsync());
        Assert.Contains("Verdict: warn", await page.TextAsync(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_picture_without_words_is_an_obstacle()
    {
        await using var page = await OpenAsync("<h1>Report</h1><img src=\"data:image/gif;base64,R0lGODlhAQABAAAAACw=\">");

        Assert.StartsWith("image-alt", Assert.Single(await page.ObstaclesAsync()), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(ColorScheme.Light, 0)]
    [InlineData(ColorScheme.Dark, 1)]
    public async Task Pale_text_is_an_obstacle_in_the_scheme_that_has_it(ColorScheme scheme, int obstacles)
    {
        const string Style = "<style>@media (prefers-color-scheme: dark) { body { background: #000; color: #333 } }</style>";

        await using var page = await OpenAsync(Style + "<h1>Report</h1>", scheme);

        Assert.Equal(obstacles, (await page.ObstaclesAsync()).Count(o => o.StartsWith("color-contrast", StringComparison.Ordinal)));
    }

    [Theory]
    [InlineData("<img alt=\"a logo\" src=\"http://127.0.0.1:9/logo.png\">")]
    [InlineData("<link rel=\"stylesheet\" href=\"style.css\">")]
    public async Task A_request_is_seen(string html)
    {
        await using var page = await OpenAsync(html);

        Assert.Single(page.RequestsThatLeave());
    }

    [Fact]
    public async Task A_script_is_seen()
    {
        await using var page = await OpenAsync("<script>document.title = 'x'</script>");

        Assert.Equal(1, await page.CountAsync("script"));
    }

    [Fact]
    public async Task A_wide_table_is_seen()
    {
        await using var page = await OpenAsync("<div style=\"width: 500px\">wide</div>", width: 390);

        Assert.InRange(await page.PixelsTooWideAsync(), 100, 200);
    }

    private Task<OpenPage> OpenAsync(string body, ColorScheme scheme = ColorScheme.Light, int width = 1280)
    {
        File.WriteAllText(_file, $"""
            <!doctype html>
            <html lang="en"><head><meta charset="utf-8"><title>Report</title>
            <meta name="viewport" content="width=device-width, initial-scale=1">
            <meta http-equiv="Content-Security-Policy" content="script-src 'none'"></head><body><main>{body}</main></body></html>
            """);
        return chromium.OpenAsync(_file, scheme, width);
    }
}
