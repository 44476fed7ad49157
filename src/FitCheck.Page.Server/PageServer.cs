using System.Net;
using System.Net.Sockets;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Connections;
using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.Hosting.Server;
using Microsoft.AspNetCore.Hosting.Server.Features;
using Microsoft.AspNetCore.Server.Kestrel.Core;
using Microsoft.Extensions.DependencyInjection;

namespace FitCheck.Page.Server;

/// <summary>Listens on this machine alone, and leads each request past those who may refuse it.</summary>
internal sealed class PageServer : IAsyncDisposable
{
    private static readonly TimeSpan LastWords = TimeSpan.FromMilliseconds(500);

    private readonly Task<OpenedPage> _opening;
    private readonly CancellationToken _end;
    private readonly Turns _turns = new();
    private WebApplication? _app;

    /// <param name="opening">What it will answer from; whoever asks before waits for it.</param>
    /// <param name="end">Ends all work.</param>
    public PageServer(Task<OpenedPage> opening, CancellationToken end) => (_opening, _end) = (opening, end);

    public Keys Keys { get; } = new();

    /// <summary>Begins, and tells the port.</summary>
    /// <param name="wanted">The port; 0 for a free one.</param>
    /// <exception cref="CannotServeException">It is taken, or not allowed.</exception>
    public async Task<int> Listen(int wanted)
    {
        // Nothing of the surroundings configures it: no variable, no file, no arguments, and it says nothing.
        var builder = WebApplication.CreateEmptyBuilder(new WebApplicationOptions { ContentRootPath = AppContext.BaseDirectory });
        builder.WebHost.UseKestrelCore().ConfigureKestrel(k => Bounded(k, wanted));
        _app = builder.Build();
        var port = 0;
        Lead(_app, () => port);
        try
        {
            await _app.StartAsync(CancellationToken.None);
        }
        catch (IOException e) when (e.InnerException is AddressInUseException)
        {
            throw new CannotServeException($"port {wanted} of this machine is in use by another program; name another one, or leave out "
                + "--port for a free one");
        }
        catch (SocketException e) when (e.SocketErrorCode is SocketError.AccessDenied)
        {
            throw new CannotServeException($"port {wanted} may not be used by you; name one above 1023, or leave out "
                + "--port for a free one");
        }
        var address = _app.Services.GetRequiredService<IServer>().Features.Get<IServerAddressesFeature>()!.Addresses.Single();
        return port = new Uri(address).Port;
    }

    public async ValueTask DisposeAsync()
    {
        if (_app is null)
            return;
        using var patience = new CancellationTokenSource(LastWords);
        await _app.StopAsync(patience.Token);
        await _app.DisposeAsync();
        _turns.Dispose();
    }

    private void Lead(WebApplication app, Func<int> port)
    {
        app.Use(PlainPage.Defects(_end));
        app.Use(SafeHeaders.OnAll);
        app.Use(new OwnHost(port).Passes);
        app.Use(Methods.Passes);
        app.Use(OwnOrigin.Passes);
        app.Use(new Admission(Keys, port).Passes);
        app.Run(new Answers(_opening, _turns, _end).Answer);
    }

    private static void Bounded(KestrelServerOptions server, int port)
    {
        server.AddServerHeader = false;
        server.Listen(IPAddress.Loopback, port, listen => listen.Protocols = HttpProtocols.Http1);
        server.Limits.MaxRequestBodySize = Limits.BodyBytes;
        server.Limits.MaxConcurrentConnections = Limits.Connections;
        server.Limits.MaxRequestHeadersTotalSize = Limits.HeaderBytes;
        server.Limits.MaxRequestHeaderCount = Limits.Headers;
        server.Limits.MaxRequestLineSize = Limits.LineBytes;
        server.Limits.RequestHeadersTimeout = Limits.HeadersWithin;
        server.Limits.MinRequestBodyDataRate = new MinDataRate(Limits.BodyBytesASecond, Limits.BodyGrace);
    }
}
