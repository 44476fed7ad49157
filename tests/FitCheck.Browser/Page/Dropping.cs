using System.Text.RegularExpressions;
using Microsoft.Playwright;

namespace FitCheck.Browser.Page;

/// <summary>A file that is let fall on a page.</summary>
internal static class Dropping
{
    public static Task DropAsync(this IPage page, string name, byte[] bytes) => page.EvaluateAsync("""
        ([name, letters]) => {
          const held = new DataTransfer();
          held.items.add(new File([Uint8Array.from(atob(letters), c => c.charCodeAt(0))], name));
          document.body.dispatchEvent(new DragEvent('drop', { dataTransfer: held, bubbles: true, cancelable: true }));
        }
        """, new[] { name, Convert.ToBase64String(bytes) });

    /// <summary>
    /// Drops a workbook of which nobody can know where its coaxials go, says so, and waits until its articles, by the ids that the catalog
    /// has for their names, are in the build.
    /// </summary>
    public static async Task DropWorkbookAsync(this IPage page)
    {
        await page.DropAsync("offer.xlsx", await File.ReadAllBytesAsync(StaticSite.File("tests", "cases", "tills", "second-sheet.xlsx")));
        await Assertions.Expect(page.Locator(".quote legend").First).ToContainTextAsync("Orrin C165 coaxial", new() { Timeout = 30_000 });
        foreach (var question in await page.Locator(".quote fieldset").AllAsync())
            await question.Locator("input").First.CheckAsync();
        await page.ClickAsync(".quote button[value=quote]");
        foreach (var part in new[] { "orrin-c165", "harness-duo-a-48-28" })
        {
            await Assertions.Expect(page.Locator("#build input[name=text]")).ToHaveValueAsync(new Regex(part), new() { Timeout = 30_000 });
        }
    }
}
