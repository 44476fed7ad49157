using System.Buffers.Text;
using System.Globalization;
using System.Security.Cryptography;
using System.Text;

namespace FitCheck.Page.Server;

/// <summary>
/// What lets its owner in and keeps other users of the machine out. The printed address is kept by its owner and holds as long as the page
/// does. The address that a browser is started with can be read in the list of processes, so it holds once, and not for long. Either is
/// traded for a cookie.
/// </summary>
internal sealed class Keys
{
    private const int Bytes = 32;
    private static readonly TimeSpan TicketHolds = TimeSpan.FromMinutes(2);

    private readonly Lock _taking = new();
    private (string Word, long Until)? _ticket;

    /// <summary>256 random bits of the printed address, as letters.</summary>
    public string Token { get; } = Word();

    /// <summary>What the cookie holds: another word, so that who sees it knows no address.</summary>
    public string Cookie { get; } = Word();

    /// <summary>A word that lets in once.</summary>
    public string Ticket()
    {
        var word = Word();
        lock (_taking)
            _ticket = (word, Environment.TickCount64 + (long)TicketHolds.TotalMilliseconds);
        return word;
    }

    /// <summary>True for the token, and once for the ticket.</summary>
    public bool LetsIn(string word)
    {
        if (Same(word, Token))
            return true;
        lock (_taking)
        {
            if (_ticket is not { } ticket || !Same(word, ticket.Word))
                return false;
            _ticket = null;
            return Environment.TickCount64 <= ticket.Until;
        }
    }

    /// <summary>True for what the cookie of this page holds.</summary>
    public bool IsCookie(string word) => Same(word, Cookie);

    /// <summary>The page's address with a word that lets in.</summary>
    public static string Address(int port, string word) =>
        string.Create(CultureInfo.InvariantCulture, $"http://127.0.0.1:{port}/?token={word}");

    // As long for a wrong word as for the right one: what is compared are digests, of one length.
    private static bool Same(string given, string right) => CryptographicOperations.FixedTimeEquals(
        SHA256.HashData(Encoding.UTF8.GetBytes(given)), SHA256.HashData(Encoding.UTF8.GetBytes(right)));

    private static string Word() => Base64Url.EncodeToString(RandomNumberGenerator.GetBytes(Bytes));
}
