using Xunit;

namespace FitCheck.Browser;

/// <summary>The chart as a picture, and builds side by side: told by shape as well as by colour.</summary>
[Collection(InChromium.Name)]
public class ChartTests(Chromium chromium, Reports reports) : IClassFixture<Reports>
{
    private const string Tansy = "chart --vehicle tansy-hatch";

    [Fact]
    public async Task A_picture_stands_before_every_list()
    {
        await using var page = await chromium.OpenAsync(reports.Page("chart"));

        Assert.Equal(0, await page.AskAsync<int>(
            "[...document.querySelectorAll('section[data-vehicle]')].filter(s => !s.querySelector('table').matches('.picture')).length"));
        Assert.NotEqual(0, await page.CountAsync("section[data-vehicle]"));
        // Every column has a mark somewhere, and so has every driver's line.
        Assert.Equal(0, await page.AskAsync<int>("""
            [...document.querySelectorAll('table.picture')].flatMap(t => [...t.tHead.rows[0].cells].slice(1)
                .map((_, i) => [...t.tBodies[0].rows].some(r => r.cells[i + 1].querySelector('a')))).filter(some => !some).length
            """));
        Assert.Equal(0, await page.CountAsync("table.picture tbody tr:not(:has(a))"));
    }

    [Fact]
    public async Task Each_mark_has_a_shape_and_a_colour_of_its_own_and_leads_to_its_reasons()
    {
        await using var page = await chromium.OpenAsync(reports.Page(Tansy));

        var statuses = new[] { "pass", "warn", "measure", "fail" };
        foreach (var status in statuses)
        {
            Assert.Equal($"#shape-{status}", await page.AttributeAsync($"table.picture a.mark-{status} use", "href"));
            Assert.Equal(1, await page.CountAsync($"symbol#shape-{status}"));
        }
        Assert.Equal(statuses.Length, await page.AskAsync<int>(
            "new Set([...document.querySelectorAll('symbol')].map(s => s.innerHTML)).size"));
        Assert.Equal(statuses.Length, await page.AskAsync<int>(
            "new Set([...document.querySelectorAll('table.picture a > .icon')].map(i => getComputedStyle(i).color)).size"));
        Assert.Equal(0, await page.AskAsync<int>("""
            [...document.querySelectorAll('table.picture a')]
                .filter(a => document.getElementById(a.hash.slice(1))?.dataset.status !== a.className.slice('mark-'.length)).length
            """));
    }

    [Fact]
    public async Task A_bar_is_as_long_as_its_margin_and_on_its_side()
    {
        await using var page = await chromium.OpenAsync(reports.Page(Tansy));

        // The line stands at a third; 10 mm to spare fill the room on its right, 5 mm short that on its left: the same length a millimetre.
        Assert.Equal(0, await page.AskAsync<int>("""
            [...document.querySelectorAll('table.picture a')].filter(a => a.querySelector('.least')).filter(a => {
                const room = a.querySelector('.least').getBoundingClientRect(), bar = a.querySelector('i').getBoundingClientRect();
                const mm = parseFloat(a.lastChild.textContent), shown = Math.max(-5, Math.min(10, mm));
                const line = room.left + room.width / 3, length = Math.abs(shown) * room.width / 15;
                const side = mm < 0 ? Math.abs(bar.right - line) : Math.abs(bar.left - line);
                // the figure is rounded to a tenth of a millimetre
                return side > 1 || Math.abs(bar.width - length) > 1;
            }).length
            """));
        Assert.NotEqual(0, await page.CountAsync("table.picture i.short"));
    }

    [Fact]
    public async Task A_mark_opens_its_reasons_where_no_script_runs()
    {
        await using var page = await chromium.OpenAsync(reports.Page(Tansy), scripts: false);
        var row = await page.AttributeAsync("table.picture a.mark-fail", "href");
        Assert.Equal(0, await page.VisibleAsync(row!));

        await page.ClickAsync("table.picture a.mark-fail");

        Assert.Equal(1, await page.VisibleAsync(row!));
    }

    [Fact]
    public async Task What_is_filtered_away_leaves_the_picture_too()
    {
        await using var page = await chromium.OpenAsync(reports.Page(Tansy));
        var before = await page.VisibleAsync("table.picture tbody tr");

        await page.AskAsync<bool>("""
            (() => {
                const s = document.querySelector("[name=status]");
                s.value = "pass";
                return s.dispatchEvent(new Event("input", { bubbles: true }));
            })()
            """);

        Assert.InRange(await page.VisibleAsync("table.picture tbody tr"), 1, before - 1);
        Assert.Equal(0, await page.VisibleAsync("table.picture a.mark-fail"));
    }

    [Theory]
    [InlineData("Verdict", 3)]
    [InlineData("Price", 2)] // the third has no budget, and no rule speaks of its price
    [InlineData("Smallest margin", 3)]
    [InlineData("Work on the vehicle", 3)]
    public async Task Cells_side_by_side_have_the_mark_of_what_rules_say(string row, int marks)
    {
        await using var page = await chromium.OpenAsync(reports.Page("check", "tansy-door-swap.yaml", "tansy-quote.yaml",
            "tansy-active-two-way.yaml"));

        Assert.Equal(marks, await page.CountAsync($".comparison tbody tr:has(th:text-is('{row}')) td .icon"));
        Assert.Equal(0, await page.CountAsync(".comparison thead td, .comparison thead th:empty"));
    }
}
