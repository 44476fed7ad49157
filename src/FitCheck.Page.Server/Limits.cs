using FitCheck.Foundation.Files;

namespace FitCheck.Page.Server;

/// <summary>What a request may ask of the machine. A person at a page comes nowhere near any of them.</summary>
internal static class Limits
{
    /// <summary>A build, what it was before, and a till's export.</summary>
    public const int BodyBytes = 8 << 20;

    /// <summary>As large as the largest text that FitCheck reads.</summary>
    public const int FileBytes = SourceText.MaxBytes;

    public const int Fields = 1000, Files = 16, FieldNameBytes = 200;

    public const int Connections = 300, Headers = 60, HeaderBytes = 32 << 10, LineBytes = 4 << 10;

    /// <summary>Requests that wait for their turn; the next one is sent away until later.</summary>
    public const int Waiting = 128;

    /// <summary>Searches for a way out at once, beside which all else goes on.</summary>
    public const int Searches = 2;

    /// <summary>Requests whose progress is kept.</summary>
    public const int Jobs = 64;

    public static readonly TimeSpan HeadersWithin = TimeSpan.FromSeconds(10);

    public const double BodyBytesASecond = 500;

    public static readonly TimeSpan BodyGrace = TimeSpan.FromSeconds(5);

    /// <summary>After it a request is given up.</summary>
    public static readonly TimeSpan Answer = TimeSpan.FromSeconds(90);
}
