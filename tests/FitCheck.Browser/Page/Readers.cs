using Deque.AxeCore.Commons;
using Deque.AxeCore.Playwright;
using Microsoft.Playwright;
using Xunit;

namespace FitCheck.Browser.Page;

/// <summary>What those need who see little or have no mouse.</summary>
internal static class Readers
{
    private static readonly AxeRunOptions Wcag = new()
    {
        RunOnly = new() { Type = "tag", Values = ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"] },
    };

    /// <summary>Fails on what a reader without a mouse or with weak eyes stumbles over, and on what is wider than the window.</summary>
    public static async Task FitForAllAsync(this IPage page, string where)
    {
        var found = (await page.RunAxe(Wcag)).Violations.SelectMany(v => v.Nodes.Select(n => $"{where}: {v.Id}: {v.Help}: {n.Html}"))
            .ToList();
        Assert.True(found.Count == 0, string.Join('\n', found));
        var wide = await page.EvaluateAsync<int>("document.documentElement.scrollWidth - document.documentElement.clientWidth");
        Assert.True(wide <= 0, $"{where} is {wide} pixels wider than its window");
    }
}
