using System.Globalization;
using System.Text.Json;
using FitCheck.Page;
using Microsoft.Playwright;
using Xunit;

namespace FitCheck.Browser.Page;

/// <summary>What the browser reckons is what every other host of the same engine answers.</summary>
[Collection(InChromium.Name)]
public class SameAnswersTests(Chromium chromium, StaticSite site) : IClassFixture<StaticSite>
{
    private const string Worker = """
        async requests => {
            const worker = new Worker('worker.js', { type: 'module' });
            const heard = () => new Promise(done => worker.addEventListener('message', ({ data }) => done(data), { once: true }));
            const first = await heard();
            if (!first.ready) throw new Error(first.failed);
            const answers = [];
            for (const request of requests) {
                worker.postMessage({ id: 1, files: [], ...request, job: '' });
                const { status, type, saveAs, text, defect } = await heard();
                answers.push(defect ?? `${status} ${type} ${saveAs}\n${text}`);
            }
            worker.terminate();
            return answers;
        }
        """;

    [Fact]
    public async Task Both_hosts_give_the_same_bytes()
    {
        var engine = new PageEngine(Checker.Open(new CheckerOptions()).Checker!);
        var requests = Requests().ToList();
        var expected = requests.Select(r => engine.Answer(r)).Select(a =>
            string.Create(CultureInfo.InvariantCulture, $"{a.Status} {a.ContentType} {a.SaveAs}\n{a.Text}"));
        await using var page = await StaticPage.OpenAsync(chromium, site.Space.Address);

        var answers = await page.Shown.EvaluateAsync<string[]>(Worker, requests.Select(r => new
        {
            name = r.Name,
            fields = r.Fields.SelectMany(f => new[] { f.Key, f.Value }).ToArray(),
            files = r.Files.SelectMany(f => new[] { f.Field, f.FileName, Convert.ToBase64String(f.Bytes) }).ToArray(),
            isPart = r.IsPart,
        }).ToArray());

        foreach (var (request, want, got) in requests.Zip(expected, answers))
            Assert.True(want == got, $"{request.Name} {JsonSerializer.Serialize(request.Fields)}\nelsewhere:\n{want}\nin the browser:\n{got}");
    }

    private static IEnumerable<PageRequest> Requests()
    {
        yield return new() { Name = "" };
        foreach (var name in PageEngine.Names)
        {
            foreach (var text in Texts())
            {
                yield return Of(name, text, isPart: false);
                yield return Of(name, text, isPart: true);
            }
        }
        yield return new() { Name = "no-such-name" };
        yield return new() { Name = "", Files = [new("file", "häuschen.yaml", "kind: build\nname: Öl\n"u8.ToArray())] };
    }

    private static PageRequest Of(string name, string text, bool isPart) =>
        new() { Name = name, Fields = [new("text", text)], IsPart = isPart };

    // Nothing, what is no build, and reference builds of which everything is drawn and reckoned.
    private static IEnumerable<string> Texts() =>
        ["", "vehicle: [\n", "kind: build\nvehicel: x\n", "\u0000", .. new[] { "front-rear-two-amps.yaml" }
            .Select(b => File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "catalog", "builds", b)))];
}
