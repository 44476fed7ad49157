using System.Diagnostics;
using Xunit;

namespace FitCheck.Tests.Cli;

/// <summary>
/// A catalog, rules and builds as a stranger may send them: links that lead elsewhere or round in a circle, pipes, devices, endless files.
/// Each is told with its place and none is read; every run ends by itself. Linux only: the links and pipes are made there.
/// </summary>
public sealed class HostileFolderTests : IDisposable
{
    private const string Cup = "cup-45-tansy.yaml";
    private const string Secret = "hunter2";
    private const string LeadsOut = "the link leads out of the folder";
    private const string NotPlain = "this is no plain file, so it is not read";

    private readonly TemporaryFolder _folder = new();

    public HostileFolderTests()
    {
        _folder.Write($"c/cups/{Cup}", Entry($"cups/{Cup}"));
        _folder.Write("r/tweeter/full-range-feed.yaml", File.ReadAllText(RepositoryRoot.Of("rules", "tweeter", "full-range-feed.yaml")));
        _folder.Write("mine.yaml", Entry("builds/tansy-quote.yaml"));
        _folder.Write("outside/secret.yaml", $"password: {Secret}\n");
    }

    public void Dispose() => _folder.Dispose();

    [Theory]
    [InlineData(".", "the link leads to a folder that is read already; links must not lead round in a circle")]
    [InlineData("..", "the link leads to a folder that is read already; links must not lead round in a circle")]
    [InlineData("../../outside", LeadsOut)]
    [InlineData("/", LeadsOut)]
    public void A_link_to_a_folder_is_told_and_not_followed(string target, string told)
    {
        if (!OperatingSystem.IsLinux())
            return;
        // Below the kind's folder, so that `..` is that folder itself.
        Link("c/cups/more/x", target == ".." ? ".." : target == "." ? "." : target.StartsWith('/') ? target : "../" + target);
        Link("r/tweeter/x", target);
        _folder.Write("c/cups/more/other.yaml", Entry($"cups/{Cup}").Replace("id: cup-45-tansy", "id: other", StringComparison.Ordinal));

        AssertTold($"c/cups/more/x:1:1: error: {told}", "lint", "--catalog", "c", "--rules", "r");
        AssertTold($"c/cups/more/x:1:1: error: {told}", "check", "mine.yaml", "--catalog", "default", "--catalog", "c");
        if (target != "..")
            AssertTold($"r/tweeter/x:1:1: error: {told}", "lint", "--catalog", "c", "--rules", "r");
        Assert.DoesNotContain(Secret, Both(Run.InTime(_folder.Path, "lint", "--catalog", "c", "--rules", "r")), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("c/cups/z.yaml", "../../outside/secret.yaml", LeadsOut)]
    [InlineData("c/builds/z.yaml", "../../outside/secret.yaml", LeadsOut)]
    [InlineData("r/tweeter/z.yaml", "../../outside/secret.yaml", LeadsOut)]
    [InlineData("c/cups/z.yaml", "/dev/zero", LeadsOut)]
    [InlineData("c/builds/z.yaml", "/dev/zero", LeadsOut)]
    [InlineData("r/tweeter/z.yaml", "/dev/zero", LeadsOut)]
    [InlineData("c/cups/z.yaml", "nothing.yaml", "the link leads to nothing")]
    [InlineData("c/cups/z.yaml", "z.yaml", "the link leads round in a circle")]
    public void A_link_to_a_file_is_told_and_what_it_leads_to_is_not(string link, string target, string told)
    {
        if (!OperatingSystem.IsLinux())
            return;
        Link(link, target);
        var said = AssertTold($"{link}:1:1: error: {told}", "lint", "--catalog", "c", "--rules", "r");
        Assert.DoesNotContain(Secret, said, StringComparison.Ordinal);
        Assert.DoesNotContain("password", said, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("check", "mine.yaml")]
    [InlineData("list", "mine.yaml")]
    [InlineData("suggest", "mine.yaml")]
    [InlineData("chart")]
    public void Every_command_refuses_endless_input_in_the_catalog(params string[] command)
    {
        if (!OperatingSystem.IsLinux())
            return;
        Link("c/cups/z.yaml", "/dev/zero");
        Pipe("c/cups/p.yaml");
        AssertTold($"c/cups/z.yaml:1:1: error: {LeadsOut}", [.. command, "--catalog", "default", "--catalog", "c"]);
        AssertTold($"c/cups/p.yaml:1:1: error: {NotPlain}", [.. command, "--catalog", "default", "--catalog", "c"]);
    }

    [Fact]
    public void Pipes_are_not_waited_for()
    {
        if (!OperatingSystem.IsLinux())
            return;
        Pipe("c/cups/z.yaml");
        Pipe("c/builds/z.yaml");
        Pipe("r/tweeter/z.yaml");
        var said = AssertTold($"c/cups/z.yaml:1:1: error: {NotPlain}", "lint", "--catalog", "c", "--rules", "r");
        Assert.Contains($"c/builds/z.yaml:1:1: error: {NotPlain}", said, StringComparison.Ordinal);
        Assert.Contains($"r/tweeter/z.yaml:1:1: error: {NotPlain}", said, StringComparison.Ordinal);
        AssertTold($"r/tweeter/z.yaml:1:1: error: {NotPlain}", "explain", "--rules", "r");
    }

    // Twice round in a circle at each of forty steps; an output that exists makes the run look for what it reads.
    [Theory]
    [InlineData("check", "mine.yaml")]
    [InlineData("list", "mine.yaml")]
    [InlineData("suggest", "mine.yaml")]
    [InlineData("chart")]
    [InlineData("lint")]
    public void Nor_are_they_where_an_output_must_not_be_written_over_them(params string[] command)
    {
        if (!OperatingSystem.IsLinux())
            return;
        Link("c/cups/a", ".");
        Link("c/cups/b", ".");
        Link("r/tweeter/a", ".");
        Link("r/tweeter/b", ".");
        _folder.Write("out.txt", "kept");
        // What lint finds is its report, which goes where it is sent.
        string[] too = command is ["lint"] ? ["--format", "text"] : [];
        AssertTold("c/cups/a:1:1: error: the link leads to a folder that is read already",
            [.. command, "--catalog", "default", "--catalog", "c", "--rules", "default", "--rules", "r", "--format", "json", "--output",
                "out.txt", .. too]);
    }

    // Thirty folders, each with two links to the next: a thousand million ways to the last.
    [Fact]
    public void Many_ways_to_one_folder_are_not_all_walked()
    {
        if (!OperatingSystem.IsLinux())
            return;
        for (var i = 0; i < 30; i++)
        {
            Directory.CreateDirectory(_folder.Of($"c/parts/{i}"));
            Link($"c/parts/{i}/a", $"../{i + 1}");
            Link($"c/parts/{i}/b", $"../{i + 1}");
        }
        _folder.Write("c/parts/30/x.yaml", "id: x\n");
        Link("c/drivers", "parts/0");
        AssertTold(": error: the link leads to a folder that is read already", "lint", "--catalog", "c", "--rules", "r");
    }

    [Theory]
    [InlineData("/dev/zero")]
    [InlineData("/dev/null")]
    [InlineData("pipe")]
    public void A_build_that_is_no_plain_file_is_refused(string build)
    {
        if (!OperatingSystem.IsLinux())
            return;
        Pipe("pipe");
        foreach (var command in (string[])["check", "list", "suggest", "lint"])
            AssertTold($"{build}:1:1: error: {NotPlain}; name a build file", command, build);
        Assert.Equal(2, Run.InTime(_folder.Path, "lint", "--fix", build).Status);
    }

    [Fact]
    public void A_build_that_links_lead_out_of_the_folder_is_not_quoted()
    {
        if (!OperatingSystem.IsLinux())
            return;
        Link("c/builds/z.yaml", "../../outside/secret.yaml");
        Link("other/builds", "/" + _folder.Of("outside").TrimStart('/'));
        Assert.Equal(2, Run.InTime(_folder.Of("other"), "check", "builds/secret.yaml").Status);
        Assert.DoesNotContain("password", Both(Run.InTime(_folder.Of("other"), "check", "builds/secret.yaml")), StringComparison.Ordinal);
        Assert.DoesNotContain("password",
            AssertTold($"c/builds/z.yaml:1:1: error: {LeadsOut}", "check", "c/builds/z.yaml", "--catalog", "default", "--catalog", "c"),
            StringComparison.Ordinal);
    }

    [Fact]
    public void What_a_shell_hands_over_is_read_up_to_the_limit()
    {
        if (!OperatingSystem.IsLinux())
            return;
        var (plain, _, _) = Run.InTime(_folder.Path, "check", "mine.yaml");
        Assert.Equal(plain, Shell("cat mine.yaml | dotnet $FITCHECK check /dev/stdin").Status);
        Assert.Equal(plain, Shell("dotnet $FITCHECK check <(cat mine.yaml)").Status);
        Assert.Equal(plain, Shell("dotnet $FITCHECK check /dev/stdin < mine.yaml").Status);
        var (status, error) = Shell("yes | dotnet $FITCHECK check /dev/stdin");
        Assert.Equal(2, status);
        Assert.Contains("larger than the 4194304 bytes", error, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("c/cups/z.yaml")]
    [InlineData("c/builds/z.yaml")]
    [InlineData("r/tweeter/z.yaml")]
    public void A_file_above_the_limit_is_refused(string file)
    {
        _folder.Write(file, "id: x\n#" + new string('x', 4 * 1024 * 1024));
        var said = Both(Run.InTime(_folder.Path, "lint", "--catalog", "c", "--rules", "r"));
        Assert.Contains(file + ":", said, StringComparison.Ordinal);
        Assert.Contains("4194304 bytes", said, StringComparison.Ordinal);
    }

    [Fact]
    public void Links_that_stay_inside_and_a_folder_named_through_a_link_are_fine()
    {
        if (!OperatingSystem.IsLinux())
            return;
        Link("catalog", RepositoryRoot.Of("catalog"));
        Link("rules", RepositoryRoot.Of("rules"));
        Link("near.yaml", "mine.yaml");
        var direct = Run.InTime(_folder.Path, "check", "mine.yaml", "--format", "json", "--catalog", RepositoryRoot.Of("catalog"),
            "--rules", RepositoryRoot.Of("rules"));
        Assert.Equal(direct.Status,
            Run.InTime(_folder.Path, "check", "mine.yaml", "--format", "json", "--catalog", "catalog", "--rules", "rules").Status);
        Assert.Equal(direct.Status, Run.InTime(_folder.Path, "check", "near.yaml", "--catalog", "catalog", "--rules", "rules").Status);
        Assert.Equal(0, Run.InTime(_folder.Path, "lint", "--catalog", "catalog", "--rules", "rules").Status);

        _folder.Write("c/shared/one.yaml",
            Entry("sundries/foam-tape-3x12.yaml").Replace("id: foam-tape-3x12", "id: linked", StringComparison.Ordinal));
        Link("c/sundries/linked.yaml", "../shared/one.yaml");
        var (status, output, error) = Run.InTime(_folder.Path, "lint", "--catalog", "catalog", "--catalog", "c", "--rules", "rules");
        Assert.True(status == 0, output + error);
    }

    [Fact]
    public void Nothing_is_put_right_through_a_link()
    {
        if (!OperatingSystem.IsLinux())
            return;
        var untidy = Entry($"cups/{Cup}") + "   \n";
        var outside = _folder.Write("outside/cup.yaml", untidy);
        Link("c/cups/z.yaml", "../../outside/cup.yaml");
        Link("c/cups/far", "../../outside");
        Pipe("c/cups/p.yaml");
        Pipe("c/starters/cup.yaml");
        Run.InTime(_folder.Path, "lint", "--fix", "--catalog", "c", "--rules", "r");
        Assert.Equal(untidy, File.ReadAllText(outside));
        Assert.NotNull(new FileInfo(_folder.Of("c/cups/z.yaml")).LinkTarget);
    }

    private static string Entry(string file) => File.ReadAllText(RepositoryRoot.Of("catalog", file));

    private string AssertTold(string told, params string[] arguments)
    {
        var run = Run.InTime(_folder.Path, arguments);
        Assert.Contains(told, Both(run), StringComparison.Ordinal);
        Assert.Equal(2, run.Status);
        return Both(run);
    }

    private static string Both((int Status, string Out, string Error) run) => run.Out + run.Error;

    private void Link(string name, string target)
    {
        Directory.CreateDirectory(Path.GetDirectoryName(_folder.Of(name))!);
        File.CreateSymbolicLink(_folder.Of(name), target);
    }

    private void Pipe(string name)
    {
        Directory.CreateDirectory(Path.GetDirectoryName(_folder.Of(name))!);
        using var made = Process.Start("mkfifo", [_folder.Of(name)]);
        made.WaitForExit();
        Assert.Equal(0, made.ExitCode);
    }

    private (int Status, string Error) Shell(string command)
    {
        var start = new ProcessStartInfo("timeout", ["60", "bash", "-c", command])
        {
            WorkingDirectory = _folder.Path,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
            UseShellExecute = false
        };
        start.Environment["FITCHECK"] = Path.Combine(AppContext.BaseDirectory, "fitcheck.dll");
        start.Environment["FITCHECK_CACHE"] = _folder.Of("cache");
        using var process = Process.Start(start)!;
        var error = process.StandardError.ReadToEndAsync();
        process.StandardOutput.ReadToEnd();
        process.WaitForExit();
        return (process.ExitCode, error.Result);
    }
}
