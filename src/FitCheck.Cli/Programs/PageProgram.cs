using System.Globalization;
using System.Runtime.InteropServices;
using FitCheck.Foundation;

namespace FitCheck.Cli.Programs;

/// <summary>The page's web server, which lies beside the program and runs on ASP.NET Core; nothing else does.</summary>
internal static class PageProgram
{
    private const string Framework = "Microsoft.AspNetCore.App";

    // Where `dotnet` lies with the frameworks that are asked for; null where it does not.
    private static readonly string? Home = Homes().FirstOrDefault(Has);

    /// <summary>True where it can be run.</summary>
    public static bool IsThere => Home is not null;

    /// <summary>What has to be installed first; null where all is there.</summary>
    public static string? Missing() => IsThere ? null : string.Create(CultureInfo.InvariantCulture,
        $"`fitcheck page` needs the ASP.NET Core {Environment.Version.Major} runtime, and no other command does; install it (on Debian and "
            + $"Ubuntu `aspnetcore-runtime-{Environment.Version.Major}.0`), or the .NET {Environment.Version.Major} SDK");

    /// <summary>
    /// Runs it in the place of this process, or where that can't be as a child that ends with it; returns its exit status.
    /// </summary>
    public static int Run(string[] words)
    {
        var host = Path.Combine(Home!, OperatingSystem.IsWindows() ? "dotnet.exe" : "dotnet");
        if (!File.Exists(host) && Environment.GetEnvironmentVariable("DOTNET_HOST_PATH") is { Length: > 0 } named)
            host = named;
        return WholeProgram.Instead(host, ["exec", Path.Combine(AppContext.BaseDirectory, "fitcheck-page.dll"), .. words],
            ["--parent", Environment.ProcessId.ToString(CultureInfo.InvariantCulture)]);
    }

    // That of the runtime that this runs on. The quick program (there is none on Windows) has none, and looks where .NET's own rules say.
    private static IEnumerable<string> Homes() => !QuickProgram.IsThis
        ? [Path.GetFullPath(Path.Combine(Path.TrimEndingDirectorySeparator(RuntimeEnvironment.GetRuntimeDirectory()), "..", "..", ".."))]
        : new[] { Environment.GetEnvironmentVariable("DOTNET_ROOT"), Told("/etc/dotnet/install_location"), "/usr/lib/dotnet",
            "/usr/share/dotnet" }.OfType<string>().Where(home => home.Length > 0);

    private static bool Has(string home)
    {
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
