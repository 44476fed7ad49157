using System.Diagnostics;
using System.Globalization;
using System.Net.Sockets;
using System.Text;
using Xunit;

namespace FitCheck.Tests.Page.Server;

/// <summary>A search that lasts: what is told of it, who waits for it, and what becomes of it when the browser goes.</summary>
public sealed class SearchTests
{
    // The longest of those of the reference builds.
    private static readonly string Form =
        "job=a&text=" + Uri.EscapeDataString(File.ReadAllText(RepositoryRoot.Of("catalog", "builds", "ostler-woofer-as-sub.yaml")));

    [Fact]
    public async Task Its_progress_is_told_others_go_on_and_it_ends_when_the_browser_goes()
    {
        using var page = new RunningPage();
        using (var browser = await Begun(page))
        {
            await Until(page, line => line.Length > 0);
            // The searches do not keep the others waiting, and as long as nobody goes they go on.
            using var another = await Begun(page, "job=b");
            using var third = await Begun(page, "job=c");
            for (var i = 0; i < 5; i++)
                Assert.Equal(200, (await page.Get("/")).Status);
            Assert.NotEmpty((await page.Get("/progress?job=a")).Body);
        }
        await Until(page, line => line.Length == 0);
        if (OperatingSystem.IsLinux())
        {
            Assert.Equal(0, page.Ended("INT"));
            // Nobody is told of a browser that went.
            Assert.Equal("The page is at this address, for whoever has it whole. Ctrl-C ends it.\n", await page.Error);
        }
    }

    [Fact]
    public async Task It_ends_with_the_page()
    {
        if (!OperatingSystem.IsLinux())
            return;
        using var page = new RunningPage();
        using var browser = await Begun(page);
        await Until(page, line => line.Length > 0);
        Assert.Equal(0, page.Ended("INT"));
    }

    private static async Task<TcpClient> Begun(RunningPage page, string job = "job=a")
    {
        var browser = new TcpClient();
        await browser.ConnectAsync("127.0.0.1", page.Port);
        var form = Form.Replace("job=a", job, StringComparison.Ordinal);
        await browser.GetStream().WriteAsync(Encoding.UTF8.GetBytes($"POST /ways HTTP/1.1\r\nHost: {page.Host}\r\nCookie: {page.Cookie}\r\n"
            + $"Origin: http://{page.Host}\r\nContent-Type: application/x-www-form-urlencoded\r\n"
            + string.Create(CultureInfo.InvariantCulture, $"Content-Length: {form.Length}\r\n\r\n{form}")));
        return browser;
    }

    private static async Task Until(RunningPage page, Func<string, bool> isRight)
    {
        var watch = Stopwatch.StartNew();
        while (!isRight((await page.Get("/progress?job=a")).Body))
        {
            Assert.True(watch.Elapsed < TimeSpan.FromSeconds(5), "its progress stays as it is");
            await Task.Delay(50);
        }
    }
}
