using Microsoft.Playwright;
using Xunit;

namespace FitCheck.Browser;

/// <summary>The installation sheet of the richest build, as it comes out of a printer.</summary>
[Collection(InChromium.Name)]
public class SheetTests(Chromium chromium, Reports reports) : IClassFixture<Reports>
{
    private const string Richest = "front-rear-two-amps.yaml";

    [Theory]
    [InlineData("A4", "DejaVu")]
    [InlineData("A4", "Liberation")]
    [InlineData("Letter", "DejaVu")]
    [InlineData("Letter", "Liberation")]
    public async Task The_work_takes_two_pages_and_each_template_one_with_a_true_ruler(string paper, string typeface)
    {
        await using var page = await chromium.OpenAsync(reports.Sheet(Richest), typeface: Typeface.Named(typeface));
        var templates = await page.CountAsync("section.template");

        var pdf = new PrintedPdf(await page.PrintAsync(paper));

        Assert.All(pdf.Fonts, f => Assert.StartsWith(typeface, f, StringComparison.Ordinal));
        Assert.Contains(typeface + "Sans", pdf.Fonts);
        Assert.Equal(2, templates); // the front doors, and the rear doors with another pattern
        Assert.Equal(2 + templates, pdf.Pages.Count);
        // The only line of about this length on a page is the ruler of its template.
        Assert.All(pdf.Pages.Take(2), p => Assert.DoesNotContain(p.Lines, l => l is > 95 and < 105));
        Assert.All(pdf.Pages.Skip(2), p => Assert.InRange(Assert.Single(p.Lines, l => l is > 95 and < 105), 99.5, 100.5));
    }

    [Fact]
    public async Task A_circle_on_the_template_is_as_large_as_the_part()
    {
        await using var page = await chromium.OpenAsync(reports.Sheet(Richest));
        await page.AsPrintedAsync();

        // CSS Values 3: 96 px are an inch. The catalog's spacer is 184 mm wide, the hole in the vehicle's front door 158 mm.
        Assert.Equal(184, await page.WidthAsync("section.template circle.outline") * 25.4 / 96, 0.5);
        Assert.Equal(158, await page.WidthAsync("section.template circle.there") * 25.4 / 96, 0.5);
    }

    [Fact]
    public async Task Everyone_can_read_it()
    {
        await using var page = await chromium.OpenAsync(reports.Sheet(Richest));

        Assert.Empty(await page.ObstaclesAsync());
        Assert.Empty(page.RequestsThatLeave());
        Assert.Equal(0, await page.CountAsync("script"));
    }

    [Fact]
    public async Task It_fits_a_telephone()
    {
        await using var page = await chromium.OpenAsync(reports.Sheet(Richest), width: 390);

        Assert.Equal(0, await page.PixelsTooWideAsync());
    }

    [Fact]
    public async Task It_is_black_on_white_in_the_dark_too()
    {
        await using var page = await chromium.OpenAsync(reports.Sheet(Richest), ColorScheme.Dark);

        Assert.Empty(await page.ObstaclesAsync());
        Assert.Equal("rgb(255, 255, 255)", await page.GroundAsync());
    }
}
