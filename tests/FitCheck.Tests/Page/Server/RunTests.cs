using System.Diagnostics;
using System.Globalization;
using System.Net.Sockets;
using FitCheck.Tests.Cli;
using Xunit;

namespace FitCheck.Tests.Page.Server;

/// <summary>How the page begins, what keeps it from it, what happens while it runs, and how it ends.</summary>
public sealed class RunTests
{
    private const string Driver = "catalog/drivers/orrin-c165.yaml";
    private const string Build = "kind: build\nname: a\nvehicle: tansy-hatch\nfit:\n  - {at: [front-door-left], driver: mine-165}\n";

    private static readonly string Form = "text=" + Uri.EscapeDataString(Build);

    [Theory]
    [InlineData("INT")]
    [InlineData("TERM")]
    [InlineData("HUP")]
    public async Task It_ends_when_it_is_ended_also_while_a_browser_is_connected(string signal)
    {
        if (!OperatingSystem.IsLinux())
            return;
        using var page = new RunningPage();
        using var idle = new TcpClient("127.0.0.1", page.Port);
        var watch = Stopwatch.StartNew();
        Assert.Equal(0, page.Ended(signal));
        Assert.True(watch.Elapsed < TimeSpan.FromSeconds(3), $"{watch.Elapsed}");
        // One process, from the command on: nothing is left behind that listens.
        Assert.Throws<SocketException>(() => new TcpClient("127.0.0.1", page.Port));
        Assert.Equal("The page is at this address, for whoever has it whole. Ctrl-C ends it.\n", await page.Error);
    }

    [Fact]
    public void A_port_in_use_is_told_in_one_line()
    {
        using var page = new RunningPage();
        using var folder = new TemporaryFolder();
        var (status, output, error) = Run.InTime(folder.Path, "page", "--port", page.Port.ToString(CultureInfo.InvariantCulture));
        Assert.Equal((2, "",
            $"fitcheck: port {page.Port} of this machine is in use by another program; name another one, or leave out --port "
            + "for a free one\n"), (status, output, error));
    }

    [Theory]
    [InlineData("0")]
    [InlineData("65536")]
    [InlineData("-1")]
    [InlineData("http")]
    public void A_port_that_is_none_is_wrong_usage(string port)
    {
        using var folder = new TemporaryFolder();
        var (status, _, error) = Run.InTime(folder.Path, "page", $"--port={port}");
        Assert.Equal(3, status);
        Assert.StartsWith($"fitcheck: `--port` takes a number from 1 to 65535, not `{port}`\n", error, StringComparison.Ordinal);
    }

    [Fact]
    public void What_can_not_be_opened_is_told_with_its_place_all_at_once()
    {
        using var folder = new TemporaryFolder();
        folder.Write("mine/drivers/bad.yaml", "kind: driver\nid: bad\nnmae: Bad\n");
        var (status, output, error) = Run.InTime(folder.Path, "page", "gone.yaml", "--catalog", "default", "--catalog", "mine");
        Assert.Equal((2, ""), (status, output));
        Assert.Contains("gone.yaml: error: the file can't be read\n", error, StringComparison.Ordinal);
        Assert.Contains("mine/drivers/bad.yaml:3:1: error: unknown key `nmae`", error, StringComparison.Ordinal);
        Assert.EndsWith("fitcheck: there is no page before this is mended\n", error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task It_begins_with_a_build_and_leaves_the_file_alone()
    {
        const string text = "kind: build\nname: A build of mine\nvehicle: tansy-hatch\nfit: []\n";
        var file = "";
        using var page = new RunningPage(folder => [file = folder.Write("mine.yaml", text)]);
        var before = File.GetLastWriteTimeUtc(file);
        Assert.Contains("name: A build of mine", (await page.Get("/")).Body, StringComparison.Ordinal);
        await page.Post("/", "text=kind%3A+build&do=new");
        Assert.Equal((text, before), (await File.ReadAllTextAsync(file), File.GetLastWriteTimeUtc(file)));
        Assert.Equal(["cache", "mine.yaml"], Directory.GetFileSystemEntries(Path.GetDirectoryName(file)!).Select(Path.GetFileName).Order());
    }

    [Fact]
    public async Task A_broken_catalog_is_told_and_the_last_good_one_stays_open()
    {
        TemporaryFolder? folder = null;
        using var page = new RunningPage(f =>
        {
            (folder = f).Write("mine/drivers/mine-165.yaml", Named("Mine 165 of the shop"));
            return ["--catalog", "default", "--catalog", "mine"];
        });
        Assert.Contains("Mine 165 of the shop", (await page.Post("/", Form)).Body, StringComparison.Ordinal);

        folder!.Write("mine/drivers/mine-165.yaml", Named("Broken 165").Replace("\nshape:", "\nshap:", StringComparison.Ordinal));
        var told = await Until(page, "stays open");
        Assert.Contains("unknown key `shap`", told.Replace("<code>", "`").Replace("</code>", "`"), StringComparison.Ordinal);
        Assert.Contains("Mine 165 of the shop", told, StringComparison.Ordinal);

        folder.Write("mine/drivers/mine-165.yaml", Named("Mended 165 of the shop"));
        Assert.DoesNotContain("stays open", await Until(page, "Mended 165 of the shop"), StringComparison.Ordinal);
    }

    // Such as a checkout that puts another folder there: whoever watches the old one hears nothing more.
    [Fact]
    public async Task A_folder_that_is_replaced_is_noticed_by_and_by()
    {
        TemporaryFolder? folder = null;
        using var page = new RunningPage(f =>
        {
            (folder = f).Write("mine/drivers/mine-165.yaml", Named("Mine 165 of the shop"));
            folder.Write("other/drivers/mine-165.yaml", Named("Another 165 of the shop"));
            return ["--catalog", "default", "--catalog", "mine"];
        });
        Directory.Move(folder!.Of("mine"), folder.Of("old"));
        Directory.Move(folder.Of("other"), folder.Of("mine"));
        await Until(page, "Another 165 of the shop");
    }

    // Only Kestrel's own variables would make it listen to the whole network.
    [Fact]
    public void It_listens_on_this_machine_alone_whatever_the_surroundings_say()
    {
        if (!OperatingSystem.IsLinux())
            return;
        using var page = new RunningPage(_ => [], ("ASPNETCORE_URLS", "http://0.0.0.0:0"), ("URLS", "http://0.0.0.0:0"),
            ("ASPNETCORE_HTTP_PORTS", "0"), ("Kestrel__Endpoints__Http__Url", "http://0.0.0.0:0"));
        var sockets = Directory.GetFiles($"/proc/{page.Process.Id}/fd").Select(f => File.ResolveLinkTarget(f, false)?.Name ?? "")
            .Where(t => t.StartsWith("socket:[", StringComparison.Ordinal)).Select(t => t[8..^1]).ToHashSet();
        // proc(5), /proc/net/tcp: local address in hexadecimal, state 0A is LISTEN, the tenth column the inode.
        var listening = new[] { "/proc/net/tcp", "/proc/net/tcp6" }.Where(File.Exists).SelectMany(File.ReadAllLines)
            .Select(l => l.Split(' ', StringSplitOptions.RemoveEmptyEntries))
            .Where(w => w.Length > 9 && w[3] == "0A" && sockets.Contains(w[9]))
            .Select(w => w[1]);
        Assert.Equal([string.Create(CultureInfo.InvariantCulture, $"0100007F:{page.Port:X4}")], listening);
    }

    [Fact]
    public void An_address_that_can_not_be_printed_is_told()
    {
        if (!OperatingSystem.IsLinux())
            return;
        using var folder = new TemporaryFolder();
        var program = Path.Combine(AppContext.BaseDirectory, "fitcheck.dll");
        var (status, _, error) = Shell.Of(folder.Path, $"timeout 30 dotnet '{program}' page > /dev/full");
        Assert.Equal((2, "fitcheck: standard output can't be written: the disk refused it\n"), (status, error));
    }

    [Fact]
    public void Without_the_web_servers_runtime_it_says_what_to_install()
    {
        if (!OperatingSystem.IsLinux())
            return;
        using var folder = new TemporaryFolder();
        var (status, output, error) = Shell.Of(folder.Path, $"""
            from=$(dirname "$(readlink -f "$(command -v dotnet)")")
            mkdir -p few/shared && cp "$from/dotnet" few/ && cp -r "$from/host" few/
            cp -r "$from/shared/Microsoft.NETCore.App" few/shared/
            few/dotnet '{Path.Combine(AppContext.BaseDirectory, "fitcheck.dll")}' page
            """);
        Assert.Equal((2, ""), (status, output));
        Assert.Matches(@"^fitcheck: `fitcheck page` needs the ASP\.NET Core 10 runtime, [^\n]*`aspnetcore-runtime-10\.0`[^\n]*\n$", error);
        Assert.DoesNotContain("AspNetCore", File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "fitcheck.runtimeconfig.json")),
            StringComparison.Ordinal);
    }

    // script(1) gives it a terminal, by whatever shell is set: some would stay beside what they run, and die of its Ctrl-C.
    // What the browser is started with holds once, and not what was printed.
    [Fact]
    public async Task On_a_terminal_a_browser_is_opened_with_an_address_that_holds_once()
    {
        if (!OperatingSystem.IsLinux())
            return;
        using var folder = new TemporaryFolder();
        var opener = folder.Write("bin/xdg-open", "#!/bin/sh\necho \"$1\" > opened.part && mv opened.part opened\n");
        File.SetUnixFileMode(opener, UnixFileMode.UserRead | UnixFileMode.UserExecute);
        var start = new ProcessStartInfo("script",
            ["-qefc", $"exec dotnet '{Path.Combine(AppContext.BaseDirectory, "fitcheck.dll")}' page", "/dev/null"])
        {
            WorkingDirectory = folder.Path,
            RedirectStandardInput = true,
            RedirectStandardOutput = true,
            UseShellExecute = false,
        };
        start.Environment["PATH"] = folder.Of("bin") + ":" + Environment.GetEnvironmentVariable("PATH");
        start.Environment["FITCHECK_CACHE"] = folder.Of("cache");
        using var process = Process.Start(start)!;
        try
        {
            var printed = "";
            while (!printed.Contains("?token=", StringComparison.Ordinal))
                printed = await process.StandardOutput.ReadLineAsync().WaitAsync(TimeSpan.FromSeconds(60))
                    ?? throw new IOException("no address");
            var watch = Stopwatch.StartNew();
            while (!File.Exists(folder.Of("opened")) && watch.Elapsed < TimeSpan.FromSeconds(30))
                await Task.Delay(20);
            var opened = new Uri((await File.ReadAllTextAsync(folder.Of("opened"))).Trim());
            Assert.DoesNotContain(opened.Query[7..], printed, StringComparison.Ordinal);
            var request = System.Text.Encoding.UTF8.GetBytes(
                $"GET {opened.PathAndQuery} HTTP/1.1\r\nHost: {opened.Authority}\r\nConnection: close\r\n\r\n");
            Assert.Equal(303, (await RawAnswer.To(opened.Port, request)).Status);
            Assert.Equal(403, (await RawAnswer.To(opened.Port, request)).Status);
            // Ctrl-C, as a terminal sends it.
            await process.StandardInput.WriteAsync('\u0003');
            await process.StandardInput.FlushAsync();
            Assert.True(process.WaitForExit(TimeSpan.FromSeconds(5)), "it goes on");
            Assert.Equal(0, process.ExitCode);
        }
        finally
        {
            if (!process.HasExited)
                process.Kill(entireProcessTree: true);
        }
    }

    private static string Named(string name) => string.Join('\n', File.ReadAllLines(RepositoryRoot.Of(Driver)).Select(l =>
        l.StartsWith("id:", StringComparison.Ordinal) ? "id: mine-165" : l.StartsWith("name:", StringComparison.Ordinal)
            ? $"name: {name}" : l)) + "\n";

    private static async Task<string> Until(RunningPage page, string words)
    {
        var watch = Stopwatch.StartNew();
        while (true)
        {
            var body = (await page.Post("/", Form)).Body;
            if (body.Contains(words, StringComparison.Ordinal))
                return body;
            Assert.True(watch.Elapsed < TimeSpan.FromSeconds(20), $"nothing says `{words}`");
            await Task.Delay(100);
        }
    }
}
