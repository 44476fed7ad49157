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

    // Darker than any ground, and no colour of the report's.
    private const string Marked = "0 0 1";

    public static TheoryData<string, int, string, string> Prints
    {
        get
        {
            var prints = new TheoryData<string, int, string, string>();
            foreach (var (build, most) in new[] { ("front-rear-two-amps.yaml", 9), ("tansy-bare-tweeter.yaml", 4) })
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
        Assert.All(pdf.Pages, p => Assert.InRange(p.Letters.Count, Few, int.MaxValue));
        Assert.All(pdf.Pages.SelectMany(p => p.Letters), l => Assert.InRange(l.Size, SmallestPt, 100));
    }

    [Fact]
    public async Task No_report_of_the_catalog_has_an_empty_page()
    {
        await using var page = await chromium.OpenAsync(reports.OfAllBuilds(), typeface: Typeface.Named("DejaVu"));

        var pdf = new PrintedPdf(await page.PrintAsync("Letter"));

        Assert.All(pdf.Pages, p => Assert.InRange(p.Letters.Count, Few, int.MaxValue));
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
