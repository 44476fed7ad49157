using System.Diagnostics;
using System.Globalization;

namespace FitCheck.Foundation.Files;

/// <summary>
/// Names of what a process makes for a while. They say which process, so that what one left that was killed outright is known for that and
/// taken away by the next.
/// </summary>
internal static class PassingName
{
    // Another machine, or a container that counts processes by itself, has other processes of the same numbers.
    private static readonly Lazy<string> Counted = new(() => Digest(
        Environment.MachineName + '\n' + (OperatingSystem.IsLinux() ? new FileInfo("/proc/self/ns/pid").LinkTarget : "")));

    /// <summary>What comes before something of chance.</summary>
    public static string Of(string prefix) =>
        string.Create(CultureInfo.InvariantCulture, $"{prefix}{Counted.Value}-{Environment.ProcessId}-");

    /// <summary>True for a name that a process of this machine gave that is no more.</summary>
    public static bool IsLeft(string name, string prefix)
    {
        if (!name.StartsWith(prefix, StringComparison.Ordinal) || name[prefix.Length..].Split('-') is not [var counted, var number, _]
            || counted != Counted.Value || !int.TryParse(number, NumberStyles.None, CultureInfo.InvariantCulture, out var process))
            return false;
        try
        {
            using var there = Process.GetProcessById(process);
            return false;
        }
        catch (Exception e) when (e is ArgumentException or InvalidOperationException)
        {
            return true;
        }
    }

    // FNV-1a, 32 bits: enough to tell a few machines apart.
    private static string Digest(string text) => text.Aggregate(2_166_136_261u, (hash, c) => unchecked((hash ^ c) * 16_777_619u))
        .ToString("x8", CultureInfo.InvariantCulture);
}
