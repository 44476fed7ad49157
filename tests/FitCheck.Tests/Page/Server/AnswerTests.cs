using System.Net.Sockets;
using System.Text;
using Xunit;

namespace FitCheck.Tests.Page.Server;

/// <summary>What may be asked, how much of it, and how many at once.</summary>
public sealed class AnswerTests(RunningPage page) : IClassFixture<RunningPage>
{
    [Theory]
    [InlineData("/..%2f..%2fetc/passwd")]
    [InlineData("/../../etc/passwd")]
    [InlineData("/%2e%2e/%2e%2e/etc/passwd")]
    [InlineData("/..%5c..%5cetc%5cpasswd")]
    [InlineData("//etc/passwd")]
    [InlineData("/etc/passwd")]
    [InlineData("/catalog/builds/tansy-quote.yaml")]
    [InlineData("/reports/page/style.css")]
    [InlineData("/page/style.css")]
    [InlineData("/style.css/")]
    [InlineData("/STYLE.CSS")]
    [InlineData("/fitcheck.dll")]
    [InlineData("/choices/a")]
    public async Task Nothing_that_is_asked_for_is_a_path(string path)
    {
        foreach (var answer in new[] { await page.Get(path), await page.Post(path, "text=a") })
        {
            Assert.Equal(404, answer.Status);
            Assert.DoesNotContain("root:", answer.Body, StringComparison.Ordinal);
        }
    }

    [Fact]
    public async Task Only_what_a_page_does_is_done()
    {
        foreach (var method in new[] { "PUT", "DELETE", "OPTIONS", "PATCH", "TRACE", "BREW" })
        {
            var refused = await page.Get("/", method: method);
            Assert.Equal((405, "GET, HEAD, POST"), (refused.Status, refused["Allow"]));
        }
        var asked = await page.Get("/choices");
        Assert.Equal((405, "POST"), (asked.Status, asked["Allow"]));
        var sent = await page.Post("/style.css", "text=a");
        Assert.Equal((405, "GET, HEAD"), (sent.Status, sent["Allow"]));
    }

    // RFC 9110, 9.3.2: HEAD is GET without the content.
    [Fact]
    public async Task A_head_is_that_of_the_answer()
    {
        foreach (var path in new[] { "/", "/style.css", "/nothing" })
        {
            var (whole, head) = (await page.Get(path), await page.Get(path, method: "HEAD"));
            Assert.Equal((whole.Status, whole["Content-Length"], whole["Content-Type"], ""),
                (head.Status, head["Content-Length"], head["Content-Type"], head.Body));
            Assert.NotEmpty(whole.Body);
        }
    }

    // RFC 9110, 13.1.2: what the browser still has is not sent again.
    [Fact]
    public async Task A_style_sheet_is_kept_by_the_browser_while_it_is_the_same()
    {
        var first = await page.Get("/style.css");
        Assert.Equal(("text/css; charset=utf-8", "no-cache"), (first["Content-Type"], first["Cache-Control"]));
        var again = await page.Get("/style.css", headers: $"If-None-Match: {first["ETag"]}\r\n");
        Assert.Equal((304, ""), (again.Status, again.Body));
        Assert.Equal(200, (await page.Get("/style.css", headers: "If-None-Match: \"another\"\r\n")).Status);
    }

    [Fact]
    public async Task Too_much_of_anything_is_refused()
    {
        Assert.Equal(413, (await page.Post("/save", Encoding.UTF8.GetBytes("text=" + new string('a', 9 << 20)))).Status);
        Assert.Equal(413, (await Chunked(9)).Status);
        Assert.Equal(200, (await page.Post("/save", Encoding.UTF8.GetBytes("text=" + new string('a', 7 << 20)))).Status);
        Assert.Equal(400, (await page.Post("/save", string.Concat(Enumerable.Repeat("a=1&", 1100)))).Status);
        Assert.Equal(200, (await page.Post("/save", string.Concat(Enumerable.Repeat("a=1&", 900)))).Status);
        Assert.Equal(400, (await page.Post("/save", new string('a', 300) + "=1")).Status);
        Assert.Equal(431, (await page.Get("/", headers: $"X-A: {new string('a', 64 << 10)}\r\n")).Status);
        Assert.Equal(414, (await page.Get("/" + new string('a', 8 << 10))).Status);
    }

    [Fact]
    public async Task Files_have_bounds_too()
    {
        Assert.Equal(200, (await Files(2, 1000)).Status);
        Assert.Equal(400, (await Files(17, 10)).Status);
        Assert.Equal(413, (await Files(1, 5 << 20)).Status);
        Assert.Equal(400, (await page.Post("/save", "nonsense"u8.ToArray(), type: "multipart/form-data; boundary=b")).Status);
        Assert.Equal(415, (await page.Post("/save", "{}"u8.ToArray(), type: "application/json")).Status);
        Assert.Equal(415, (await page.Post("/save", "text=a"u8.ToArray(), type: "text/plain")).Status);
    }

    [Fact]
    public async Task Who_sends_too_slowly_is_sent_away()
    {
        using var client = new TcpClient();
        await client.ConnectAsync("127.0.0.1", page.Port);
        var stream = client.GetStream();
        await stream.WriteAsync(Encoding.UTF8.GetBytes($"POST /save HTTP/1.1\r\nHost: {page.Host}\r\nCookie: {page.Cookie}\r\n"
            + $"Origin: http://{page.Host}\r\nContent-Type: application/x-www-form-urlencoded\r\nContent-Length: 1000\r\n\r\ntext="));
        using var reader = new StreamReader(stream);
        Assert.Equal("HTTP/1.1 408 Request Timeout", await reader.ReadLineAsync().WaitAsync(TimeSpan.FromSeconds(30)));
    }

    [Fact]
    public async Task Of_a_hundred_at_once_none_is_lost()
    {
        var build = File.ReadAllText(RepositoryRoot.Of("catalog", "builds", "front-rear-two-amps.yaml"));
        var answers = await Task.WhenAll(Enumerable.Range(0, 100).Select(i => page.Post("/",
            "text=" + Uri.EscapeDataString(build.Replace("\nname: ", $"\nname: No {i}, ", StringComparison.Ordinal)))));
        Assert.All(answers, a => Assert.Equal(200, a.Status));
        Assert.All(answers.Select((a, i) => (a, i)), x => Assert.Contains($"name: No {x.i}, ", x.a.Body, StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("a-b_1", 200)]
    [InlineData("", 400)]
    [InlineData("a%20b", 400)]
    [InlineData("..%2f", 400)]
    [InlineData("aaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaaa", 400)]
    public async Task Progress_is_asked_for_by_a_word(string job, int status)
    {
        var told = await page.Get($"/progress?job={job}");
        Assert.Equal(status, told.Status);
        if (status == 200)
            Assert.Equal(("", "text/plain; charset=utf-8"), (told.Body, told["Content-Type"]));
        else if (job.Length > 0)
            Assert.Equal(400, (await page.Post("/save", $"text=a&job={job}")).Status);
    }

    private Task<RawAnswer> Files(int count, int length)
    {
        var file = new string('a', length);
        var parts = Enumerable.Range(0, count)
            .Select(i => $"--b\r\nContent-Disposition: form-data; name=\"f{i}\"; filename=\"f.csv\"\r\n\r\n{file}\r\n");
        return page.Post("/save", Encoding.UTF8.GetBytes(string.Concat(parts) + "--b--\r\n"), type: "multipart/form-data; boundary=b");
    }

    // RFC 9112, 7.1: nobody says beforehand how long it is.
    private Task<RawAnswer> Chunked(int megabytes)
    {
        var chunk = $"100000\r\n{new string('a', 0x100000)}\r\n";
        return RawAnswer.To(page.Port, Encoding.UTF8.GetBytes($"POST /save HTTP/1.1\r\nHost: {page.Host}\r\nCookie: {page.Cookie}\r\n"
            + $"Origin: http://{page.Host}\r\nContent-Type: application/x-www-form-urlencoded\r\nTransfer-Encoding: chunked\r\n"
            + $"Connection: close\r\n\r\n{string.Concat(Enumerable.Repeat(chunk, megabytes))}0\r\n\r\n"));
    }
}
