using System.ComponentModel;
using System.Diagnostics;

namespace FitCheck.Page.Server;

/// <summary>Opens an address in the browser that the user has chosen. Where there is none the printed address has to do.</summary>
internal static class Browser
{
    public static void Open(string address)
    {
        try
        {
            using var started = Process.Start(OperatingSystem.IsWindows() ? new ProcessStartInfo(address) { UseShellExecute = true }
                : new ProcessStartInfo(OperatingSystem.IsMacOS() ? "open" : "xdg-open", [address])
                {
                    UseShellExecute = false,
                    // What a browser has to say of itself is nothing for this terminal.
                    RedirectStandardOutput = true,
                    RedirectStandardError = true,
                    RedirectStandardInput = true,
                });
        }
        catch (Exception e) when (e is Win32Exception or InvalidOperationException or PlatformNotSupportedException)
        {
            // No browser, or nothing that opens one.
        }
    }
}
