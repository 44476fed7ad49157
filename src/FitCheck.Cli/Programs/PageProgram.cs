using System.Globalization;
using System.Runtime.InteropServices;

namespace FitCheck.Cli.Programs;

/// <summary>The page's web server, which lies beside the program and runs on ASP.NET Core; nothing else does.</summary>
internal static class PageProgram
{
    private const string Framework = "Microsoft.AspNetCore.App";

    // `shared/Microsoft.NETCore.App/10.0.1/` of the folder in which `dotnet` lies.
    private static readonly string Runtime = Path.TrimEndingDirectorySeparator(RuntimeEnvironment.GetRuntimeDirectory());
    private static readonly string Shared = Path.GetFullPath(Path.Combine(Runtime, "..", ".."));

    /// <summary>What has to be installed first; null where all is there.</summary>
    public static string? Missing()
    {
        var version = Environment.Version;
        var folder = Path.Combine(Shared, Framework);
        return Directory.Exists(folder) && Directory.EnumerateDirectories(folder).Select(d => Path.GetFileName(d).Split('-')[0])
                .Any(n => Version.TryParse(n, out var there) && there.Major == version.Major)
            ? null
            : string.Create(CultureInfo.InvariantCulture, $"`fitcheck page` needs the ASP.NET Core {version.Major} runtime, and no "
                + $"other command does; install it (on Debian and Ubuntu `aspnetcore-runtime-{version.Major}.0`), "
                + $"or the .NET {version.Major} SDK");
    }

    /// <summary>
    /// Runs it in the place of this process, or where that can't be as a child that ends with it; returns its exit status.
    /// </summary>
    public static int Run(string[] words)
    {
        var host = Path.GetFullPath(Path.Combine(Shared, "..", OperatingSystem.IsWindows() ? "dotnet.exe" : "dotnet"));
        if (!File.Exists(host) && Environment.GetEnvironmentVariable("DOTNET_HOST_PATH") is { Length: > 0 } named)
            host = named;
        return WholeProgram.Instead(host, ["exec", Path.Combine(AppContext.BaseDirectory, "fitcheck-page.dll"), .. words],
            ["--parent", Environment.ProcessId.ToString(CultureInfo.InvariantCulture)]);
    }
}
