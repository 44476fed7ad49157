using System.Collections.Concurrent;
using System.Net;
using System.Net.Sockets;

namespace FitCheck.Browser.Page;

/// <summary>The plainest of web servers: files of one folder under one path, and no word about them but their type.</summary>
public sealed class WebSpace : IDisposable
{
    private static readonly Dictionary<string, string> Types = new(StringComparer.Ordinal)
    {
        [".html"] = "text/html",
        [".js"] = "text/javascript",
        [".css"] = "text/css",
        [".wasm"] = "application/wasm",
    };

    private readonly HttpListener _listener = new();
    private readonly string _folder;
    private readonly string _path;

    public WebSpace(string folder, string path)
    {
        (_folder, _path) = (folder, path);
        Address = $"http://127.0.0.1:{FreePort()}{path}";
        _listener.Prefixes.Add(new Uri(Address).GetLeftPart(UriPartial.Authority) + "/");
        _listener.Start();
        _ = ServeAsync();
    }

    /// <summary>Where the page is.</summary>
    public string Address { get; }

    /// <summary>What was asked for and is not there.</summary>
    public ConcurrentQueue<string> Missing { get; } = new();

    /// <summary>What was asked for by another method than GET: there is nobody who could answer.</summary>
    public ConcurrentQueue<string> Sent { get; } = new();

    public void Dispose() => _listener.Close();

    private async Task ServeAsync()
    {
        while (_listener.IsListening)
        {
            try
            {
                Answer(await _listener.GetContextAsync());
            }
            catch (Exception e) when (e is HttpListenerException or ObjectDisposedException)
            {
                // Closed, or the browser went away.
            }
        }
    }

    private void Answer(HttpListenerContext context)
    {
        var asked = context.Request.Url!.AbsolutePath;
        if (context.Request.HttpMethod != "GET")
            Sent.Enqueue($"{context.Request.HttpMethod} {asked}");
        var name = asked.StartsWith(_path, StringComparison.Ordinal) ? asked[_path.Length..] : "..";
        var file = Path.Combine(_folder, name.Length == 0 ? "index.html" : name);
        if (name.Contains("..", StringComparison.Ordinal) || !File.Exists(file))
        {
            Missing.Enqueue(asked);
            context.Response.StatusCode = 404;
        }
        else
        {
            context.Response.ContentType = Types.GetValueOrDefault(Path.GetExtension(file), "application/octet-stream");
            context.Response.OutputStream.Write(File.ReadAllBytes(file));
        }
        context.Response.Close();
    }

    private static int FreePort()
    {
        using var any = new TcpListener(IPAddress.Loopback, 0);
        any.Start();
        return ((IPEndPoint)any.LocalEndpoint).Port;
    }
}
