using System.Diagnostics;
using FitCheck.Foundation.Files;
using Xunit;

namespace FitCheck.Tests.Hostile;

/// <summary>
/// An ordinary user on a bad day: a disk that is full, folders that may not be written or read, clocks that go backwards, notes that come
/// from elsewhere. Linux only. Whoever runs the tests as root is somebody else for these (`setpriv`, number 65534, of which common practice
/// makes `nobody`); where the program lies in root's own folder, nobody else can run it, and nothing is tried.
/// </summary>
public sealed class BadDayTests : IDisposable
{
    private const string Nobody = "setpriv --reuid=65534 --regid=65534 --clear-groups ";
    private const UnixFileMode All = (UnixFileMode)0x1FF, Readable = (UnixFileMode)0x1ED;

    private readonly TemporaryFolder _folder = new();
    private readonly string _program = Path.Combine(AppContext.BaseDirectory, "fitcheck.dll");
    private readonly bool _can;

    public BadDayTests()
    {
        _folder.Write("b.yaml", Catalog("builds/tansy-bare-tweeter.yaml"));
        _folder.Write("own/cups/mine.yaml", Catalog("cups/cup-45-tansy.yaml")
            .Replace("id: cup-45-tansy", "id: mine", StringComparison.Ordinal)
            .Replace("hole: 45 mm", "hole: 45mm", StringComparison.Ordinal));
        _folder.Write("cups.csv",
            "id;name;hole;pack;price;availability;provenance;source\nyours;A cup;45 mm;2;14.90 EUR;current;datasheet;Its sheet\n");
        Directory.CreateDirectory(_folder.Of("closed"));
        Directory.CreateDirectory(_folder.Of("mine"));
        if (!OperatingSystem.IsLinux())
            return;
        File.SetUnixFileMode(_folder.Path, Readable);
        File.SetUnixFileMode(_folder.Of("mine"), All);
        _can = Shell($"{AsNobody}test -r '{_program}'").Status == 0;
    }

    private static string AsNobody => Environment.UserName == "root" ? Nobody : "";

    public void Dispose()
    {
        if (OperatingSystem.IsLinux())
            File.SetUnixFileMode(_folder.Of("closed"), All);
        _folder.Dispose();
    }

    [Theory]
    [InlineData("check b.yaml --format json -o closed/r.json")]
    [InlineData("check b.yaml --sheet closed/s.html")]
    [InlineData("list b.yaml -o closed/l.csv")]
    [InlineData("suggest b.yaml --write closed/better.yaml")]
    [InlineData("chart --vehicle tansy-hatch -o closed/c.csv")]
    [InlineData("lint -o closed/lint.txt")]
    [InlineData("measure b.yaml --card closed/card.html")]
    [InlineData("new build -o closed/n.yaml")]
    [InlineData("new part cup -o closed/n.yaml")]
    [InlineData("new part cup --to closed/t.csv")]
    [InlineData("new part cup --from cups.csv -o closed")]
    [InlineData("new part cup --from cups.csv -o closed/cups.yaml")]
    public void A_folder_that_may_not_be_written_is_told(string command)
    {
        if (!_can || OperatingSystem.IsWindows())
            return;
        File.SetUnixFileMode(_folder.Of("closed"), Readable);
        var (status, error) = Run(command);
        Assert.Equal(2, status);
        Assert.Matches(@"fitcheck: closed/\S+ can't be written: no permission\n", error);
        Assert.Empty(Directory.GetFiles(_folder.Of("closed")));
    }

    [Fact]
    public void What_may_not_be_put_right_stays_as_it_is()
    {
        if (!_can || OperatingSystem.IsWindows())
            return;
        var file = _folder.Of("own/cups/mine.yaml");
        var before = File.ReadAllText(file);
        File.SetUnixFileMode(_folder.Of("own/cups"), Readable);
        var (status, error) = Run("lint --fix --catalog default --catalog own");
        Assert.Equal(2, status);
        Assert.Contains("own/cups/mine.yaml can't be written: no permission", error, StringComparison.Ordinal);
        Assert.Equal(before, File.ReadAllText(file));
        Assert.Single(Directory.GetFiles(_folder.Of("own/cups")));
    }

    [Theory]
    [InlineData("b.yaml", "check b.yaml", "b.yaml: error: the file can't be read")]
    [InlineData("b.yaml", "suggest b.yaml", "b.yaml: error: the file can't be read")]
    [InlineData("own/cups/mine.yaml", "lint --catalog default --catalog own >&2", "own/cups/mine.yaml: error: the file can't be read")]
    [InlineData("own/cups", "check b.yaml --catalog default --catalog own", "own/cups:1:1: error: the folder can't be read")]
    [InlineData("cups.csv", "new part cup --from cups.csv", "cups.csv: error: the file can't be read")]
    public void What_may_not_be_read_is_told(string closed, string command, string told)
    {
        if (!_can || OperatingSystem.IsWindows())
            return;
        var (path, before) = (_folder.Of(closed), File.GetUnixFileMode(_folder.Of(closed)));
        File.SetUnixFileMode(path, UnixFileMode.None);
        try
        {
            var (status, error) = Run(command);
            Assert.Contains(told, error, StringComparison.Ordinal);
            Assert.Equal(2, status);
        }
        finally
        {
            File.SetUnixFileMode(path, before);
        }
    }

    [Theory]
    [InlineData("closed/notes")]
    [InlineData("closed")]
    [InlineData("b.yaml")]
    [InlineData("/dev/null")]
    [InlineData("/proc/none")]
    public void Notes_that_can_not_be_kept_cost_time_alone(string notes)
    {
        if (!_can || OperatingSystem.IsWindows())
            return;
        File.SetUnixFileMode(_folder.Of("closed"), UnixFileMode.None);
        foreach (var (command, expected) in (ReadOnlySpan<(string, int)>)[("check b.yaml", 1), ("lint", 0)])
        {
            var (status, error) = Run(command, notes);
            Assert.Equal(expected, status);
            Assert.DoesNotContain("fitcheck:", error, StringComparison.Ordinal);
        }
    }

    // A disk of its own in memory, with a file on it that leaves no room; where the system lets nobody have one, nothing is tried.
    [Theory]
    [InlineData("check b.yaml --format json -o full/r.json", "full/r.json")]
    [InlineData("check b.yaml --sheet full/s.html", "full/s.html")]
    [InlineData("list b.yaml --format html -o full/l.html", "full/l.html")]
    [InlineData("suggest b.yaml --write full/better.yaml", "full/better.yaml")]
    [InlineData("measure b.yaml --card full/card.html", "full/card.html")]
    [InlineData("chart --vehicle tansy-hatch -o full/c.csv", "full/c.csv")]
    [InlineData("new build -o full/n.yaml", "full/n.yaml")]
    [InlineData("new part cup --to full/t.csv", "full/t.csv")]
    [InlineData("new part cup --from cups.csv -o full/", "full/yours.yaml")]
    [InlineData("lint --fix --catalog default --catalog full/own", "full/own/cups/mine.yaml")]
    public void A_disk_without_room_leaves_what_was_there(string command, string file)
    {
        if (!_can || Shell("unshare -rm mount -t tmpfs none closed").Status != 0)
            return;
        var (status, error) = Shell("unshare -rm bash -c '"
            + "mkdir full && mount -t tmpfs -o size=64k none full && cp -r own full && mkdir full/notes && "
            + "{ [ -e " + file + " ] || echo old > full/kept; } && { head -c 100k /dev/zero > full/fill; } 2> none; "
            + "ls -lR full | grep -v total > before; "
            + $"FITCHECK_CACHE=full/notes dotnet {_program} {command}; status=$?; "
            + "ls -lR full | grep -v total > after; diff before after >&2 || exit 9; exit $status'");
        Assert.Contains($"{file} can't be written: the disk refused it", error, StringComparison.Ordinal);
        Assert.Equal(2, status);
    }

    // 2100 is later than any clock that runs this.
    [Fact]
    public void Files_of_the_future_are_read_again_when_they_change()
    {
        string[] lint = ["lint", "--catalog", "default", "--catalog", "own"];
        var file = _folder.Of("own/cups/mine.yaml");
        var future = new DateTime(2100, 1, 1, 0, 0, 0, DateTimeKind.Utc);
        File.WriteAllText(file, File.ReadAllText(file).Replace("45mm", "45 mm", StringComparison.Ordinal));
        File.SetLastWriteTimeUtc(file, future);
        Assert.Equal(0, Cli.Run.Of(_folder.Path, lint).Status);
        foreach (var note in Directory.GetFiles(_folder.Of("cache")))
            File.SetLastWriteTimeUtc(note, future);
        Assert.Equal(0, Cli.Run.Of(_folder.Path, lint).Status);

        File.WriteAllText(file, File.ReadAllText(file).Replace("depth: 24 mm", "depth: 24 kg", StringComparison.Ordinal));
        File.SetLastWriteTimeUtc(file, future);
        Assert.Equal(2, Cli.Run.Of(_folder.Path, lint).Status);
        Assert.Equal(2, Cli.Run.Of(_folder.Path, "check", "b.yaml", "--catalog", "default", "--catalog", "own").Status);
    }

    // Three seconds after the change by the clock, as if nothing were wrong; and a clock that was set back a day since.
    [Fact]
    public void A_clock_that_was_set_back_lets_no_stamp_count()
    {
        const long Second = 1_000_000_000, Day = 86_400 * Second;
        var stamp = new FileStamp(1, 1, 20_000 * Day);
        Assert.True(stamp.IsSettled((20_000 * Day) + (3 * Second)));
        Assert.False(stamp.IsSettled(19_999 * Day));
        Assert.False(stamp.IsSettled(20_000 * Day));
    }

    [Fact]
    public void Notes_of_another_machine_or_version_are_not_believed()
    {
        string[] lint = ["lint", "--catalog", "catalog"];
        foreach (var entry in (string[])["cups/cup-45-tansy.yaml", "sundries/foam-tape-3x12.yaml", "sundries/ring-100-20.yaml"])
            _folder.Write("here/catalog/" + entry, Catalog(entry));
        var first = Cli.Run.Of(_folder.Of("here"), lint);
        Assert.NotEmpty(Directory.GetFiles(_folder.Of("here/cache")));

        // Copied with its times to where other files are, one of which differs.
        Assert.Equal(0, Shell("cp -a here there").Status);
        var changed = _folder.Of("there/catalog/sundries/ring-100-20.yaml");
        var time = File.GetLastWriteTimeUtc(changed);
        File.WriteAllText(changed, File.ReadAllText(changed).Replace("price: ", "prize: ", StringComparison.Ordinal));
        File.SetLastWriteTimeUtc(changed, time);
        var (status, output, _) = Cli.Run.Of(_folder.Of("there"), lint);
        Assert.Equal(2, status);
        Assert.Contains("prize", output, StringComparison.Ordinal);

        // Of another version: what each begins with is not what this one writes.
        foreach (var note in Directory.GetFiles(_folder.Of("here/cache")))
        {
            var bytes = File.ReadAllBytes(note);
            for (var i = 0; i < Math.Min(64, bytes.Length); i++)
                bytes[i] ^= 0x15;
            File.WriteAllBytes(note, bytes);
        }
        Assert.Equal(first, Cli.Run.Of(_folder.Of("here"), lint));
    }

    private static string Catalog(string file) => File.ReadAllText(RepositoryRoot.Of("catalog", file));

    private (int Status, string Error) Run(string command, string notes = "mine/notes") =>
        Shell($"FITCHECK_CACHE={notes} {AsNobody}dotnet '{_program}' {command}");

    private (int Status, string Error) Shell(string line)
    {
        var start = new ProcessStartInfo("timeout", ["120", "bash", "-c", line])
        {
            WorkingDirectory = _folder.Path,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
            UseShellExecute = false,
        };
        // The runtime's own files would want room too.
        start.Environment["DOTNET_EnableDiagnostics"] = "0";
        using var process = Process.Start(start)!;
        var error = process.StandardError.ReadToEndAsync();
        process.StandardOutput.ReadToEnd();
        process.WaitForExit();
        return (process.ExitCode, error.Result);
    }
}
