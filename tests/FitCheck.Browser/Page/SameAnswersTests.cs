using System.Text.Json;
using FitCheck.Page;
using Xunit;

namespace FitCheck.Browser.Page;

/// <summary>What the browser reckons is what every other host of the same engine answers, byte for byte.</summary>
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
                worker.postMessage({ id: 1, ...request, job: '' });
                const { status, type, saveAs, text, defect } = await heard();
                answers.push(defect ?? `${status} ${type} ${saveAs}\n${text}`);
            }
            worker.terminate();
            return answers;
        }
        """;

    // As many choices at once as the page of plain files judges.
    private readonly Walk _walk = new(new PageEngine(Checker.Open(new CheckerOptions()).Checker!, new PageOptions { ChoicesAtOnce = 3 }));

    [Fact]
    public async Task A_car_that_is_filled_place_by_place()
    {
        _walk.Begin();
        _walk.Press("seek", typed: ("sought", "saloon"));
        _walk.PressFirst("vehicle:");
        var taken = 0;
        foreach (var place in _walk.Buttons("place:").Take(2))
        {
            _walk.Press(place);
            foreach (var slot in _walk.Buttons("slot:").Take(2))
            {
                _walk.Press(slot);
                _walk.Press("more", "choices", null, ("upto", "4"));
                taken += _walk.TakeFirst() ? 1 : 0;
            }
        }
        Assert.InRange(taken, 2, 4);
        foreach (var side in new[] { "measure", "ways", "buy", "beside", "text", "places" })
            _walk.Press($"side:{side}");
        foreach (var action in new[] { "undo", "undo", "redo", "hold", "undo", "swap", "drop", "new", "undo" })
            _walk.Press(action);
        await SameAsync();
    }

    [Theory]
    [InlineData("front-rear-two-amps.yaml")]
    [InlineData("larkspur-thick-screws.yaml")]
    [InlineData("sedge-vented-box.yaml")]
    [InlineData("tansy-active-two-way.yaml")]
    public async Task A_build_that_is_opened_looked_at_and_printed(string build)
    {
        var bytes = File.ReadAllBytes(Path.Combine(AppContext.BaseDirectory, "catalog", "builds", build));
        _walk.Begin();
        _walk.Press("open", file: new PageFile("build", build, bytes));
        foreach (var place in _walk.Buttons("place:").Take(3))
            _walk.Press(place);
        foreach (var side in new[] { "measure", "buy", "text" })
            _walk.Press($"side:{side}");
        foreach (var what in new[] { "report", "sheet", "list" })
            _walk.Press("", "print", null, ("what", what));
        _walk.Press("save", "save");
        await SameAsync();
    }

    [Fact]
    public async Task Ways_out_that_are_looked_for_and_taken()
    {
        var bytes = File.ReadAllBytes(Path.Combine(AppContext.BaseDirectory, "catalog", "builds", "larkspur-thick-screws.yaml"));
        _walk.Begin();
        _walk.Press("open", file: new PageFile("build", "screws.yaml", bytes));
        _walk.Press("ways", "ways");
        _walk.PressFirst("step:");
        await SameAsync();
    }

    [Fact]
    public async Task What_is_wrong_foreign_or_meant_badly()
    {
        _walk.Begin();
        string[] texts =
            ["vehicle: [\n", "kind: build\nvehicel: x\n", "a: \u0000\n", "<script>alert(1)</script>", "kind: build\nname: Öl 😀\n"];
        foreach (var text in texts)
            _walk.Press("side:text", typed: ("typed", text));
        _walk.Press("open", file: new PageFile("build", "häuschen.yaml", "kind: build\nname: Öl\n"u8.ToArray()));
        _walk.Press("open", file: new PageFile("build", "torn.yaml", [0xff, 0xfe, 0x00]));
        _walk.Press("step:nonsense");
        _walk.Press("take:nonsense");
        _walk.Press("", "no-such-name");
        _walk.Press("new");
        _walk.Press("vehicle:no-such-car");
        _walk.PressFirst("vehicle:");
        _walk.Press("quote", file: new PageFile("quote", "till.csv", "article;name;number\n1;Nothing of the catalog;2\n"u8.ToArray()));
        await SameAsync();
    }

    private async Task SameAsync()
    {
        await using var page = await StaticPage.OpenAsync(chromium, site.Space.Address);

        var answers = await page.Shown.EvaluateAsync<string[]>(Worker, _walk.Steps.Select(s => new
        {
            name = s.Request.Name,
            fields = s.Request.Fields.SelectMany(f => new[] { f.Key, f.Value }).ToArray(),
            files = s.Request.Files.SelectMany(f => new[] { f.Field, f.FileName, Convert.ToBase64String(f.Bytes) }).ToArray(),
            isPart = s.Request.IsPart,
        }).ToArray());

        foreach (var ((request, answer), got) in _walk.Steps.Zip(answers))
        {
            var want = FormattableString.Invariant($"{answer.Status} {answer.ContentType} {answer.SaveAs}\n{answer.Text}");
            Assert.True(want == got,
                $"{request.Name} {JsonSerializer.Serialize(request.Fields)}\n{Difference(want, got)}");
        }
    }

    private static string Difference(string want, string got)
    {
        var (wanted, found) = (want.Split('\n'), got.Split('\n'));
        var line = wanted.Zip(found).TakeWhile(l => l.First == l.Second).Count();
        return $"line {line + 1}\nelsewhere:      {wanted.ElementAtOrDefault(line)}\nin the browser: {found.ElementAtOrDefault(line)}";
    }
}
