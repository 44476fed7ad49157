using System.Text.Json;
using Microsoft.Playwright;
using Xunit;

namespace FitCheck.Browser;

[Collection(InChromium.Name)]
public class ReportTests(Chromium chromium, Reports reports) : IClassFixture<Reports>
{
    private const int Telephone = 390;
    private const int Desk = 1280;

    // Builds of the catalog whose reports are looked at; the first is the richest.
    private static readonly string[] Shown = ["front-rear-two-amps.yaml"];

    public static TheoryData<string> Builds => [.. Shown];

    public static TheoryData<string, ColorScheme, int> Views
    {
        get
        {
            var views = new TheoryData<string, ColorScheme, int>();
            foreach (var build in Shown)
            {
                foreach (var scheme in new[] { ColorScheme.Light, ColorScheme.Dark })
                {
                    views.Add(build, scheme, Desk);
                    views.Add(build, scheme, Telephone);
                }
            }
            return views;
        }
    }

    [Theory]
    [MemberData(nameof(Views))]
    public async Task Everyone_can_read_it(string build, ColorScheme scheme, int width)
    {
        await using var page = await chromium.OpenAsync(reports.Html(build), scheme, width);

        Assert.Empty(await page.ObstaclesAsync());
    }

    [Theory]
    [MemberData(nameof(Builds))]
    public async Task It_fits_a_telephone(string build)
    {
        await using var page = await chromium.OpenAsync(reports.Html(build), width: Telephone);

        Assert.Equal(0, await page.PixelsTooWideAsync());
    }

    [Theory]
    [MemberData(nameof(Builds))]
    public async Task It_is_one_file_without_scripts(string build)
    {
        await using var page = await chromium.OpenAsync(reports.Html(build));

        Assert.Empty(page.RequestsThatLeave());
        Assert.Equal(0, await page.CountAsync("script"));
    }

    [Theory]
    [MemberData(nameof(Builds))]
    public async Task It_tells_the_verdict(string build)
    {
        using var json = JsonDocument.Parse(Reports.Output(build, "json"));
        var verdict = json.RootElement.GetProperty("builds")[0].GetProperty("verdict").GetString()!;

        await using var page = await chromium.OpenAsync(reports.Html(build));

        Assert.Contains(verdict, await page.TextAsync(), StringComparison.OrdinalIgnoreCase);
    }
}
