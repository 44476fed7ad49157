using Xunit;

namespace FitCheck.Browser;

/// <summary>The report as it comes out of a printer whose dialogue nobody touched, in a wide typeface and in a narrow one.</summary>
[Collection(InChromium.Name)]
public class PaperTests(Chromium chromium, Reports reports) : IClassFixture<Reports>
{
    // Of a page: less is a frame, a heading or a line that was left over.
    private const int Few = 200;
    // common practice, no source: below it, print is hard to read; the tolerance is that of the file's rounding
    private const double SmallestPt = 7 - 0.01;

    // Some lines more, as another typeface or a longer name may take: they shall not take another sheet.
    private const string Reserve = "main::after { content: ''; display: block; height: 20mm; }";
    private const int MostOfAny = 8;

    // Darker than any ground, and no colour of the report's.
    private const string Marked = "0 0 1";

    public static TheoryData<string, int, string, string> Prints
    {
        get
        {
            var prints = new TheoryData<string, int, string, string>();
            foreach (var (build, most) in new[] { ("front-rear-two-amps.yaml", MostOfAny), ("tansy-bare-tweeter.yaml", 4) })
            {
                foreach (var paper in new[] { "A4", "Letter" })
                {
                    foreach (var typeface in Typeface.All)
                        prints.Add(build, most, paper, typeface.Name);
                }
            }
            return prints;
        }
    }

    [Theory]
    [MemberData(nameof(Prints))]
    public async Task A_customer_takes_few_sheets_home(string build, int most, string paper, string typeface)
    {
        var pdf = await PrintAsync(build, paper, typeface);

        Assert.InRange(pdf.Pages.Count, 1, most);
        Assert.InRange((await PrintAsync(build, paper, typeface, Reserve)).Pages.Count, 1, most);
        Assert.All(pdf.Pages, p => Assert.InRange(p.Letters.Count, Few, int.MaxValue));
        Assert.All(pdf.Pages.SelectMany(p => p.Letters), l => Assert.InRange(l.Size, SmallestPt, 100));
    }

    [Fact]
    public async Task No_report_of_the_catalog_has_an_empty_page_or_more_than_the_richest()
    {
        await using var page = await chromium.OpenAsync(reports.OfAllBuilds(), typeface: Typeface.Named("DejaVu"));
        await page.StyleAsync("h1 { color: rgb(0 0 255) !important }");

        var pdf = new PrintedPdf(await page.PrintAsync("Letter"));

        Assert.All(pdf.Pages, p => Assert.InRange(p.Letters.Count, Few, int.MaxValue));
        // A report begins where its name stands.
        var begins = pdf.Pages.Select((p, i) => (p, i)).Where(p => p.p.Letters.Any(l => l.Colour == Marked)).Select(p => p.i).ToList();
        Assert.Equal(await page.CountAsync("article.build"), begins.Count);
        Assert.All(begins.Zip(begins.Skip(1).Append(pdf.Pages.Count)), r => Assert.InRange(r.Second - r.First, 1, MostOfAny));
    }

    [Fact]
    public async Task Customer_date_and_shop_are_lines_on_paper_and_nothing_on_the_screen()
    {
        await using var page = await chromium.OpenAsync(reports.Html("tansy-bare-tweeter.yaml"));
        Assert.Equal(0, await page.VisibleAsync(".slip dt"));
        await page.AsPrintedAsync();
        Assert.Equal(3, await page.VisibleAsync(".slip dt"));

        await using var named = await chromium.OpenAsync(reports.Page("check --for Order-417", "tansy-bare-tweeter.yaml"));
        Assert.Equal(1, await named.VisibleAsync(".slip dt"));
        Assert.Contains("Order-417", await named.TextAsync(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Everyone_can_read_what_is_printed()
    {
        foreach (var file in new[] { reports.Html("front-rear-two-amps.yaml"), reports.Page("chart --vehicle tansy-hatch"),
            reports.Page("check", "tansy-door-swap.yaml", "tansy-quote.yaml") })
        {
            await using var page = await chromium.OpenAsync(file);
            await page.AsPrintedAsync();
            Assert.Empty(await page.ObstaclesAsync());
        }
    }

    [Theory]
    [MemberData(nameof(Prints))]
    public async Task No_heading_ends_a_column(string build, int most, string paper, string typeface)
    {
        _ = most;
        var pdf = await PrintAsync(build, paper, typeface, $"h1, h2, h3, h4, .proof div > p {{ color: rgb(0 0 255) !important }}");

        Assert.Contains(pdf.Pages[0].Letters, l => l.Colour == Marked);
        foreach (var page in pdf.Pages)
        {
            var middle = (paper == "A4" ? 210 : 215.9) / 2;
            foreach (var column in page.Letters.GroupBy(l => l.X < middle))
                Assert.NotEqual(Marked, column.MinBy(l => l.Y).Colour);
        }
    }

    [Fact]
    public async Task What_decides_is_on_it()
    {
        await using var page = await chromium.OpenAsync(reports.Html("tansy-bare-tweeter.yaml"));
        await page.AsPrintedAsync();
        var text = await page.TextAsync();

        foreach (var words in new[] { "This build does not go together as planned", "What to change", "Parts to buy", "Total", "Take care",
            "What passes" })
            Assert.Contains(words, text, StringComparison.Ordinal);
        // Nothing changes in the doors: a line is enough.
        Assert.Contains("No check applies to Front door, left and right.", text, StringComparison.Ordinal);
        Assert.DoesNotContain("The driver's body is not known", text, StringComparison.Ordinal);
    }

    private async Task<PrintedPdf> PrintAsync(string build, string paper, string typeface, string css = "")
    {
        await using var page = await chromium.OpenAsync(reports.Html(build), typeface: Typeface.Named(typeface));
        if (css.Length > 0)
            await page.StyleAsync(css);
        var pdf = new PrintedPdf(await page.PrintAsync(paper));
        Assert.All(pdf.Fonts, f => Assert.StartsWith(typeface, f, StringComparison.Ordinal));
        Assert.Contains(typeface + "Sans", pdf.Fonts);
        return pdf;
    }
}
