using System.Globalization;
using System.Net.Sockets;
using System.Text;

namespace FitCheck.Tests.Page.Server;

/// <summary>What came back for bytes that were sent as they are, as no browser and no library would send them.</summary>
internal sealed record RawAnswer(int Status, IReadOnlyList<KeyValuePair<string, string>> Headers, string Body)
{
    public string? this[string name] =>
        Headers.FirstOrDefault(h => h.Key.Equals(name, StringComparison.OrdinalIgnoreCase)) is { Key: not null } header
            ? header.Value : null;

    /// <summary>Sends a request, and reads until the server closes.</summary>
    public static async Task<RawAnswer> To(int port, byte[] request)
    {
        using var client = new TcpClient();
        using var patience = new CancellationTokenSource(TimeSpan.FromSeconds(60));
        await client.ConnectAsync("127.0.0.1", port, patience.Token);
        var stream = client.GetStream();
        try
        {
            await stream.WriteAsync(request, patience.Token);
        }
        catch (IOException)
        {
            // It has answered before it has read all.
        }
        using var all = new MemoryStream();
        try
        {
            await stream.CopyToAsync(all, patience.Token);
        }
        catch (IOException) when (all.Length > 0)
        {
            // The same.
        }
        return Of(Encoding.UTF8.GetString(all.ToArray()));
    }

    private static RawAnswer Of(string text)
    {
        var head = text.IndexOf("\r\n\r\n", StringComparison.Ordinal);
        var lines = text[..head].Split("\r\n");
        return new RawAnswer(int.Parse(lines[0].Split(' ')[1], CultureInfo.InvariantCulture),
            [.. lines[1..].Select(l => KeyValuePair.Create(l[..l.IndexOf(':')], l[(l.IndexOf(':') + 1)..].Trim()))], text[(head + 4)..]);
    }
}
