using System.Text.RegularExpressions;
using Xunit;

namespace FitCheck.Tests.Page.Server;

/// <summary>Who is let in, and what each answer asks of the browser: raw requests at the running page.</summary>
public sealed class DoorTests(RunningPage page) : IClassFixture<RunningPage>
{
    // What a browser tells when a foreign page's own name was made to lead here. RFC 9110, 15.5.20: 421 misdirected request.
    [Theory]
    [InlineData("stranger.example")]
    [InlineData("stranger.example:PORT")]
    [InlineData("127.0.0.1")]
    [InlineData("127.0.0.1:1")]
    [InlineData("127.0.0.2:PORT")]
    [InlineData("localhost.stranger.example:PORT")]
    [InlineData("[::1]:PORT")]
    [InlineData("0.0.0.0:PORT")]
    public async Task A_foreign_name_is_refused_with_cookie_and_token(string host)
    {
        host = host.Replace("PORT", $"{page.Port}", StringComparison.Ordinal);
        Assert.Equal(421, (await page.Get("/", host: host)).Status);
        Assert.Equal(421, (await page.Get($"/?token={page.Token}", host: host)).Status);
        Assert.Equal(421, (await page.Get("/style.css", host: host)).Status);
    }

    [Fact]
    public async Task Both_own_names_are_answered()
    {
        Assert.Equal(200, (await page.Get("/", host: $"127.0.0.1:{page.Port}")).Status);
        Assert.Equal(200, (await page.Get("/", host: $"localhost:{page.Port}")).Status);
    }

    // RFC 9112, 3.2: a request of HTTP/1.1 without Host, or with two, must get a 400; HTTP/1.0 knows none.
    [Fact]
    public async Task No_name_and_two_names_are_refused()
    {
        Assert.Equal(400, (await Raw("GET / HTTP/1.1\r\n\r\n")).Status);
        Assert.Equal(400, (await Raw($"GET / HTTP/1.1\r\nHost: {page.Host}\r\nHost: stranger.example\r\n\r\n")).Status);
        Assert.Equal(421, (await Raw($"GET / HTTP/1.0\r\nCookie: {page.Cookie}\r\n\r\n")).Status);
        Assert.Equal(421, (await Raw($"GET / HTTP/1.1\r\nHost:\r\nCookie: {page.Cookie}\r\nConnection: close\r\n\r\n")).Status);
    }

    // `null` is what a frame in a sandbox tells, or a form of a page that hides where it comes from.
    [Theory]
    [InlineData(null)]
    [InlineData("null")]
    [InlineData("http://stranger.example")]
    [InlineData("http://127.0.0.1:1")]
    [InlineData("http://127.0.0.1")]
    [InlineData("https://127.0.0.1:PORT")]
    [InlineData("http://localhost:PORT")]
    [InlineData("http://127.0.0.1:PORT.stranger.example")]
    public async Task What_another_page_sends_is_refused(string? origin)
    {
        origin = origin?.Replace("PORT", $"{page.Port}", StringComparison.Ordinal);
        foreach (var name in new[] { "/", "/choices", "/save" })
            Assert.Equal(403, (await page.Post(name, "text=a", origin)).Status);
    }

    [Fact]
    public async Task What_the_page_itself_sends_is_taken()
    {
        var saved = await page.Post("/save", "text=name%3A+mine");
        Assert.Equal((200, "name: mine", "attachment; filename=build.yaml; filename*=UTF-8''build.yaml"),
            (saved.Status, saved.Body.TrimEnd(), saved["Content-Disposition"]));
    }

    [Theory]
    [InlineData("")]
    [InlineData("fitcheck=1")]
    [InlineData("fitcheck-PORT=")]
    [InlineData("fitcheck-PORT=TOKEN")]
    public async Task Without_the_right_cookie_nothing_is_told(string cookie)
    {
        cookie = cookie.Replace("PORT", $"{page.Port}", StringComparison.Ordinal).Replace("TOKEN", page.Token, StringComparison.Ordinal);
        foreach (var path in new[] { "/", "/style.css", "/progress?job=a", "/nothing", "/?token=" })
        {
            var answer = await page.Get(path, cookie);
            Assert.Equal(403, answer.Status);
            Assert.Contains("Open the whole address that `fitcheck page` printed", answer.Body, StringComparison.Ordinal);
        }
        Assert.Equal(403, (await page.Post("/save", "text=a", cookie: cookie)).Status);
    }

    [Fact]
    public async Task A_wrong_token_is_refused()
    {
        foreach (var token in new[] { "a", page.Token[..^1], page.Token + "A", page.Token.ToUpperInvariant(), $"{page.Token}&token=a" })
            Assert.Equal((403, null), await Traded(token));

        async Task<(int, string?)> Traded(string token)
        {
            var answer = await page.Get($"/?token={token}", cookie: "");
            return (answer.Status, answer["Set-Cookie"]);
        }
    }

    // The printed address goes on working for its owner in another browser; it holds 256 bits, 43 letters of base64 (RFC 4648).
    [Fact]
    public async Task The_token_is_traded_for_a_cookie_each_time_and_is_in_no_address_then()
    {
        Assert.Matches("^[A-Za-z0-9_-]{43}$", page.Token);
        for (var visit = 0; visit < 2; visit++)
        {
            var answer = await page.Get($"/?token={page.Token}", cookie: "");
            Assert.Equal((303, "/"), (answer.Status, answer["Location"]));
            Assert.Matches(new Regex($"^fitcheck-{page.Port}=[A-Za-z0-9_-]{{43}}; path=/; samesite=strict; httponly$",
                RegexOptions.IgnoreCase), answer["Set-Cookie"]);
            Assert.DoesNotContain(page.Token, answer["Set-Cookie"], StringComparison.Ordinal);
        }
        Assert.DoesNotContain(page.Token, (await page.Get("/")).Body, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Every_answer_binds_the_browser()
    {
        var answers = new[]
        {
            await page.Get("/"), await page.Get("/style.css"), await page.Get("/nothing"), await page.Get("/", cookie: ""),
            await page.Get("/", host: "stranger.example"), await page.Get("/", method: "PUT"), await page.Post("/", "a=1", origin: null),
            await page.Get($"/?token={page.Token}", cookie: ""), await page.Post("/save", "text=a"), await page.Get("/progress?job=a"),
            await page.Post("/save", new byte[9 << 20]),
        };
        Assert.Equal([200, 200, 404, 403, 421, 405, 403, 303, 200, 200, 413], answers.Select(a => a.Status));
        Assert.All(answers, a =>
        {
            Assert.Equal("default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self' data:; connect-src 'self'; "
                + "form-action 'self'; base-uri 'none'; frame-ancestors 'none'", a["Content-Security-Policy"]);
            Assert.Equal(("same-origin", "nosniff", "same-origin", "same-origin", null), (a["Referrer-Policy"], a["X-Content-Type-Options"],
                a["Cross-Origin-Opener-Policy"], a["Cross-Origin-Resource-Policy"], a["Server"]));
        });
        Assert.All(answers.Where((_, i) => i != 1), a => Assert.Equal("no-store", a["Cache-Control"]));
    }

    private Task<RawAnswer> Raw(string request) => RawAnswer.To(page.Port, System.Text.Encoding.UTF8.GetBytes(request));
}
