using System.Diagnostics;
using Xunit;

namespace FitCheck.Browser.Page;

/// <summary>The page as plain files, published as README says, once for all tests, and served under a path of a web space.</summary>
public sealed class StaticSite : IAsyncLifetime, IDisposable
{
    private static readonly Lazy<Task<string>> Published = new(PublishAsync);
    private WebSpace? _space;

    /// <summary>The folder with the files.</summary>
    public string Folder { get; private set; } = "";

    public WebSpace Space => _space!;

    public async Task InitializeAsync()
    {
        Folder = await Published.Value;
        _space = new WebSpace(Folder, "/club/fit/");
    }

    public Task DisposeAsync() => Task.CompletedTask;

    public void Dispose() => _space?.Dispose();

    public static string Root()
    {
        var folder = new DirectoryInfo(AppContext.BaseDirectory);
        while (!System.IO.File.Exists(Path.Combine(folder.FullName, "FitCheck.sln")))
            folder = folder.Parent ?? throw new InvalidOperationException("The tests must run from inside the repository.");
        return folder.FullName;
    }

    /// <summary>A file of the repository.</summary>
    public static string File(params string[] path) => Path.Combine([Root(), .. path]);

    /// <summary>What a program says and how it ends.</summary>
    public static async Task<(int Status, string Said)> RunAsync(string program, params string[] arguments)
    {
        var start = new ProcessStartInfo(program, arguments)
        {
            RedirectStandardOutput = true,
            RedirectStandardError = true,
            UseShellExecute = false,
            WorkingDirectory = Root(),
        };
        using var process = Process.Start(start)!;
        var error = process.StandardError.ReadToEndAsync();
        var said = await process.StandardOutput.ReadToEndAsync() + await error;
        await process.WaitForExitAsync();
        return (process.ExitCode, said);
    }

    // Not in a folder of the machine's own: the files stay to be looked at until the next build.
    private static async Task<string> PublishAsync()
    {
        var folder = Path.Combine(AppContext.BaseDirectory, "static-page");
        if (Directory.Exists(folder))
            Directory.Delete(folder, recursive: true);
        var (status, said) = await RunAsync("dotnet", "publish", "src/FitCheck.Page.Static", "-c", "Release", "-o", folder,
            "--disable-build-servers", "--nologo");
        Assert.True(status == 0,
            "`dotnet publish src/FitCheck.Page.Static -c Release` failed. It needs the packages of browser-wasm, which it fetches as any "
            + $"restore does. It said:\n{said}");
        return folder;
    }
}
