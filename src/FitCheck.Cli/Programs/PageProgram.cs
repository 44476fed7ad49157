using System.Globalization;
using System.Runtime.InteropServices;
using FitCheck.Foundation;

namespace FitCheck.Cli.Programs;

/// <summary>The page's web server, which lies beside the program and runs on ASP.NET Core; nothing else does.</summary>
internal static class PageProgram
{
    private const string Framework = "Microsoft.AspNetCore.App";

    // Where `dotnet` lies with its frameworks: that of this program's runtime, or where it is installed, by the names and the places of
    // .NET's own rules. It has none on Windows.
    private static readonly IReadOnlyList<string?> Homes = QuickProgram.IsThis
        ? [Environment.GetEnvironmentVariable("DOTNET_ROOT"), Told("/etc/dotnet/install_location"), "/usr/lib/dotnet", "/usr/share/dotnet"]
        : [Path.GetFullPath(Path.Combine(Path.TrimEndingDirectorySeparator(RuntimeEnvironment.GetRuntimeDirectory()), "..", "..", ".."))];

    /// <summary>True where it can be run.</summary>
    public static bool IsThere => Homes.Any(Has);

    /// <summary>What has to be installed first; null where all is there.</summary>
    public static string? Missing() => IsThere ? null : string.Create(CultureInfo.InvariantCulture,
        $"`fitcheck page` needs the ASP.NET Core {Environment.Version.Major} runtime, and no other command does; install it (on Debian and "
            + $"Ubuntu `aspnetcore-runtime-{Environment.Version.Major}.0`), or the .NET {Environment.Version.Major} SDK");

    /// <summary>
    /// Runs it in the place of this process, or where that can't be as a child that ends with it; returns its exit status.
    /// </summary>
    public static int Run(string[] words)
    {
        var host = Path.Combine(Homes.First(Has)!, OperatingSystem.IsWindows() ? "dotnet.exe" : "dotnet");
        if (!File.Exists(host) && Environment.GetEnvironmentVariable("DOTNET_HOST_PATH") is { Length: > 0 } named)
            host = named;
        return WholeProgram.Instead(host, ["exec", Path.Combine(AppContext.BaseDirectory, "fitcheck-page.dll"), .. words],
            ["--parent", Environment.ProcessId.ToString(CultureInfo.InvariantCulture)]);
    }

    private static bool Has(string? home)
    {
        if (string.IsNullOrEmpty(home))
            return false;
        var folder = Path.Combine(home, "shared", Framework);
        return Directory.Exists(folder) && Directory.EnumerateDirectories(folder).Select(d => Path.GetFileName(d).Split('-')[0])
            .Any(n => Version.TryParse(n, out var there) && there.Major == Environment.Version.Major);
    }

    private static string? Told(string file)
    {
        try
        {
            return File.ReadLines(file).FirstOrDefault()?.Trim();
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            return null;
        }
    }
}
