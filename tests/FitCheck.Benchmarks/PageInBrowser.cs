using System.Diagnostics;
using System.Globalization;
using System.Text.RegularExpressions;
using FitCheck.Browser.Page;
using Microsoft.Playwright;

namespace FitCheck.Benchmarks;

/// <summary>
/// Both pages in one browser, by the same clicks: the one that `fitcheck page` serves, and the one of plain files.
/// </summary>
internal static class PageInBrowser
{
    private const int Times = 7;
    // What a browser does when it opens is not the page's.
    private static readonly TimeSpan Rest = TimeSpan.FromSeconds(1);
    private const string Build = "front-rear-two-amps.yaml", Hopeless = "sedge-overpowered-rears.yaml";

    // As long as anything is on its way, nothing has come; two frames later it is painted.
    private const string Clicked = """
        async ([selector, fresh]) => {
          if (fresh) document.querySelector('#build input[name=text]').value += `# ${fresh}\n`;
          const button = document.querySelector(selector);
          const frame = () => new Promise(requestAnimationFrame);
          let changed = false;
          const watch = new MutationObserver(() => changed = true);
          const begun = performance.now();
          button.click();
          watch.observe(document.body, { childList: true, subtree: true });
          while (!changed || document.querySelector('.htmx-request')) await frame();
          await frame();
          return performance.now() - begun;
        }
        """;

    private const string Offered = """
        async ([selector, few, many]) => {
          document.querySelector('#build input[name=text]').value += `# ${Math.random()}\n`;
          const count = () => document.querySelectorAll('.offer').length;
          const frame = () => new Promise(requestAnimationFrame);
          const begun = performance.now();
          document.querySelector(selector).click();
          while (count() > 0) await frame();
          while (count() < few) await frame();
          const first = performance.now() - begun;
          while (count() < many && document.querySelector('[hx-trigger=load]')) await frame();
          return [first, performance.now() - begun, count()];
        }
        """;

    public static async Task<int> Run()
    {
        var folder = Directory.CreateTempSubdirectory("fitcheck-page-");
        try
        {
            if (!Published(folder.FullName))
                return Wrong.Usage("`dotnet publish src/FitCheck.Page.Static -c Release` failed.");
            using var space = new WebSpace(folder.FullName, "/club/fit/");
            using var playwright = await Playwright.CreateAsync();
            await using var browser = await playwright.Chromium.LaunchAsync(new()
            {
                ExecutablePath = Environment.GetEnvironmentVariable("FITCHECK_CHROMIUM") ?? "/usr/bin/chromium",
                Args = ["--headless", "--no-sandbox", "--disable-gpu", "--no-first-run", "--disable-background-networking"],
            });
            var local = new Figures();
            await Starts(browser, local);
            using (var server = new StartedPage())
                await Work(browser, server.Address, local);
            var files = new Figures();
            await Visits(browser, space.Address, files);
            await Work(browser, space.Address, files);
            Print(local, files);
            return 0;
        }
        finally
        {
            folder.Delete(recursive: true);
        }
    }

    private static bool Published(string folder)
    {
        using var publish = Process.Start(new ProcessStartInfo("dotnet",
            ["publish", "src/FitCheck.Page.Static", "-c", "Release", "-o", folder, "--disable-build-servers", "--nologo", "-v", "quiet"])
        { WorkingDirectory = Built.Path(), RedirectStandardOutput = true, UseShellExecute = false })!;
        publish.StandardOutput.ReadToEnd();
        publish.WaitForExit();
        return publish.ExitCode == 0;
    }

    // From the command to what is seen, in a new tab of a browser that is open and at rest.
    private static async Task Starts(IBrowser browser, Figures figures)
    {
        for (var i = 0; i < Times; i++)
        {
            await using var context = await browser.NewContextAsync();
            await (await context.NewPageAsync()).GotoAsync("data:text/html,elsewhere");
            await Task.Delay(Rest);
            var begun = DateTime.UtcNow;
            using var server = new StartedPage();
            var page = await context.NewPageAsync();
            await page.GotoAsync(server.Address);
            figures.Paint.Add(await Painted(page) - (begun - DateTime.UnixEpoch).TotalMilliseconds);
            figures.Answers.Add((DateTime.UtcNow - begun).TotalMilliseconds);
        }
    }

    private static async Task Visits(IBrowser browser, string address, Figures figures)
    {
        for (var i = 0; i < Times; i++)
        {
            await using var context = await browser.NewContextAsync();
            var page = await context.NewPageAsync();
            await Task.Delay(Rest);
            var begun = DateTime.UtcNow;
            await page.GotoAsync(address);
            await Ready(page);
            figures.Answers.Add((DateTime.UtcNow - begun).TotalMilliseconds);
            figures.Paint.Add(await Painted(page) - (begun - DateTime.UnixEpoch).TotalMilliseconds);
            await page.EvaluateAsync("navigator.serviceWorker.ready.then(() => {})");
            await page.CloseAsync();
            var again = await context.NewPageAsync();
            begun = DateTime.UtcNow;
            await again.GotoAsync(address);
            await Ready(again);
            figures.Again.Add((DateTime.UtcNow - begun).TotalMilliseconds);
        }
    }

    private static async Task Work(IBrowser browser, string address, Figures figures)
    {
        await using var context = await browser.NewContextAsync(new() { ViewportSize = new() { Width = 1280, Height = 900 } });
        var page = await context.NewPageAsync();
        page.SetDefaultTimeout(60_000);
        await page.GotoAsync(address);
        await page.WaitForSelectorAsync("html:not([data-engine]), html[data-engine=ready]",
            new() { State = WaitForSelectorState.Attached });
        await page.SetInputFilesAsync("#build-file", Built.Path("catalog", "builds", Build));
        await page.WaitForSelectorAsync("button[value='place:front-door-left']");
        for (var i = 0; i < 15 + Times; i++)
        {
            var took = await page.EvaluateAsync<double>(Clicked, new[]
            {
                i % 2 == 0 ? "button[value='place:front-door-left']" : "button[value='place:front-door-right']",
                i.ToString(CultureInfo.InvariantCulture),
            });
            if (i >= 15)
                figures.Click.Add(took);
        }
        await page.ClickAsync("button[value=new]");
        await page.ClickAsync("button[value='vehicle:tansy-hatch']");
        await page.ClickAsync("button[value='place:front-door-left']");
        for (var i = 0; i < 2 + Times; i++)
        {
            await page.WaitForSelectorAsync("button[value^='slot:driver@front-door-left']");
            var took = await page.EvaluateAsync<double[]>(Offered,
                new object[] { "button[value^='slot:driver@front-door-left']", 10, 50 });
            figures.Offers = (int)took[2];
            await page.EvaluateAsync<double>(Clicked, new[] { "button[value='place:front-door-right']", "" });
            await page.EvaluateAsync<double>(Clicked, new[] { "button[value='place:front-door-left']", "" });
            if (i < 2)
                continue;
            figures.Ten.Add(took[0]);
            figures.Fifty.Add(took[1]);
        }
        await page.SetInputFilesAsync("#build-file", Built.Path("catalog", "builds", Hopeless));
        await page.WaitForSelectorAsync($"#build input[name=file][value='{Hopeless}']", new() { State = WaitForSelectorState.Attached });
        await page.ClickAsync("#side-ways");
        for (var i = 0; i < Times; i++)
        {
            await page.ClickAsync("#look");
            await Assertions.Expect(page.Locator("#progress")).ToHaveTextAsync(new Regex("[0-9]"), new() { Timeout = 30_000 });
            var begun = DateTime.UtcNow;
            await page.ClickAsync("#stop");
            await page.ClickAsync("#side-places");
            await page.WaitForSelectorAsync("#side-places[aria-current]");
            figures.Stop.Add((DateTime.UtcNow - begun).TotalMilliseconds);
            await page.ClickAsync("#side-ways");
            await page.WaitForSelectorAsync("#look");
        }
    }

    private static Task Ready(IPage page) => page.WaitForSelectorAsync("html[data-engine=ready]",
        new() { State = WaitForSelectorState.Attached, Timeout = 60_000 });

    // When something was first seen, in milliseconds since 1970.
    private static Task<double> Painted(IPage page) => page.EvaluateAsync<double>("""
        async () => {
          const seen = () => performance.getEntriesByName('first-contentful-paint')[0];
          while (!seen()) await new Promise(requestAnimationFrame);
          return performance.timeOrigin + seen().startTime;
        }
        """);

    private static void Print(Figures local, Figures files)
    {
        Console.WriteLine($"| milliseconds, medians of {Times} | `fitcheck page` | asked | plain files | asked |");
        Console.WriteLine("|---|---|---|---|---|");
        Row("start of the command, or first visit, to the first paint", local.Paint, "500", files.Paint, "");
        Row("the same until it answers", local.Answers, "", files.Answers, "5,000");
        Row("second visit until it answers", local.Again, "", files.Again, "2,000");
        Row("click to new verdict and drawing, richest build", local.Click, "100", files.Click, "500");
        Row("ten choices of a driver, completed and judged", local.Ten, "200", files.Ten, "1,500");
        Row(string.Create(CultureInfo.InvariantCulture, $"all {local.Offers} of them (asked of fifty)"),
            local.Fifty, "1,000", files.Fifty, "8,000");
        Row("stop of a search to the next answer", local.Stop, "", files.Stop, "2,000");
    }

    private static void Row(string what, List<double> local, string asked, List<double> files, string askedOfFiles) =>
        Console.WriteLine($"| {what} | {Median(local)} | {asked} | {Median(files)} | {askedOfFiles} |");

    private static string Median(List<double> all) => all.Count == 0 ? ""
        : all.Order().ElementAt(all.Count / 2).ToString("N0", CultureInfo.InvariantCulture);

    private sealed class Figures
    {
        public List<double> Paint { get; } = [];
        public List<double> Answers { get; } = [];
        public List<double> Again { get; } = [];
        public List<double> Click { get; } = [];
        public List<double> Ten { get; } = [];
        public List<double> Fifty { get; } = [];
        public List<double> Stop { get; } = [];
        public int Offers { get; set; }
    }
}
