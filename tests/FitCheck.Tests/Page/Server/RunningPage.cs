using System.Diagnostics;
using System.Globalization;
using System.Text;
using Xunit;

namespace FitCheck.Tests.Page.Server;

/// <summary>`fitcheck page` as a user starts it, with catalog and rules of its own where they are to change.</summary>
public sealed class RunningPage : IDisposable
{
    private readonly TemporaryFolder _folder = new();

    public RunningPage() : this(_ => [])
    {
    }

    internal RunningPage(Func<TemporaryFolder, string[]> arguments, params (string Name, string Value)[] environment)
    {
        // In the background of a shell an interruption is ignored, and would be by what is started here.
        string[] words = ["dotnet", Path.Combine(AppContext.BaseDirectory, "fitcheck.dll"), "page", .. arguments(_folder)];
        if (OperatingSystem.IsLinux())
            words = ["env", "--default-signal=INT,TERM,HUP", .. words];
        var start = new ProcessStartInfo(words[0], words[1..])
        {
            WorkingDirectory = _folder.Path,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
            UseShellExecute = false,
        };
        start.Environment["FITCHECK_CACHE"] = Path.Combine(_folder.Path, "cache");
        foreach (var (name, value) in environment)
            start.Environment[name] = value;
        Process = Process.Start(start)!;
        var error = Process.StandardError.ReadToEndAsync();
        Address = Process.StandardOutput.ReadLineAsync().WaitAsync(TimeSpan.FromSeconds(60)).GetAwaiter().GetResult()
            ?? throw new InvalidOperationException(error.Result);
        Error = error;
    }

    internal Process Process { get; }

    internal Task<string> Error { get; }

    internal string Address { get; }

    internal int Port => new Uri(Address).Port;

    internal string Host => string.Create(CultureInfo.InvariantCulture, $"127.0.0.1:{Port}");

    internal string Token => Address[(Address.IndexOf("token=", StringComparison.Ordinal) + 6)..];

    /// <summary>`name=value`, as the page's own word was traded for it.</summary>
    internal string Cookie => _cookie ??= Get($"/?token={Token}", cookie: "").Result["Set-Cookie"]!.Split(';')[0];

    private string? _cookie;

    internal Task<RawAnswer> Get(string path, string? cookie = null, string? host = null, string headers = "", string method = "GET") =>
        RawAnswer.To(Port, Encoding.UTF8.GetBytes($"{method} {path} HTTP/1.1\r\nHost: {host ?? Host}\r\n{CookieLine(cookie)}{headers}"
            + "Connection: close\r\n\r\n"));

    internal Task<RawAnswer> Post(string path, byte[] body, string? origin = "own", string? cookie = null,
        string type = "application/x-www-form-urlencoded", string headers = "")
    {
        var from = origin is null ? "" : $"Origin: {(origin == "own" ? $"http://{Host}" : origin)}\r\n";
        var head = $"POST {path} HTTP/1.1\r\nHost: {Host}\r\n{CookieLine(cookie)}{from}Content-Type: {type}\r\n"
            + string.Create(CultureInfo.InvariantCulture, $"Content-Length: {body.Length}\r\n") + headers + "Connection: close\r\n\r\n";
        return RawAnswer.To(Port, [.. Encoding.UTF8.GetBytes(head), .. body]);
    }

    internal Task<RawAnswer> Post(string path, string body, string? origin = "own", string? cookie = null) =>
        Post(path, Encoding.UTF8.GetBytes(body), origin, cookie);

    /// <summary>Sends it a signal, and tells with what it ended.</summary>
    internal int Ended(string signal)
    {
        using var kill = Process.Start("kill", [$"-{signal}", Process.Id.ToString(CultureInfo.InvariantCulture)]);
        kill.WaitForExit();
        Assert.True(Process.WaitForExit(TimeSpan.FromSeconds(5)), "it goes on");
        return Process.ExitCode;
    }

    public void Dispose()
    {
        if (!Process.HasExited)
            Process.Kill(entireProcessTree: true);
        Process.WaitForExit();
        Process.Dispose();
        _folder.Dispose();
    }

    private string CookieLine(string? cookie) => (cookie ??= Cookie).Length == 0 ? "" : $"Cookie: {cookie}\r\n";
}
