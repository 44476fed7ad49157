using Xunit;

namespace FitCheck.Tests.Cli;

/// <summary>What a run reads is never written over, and no output over another one: whatever the spelling, whatever the links.</summary>
public sealed class OverwritingTests : IDisposable
{
    private readonly TemporaryFolder _folder = new();
    private readonly Dictionary<string, string> _before;

    public OverwritingTests()
    {
        _folder.Write("b.yaml", File.ReadAllText(RepositoryRoot.Of("catalog", "builds", "tansy-bare-tweeter.yaml")));
        _folder.Write("shop/cups/my-cup.yaml",
            Trial.Entry("cups/cup-45-tansy.yaml").Replace("id: cup-45-tansy", "id: my-cup", StringComparison.Ordinal));
        _folder.Write("limits/mount/glass-too-near.yaml",
            "id: mount/glass-too-near\nreason: \"The glass of older cars wobbles.\"\nwarn: { below: 8 mm }\n");
        _folder.Write("side/catalog/builds/b.yaml", File.ReadAllText(_folder.Of("b.yaml")));
        _folder.Write("shared/old.html", "yesterday's");
        _folder.Write("t.csv", "article,part\n17,orrin-t25\n");
        if (!OperatingSystem.IsWindows())
        {
            Link("soft", "b.yaml");
            Link("softer", "soft");
            Link("shop-too", "shop");
            Link("here", ".");
            Link("a.json", "later.json");
            Shell.Of(_folder.Path, "ln b.yaml hard; ln limits/mount/glass-too-near.yaml rule");
        }
        _before = Files();
    }

    public void Dispose() => _folder.Dispose();

    // A link to the build, a second name of it, a folder's link on the way: POSIX calls all of them one file (3.147 of the base
    // definitions).
    [Theory]
    [InlineData("check b.yaml --format json --output soft", "soft is the same file as b.yaml, which is read")]
    [InlineData("check b.yaml --format json --output softer", "softer is the same file as b.yaml, which is read")]
    [InlineData("check b.yaml --format json --output hard", "hard is the same file as b.yaml, which is read")]
    [InlineData("check b.yaml --format json --output here/b.yaml", "here/b.yaml is the same file as b.yaml, which is read")]
    [InlineData("check soft --format json --output b.yaml", "b.yaml is the same file as soft, which is read")]
    [InlineData("check b.yaml --sheet hard", "hard is the same file as b.yaml, which is read")]
    [InlineData("list b.yaml --format json --output hard", "hard is the same file as b.yaml, which is read")]
    [InlineData("suggest b.yaml --format json --output hard", "hard is the same file as b.yaml, which is read")]
    [InlineData("lint b.yaml --format json --output hard", "hard is the same file as b.yaml, which is read")]
    [InlineData("check b.yaml --catalog default --catalog shop --format json --output shop/cups/my-cup.yaml",
        "shop/cups/my-cup.yaml is read")]
    [InlineData("check b.yaml --catalog default --catalog shop --format json --output shop-too/cups/my-cup.yaml",
        "shop-too/cups/my-cup.yaml is the same file as shop/cups/my-cup.yaml, which is read")]
    [InlineData("check b.yaml --rules default --rules limits --format json --output limits/mount/glass-too-near.yaml",
        "limits/mount/glass-too-near.yaml is read")]
    [InlineData("list b.yaml --rules default --rules limits --format json --output rule",
        "rule is the same file as limits/mount/glass-too-near.yaml, which is read")]
    [InlineData("chart --catalog default --catalog shop --format json --output shop/cups/my-cup.yaml", "shop/cups/my-cup.yaml is read")]
    [InlineData("lint --catalog default --catalog shop --format json --output shop/cups/my-cup.yaml", "shop/cups/my-cup.yaml is read")]
    [InlineData("lint --fix --catalog default --catalog shop --format json --output shop/cups/my-cup.yaml",
        "shop/cups/my-cup.yaml is read")]
    [InlineData("impact --from side --to side --format json --output side/catalog/builds/b.yaml", "side/catalog/builds/b.yaml is read")]
    [InlineData("suggest b.yaml --catalog default --catalog shop --write shop/cups/my-cup.yaml --force", "shop/cups/my-cup.yaml is read")]
    public void What_is_read_is_kept(string command, string told)
    {
        if (OperatingSystem.IsWindows())
            return;
        Refused(2, $"fitcheck: {told}; name another file for what is written\n", command);
    }

    [Theory]
    [InlineData("check b.yaml --format json --output new.txt --format html --output here/new.txt", 2,
        "new.txt and here/new.txt are one file; name another for one of them")]
    [InlineData("check b.yaml --output a.json --sheet later.json", 2, "a.json and later.json are one file; name another for one of them")]
    [InlineData("check b.yaml --output shared/old.html --sheet here/shared/old.html", 2,
        "shared/old.html and here/shared/old.html are one file; name another for one of them")]
    [InlineData("check b.yaml --output new.html --sheet ./new.html", 3, "new.html is named twice, by --output and by --sheet")]
    [InlineData("check b.yaml --output new.html --output shared/../new.html", 3, "new.html is named twice by --output")]
    [InlineData("lint --format json --output new.txt --format sarif --output here/new.txt", 2,
        "new.txt and here/new.txt are one file; name another for one of them")]
    [InlineData("suggest b.yaml --output new.txt --write new.txt", 3, "new.txt is named twice, by --output and by --write")]
    [InlineData("suggest b.yaml --output new.txt --write here/new.txt", 2,
        "new.txt and here/new.txt are one file; name another for one of them")]
    [InlineData("suggest b.yaml --output b.yaml --write b.yaml --force", 3, "b.yaml is named twice, by --output and by --write")]
    [InlineData("suggest b.yaml --output b.yaml", 3, "b.yaml is read; name another file for what is written")]
    public void No_output_takes_the_place_of_another(string command, int status, string told)
    {
        if (OperatingSystem.IsWindows())
            return;
        Refused(status, $"fitcheck: {told}\n", command);
    }

    [Fact]
    public void What_comes_in_by_redirection_is_read_too()
    {
        if (!OperatingSystem.IsLinux())
            return;
        var (status, _, error) = Shell.Of(_folder.Path, "fitcheck check /dev/stdin --format json --output b.yaml < b.yaml");

        Assert.Equal((2, "fitcheck: b.yaml is the same file as /dev/stdin, which is read; name another file for what is written\n"),
            (status, error));
        Assert.Equal(_before, Files());
    }

    // proc(5): /proc/self/cwd and /proc/self/root lead to the current folder and to the root, /proc/self/fd to what is open.
    [Theory]
    [InlineData("check b.yaml --format json --output /proc/self/cwd/b.yaml", "is the same file as b.yaml")]
    [InlineData("check b.yaml --format json --output /proc/self/root$PWD/b.yaml", "is the same file as b.yaml")]
    [InlineData("check b.yaml --format json --output /dev/fd/3 3<>b.yaml", "/dev/fd/3 is the same file as b.yaml")]
    [InlineData("check b.yaml --format json --output /dev/stdin <b.yaml", "/dev/stdin is the same file as b.yaml")]
    [InlineData("check b.yaml --format json --output /proc/self/fd/0 <hard", "/proc/self/fd/0 is the same file as b.yaml")]
    [InlineData("check b.yaml --sheet /proc/self/cwd/hard", "is the same file as b.yaml")]
    [InlineData("measure b.yaml --card /dev/fd/3 3<>b.yaml", "is the same file as b.yaml")]
    [InlineData("lint b.yaml --output /proc/self/cwd/b.yaml", "is the same file as b.yaml")]
    [InlineData("new build -o /proc/self/cwd/b.yaml", "exists; it is kept as it is")]
    [InlineData("new part driver -o /proc/self/cwd/b.yaml", "exists; it is kept as it is")]
    [InlineData("new part driver --to /proc/self/cwd/t.csv", "exists; it is kept as it is")]
    [InlineData("new part driver --to /dev/fd/3 3<>t.csv", "a table is written as CSV")]
    [InlineData("new build -o /dev/fd/3 3<>b.yaml", "it is kept as it is")]
    [InlineData("suggest b.yaml --write /proc/self/cwd/b.yaml", "exists; it is kept as it is")]
    [InlineData("suggest b.yaml --write /dev/fd/3 --force 3<>b.yaml", "it is kept as it is")]
    [InlineData("new build --from t.csv --vehicle tansy-hatch --articles t.csv", "t.csv is read")]
    [InlineData("check t.csv --vehicle tansy-hatch --articles here/t.csv", "here/t.csv is the same file as t.csv")]
    [InlineData("list t.csv --vehicle tansy-hatch --catalog default --catalog shop --articles shop/cups/my-cup.yaml",
        "shop/cups/my-cup.yaml is read")]
    public void Nor_is_it_by_the_names_that_the_system_has_for_what_is_open(string command, string told)
    {
        if (!OperatingSystem.IsLinux())
            return;
        var (status, _, error) = Shell.Of(_folder.Path, "fitcheck " + command);

        Assert.Contains(told, error, StringComparison.Ordinal);
        Assert.InRange(status, 2, 3);
        Assert.Equal(_before, Files());
    }

    [Fact]
    public void What_is_open_takes_a_report_whole()
    {
        if (!OperatingSystem.IsLinux())
            return;
        _folder.Write("big", new string('x', 1_000_000));
        Assert.Equal(1, Shell.Of(_folder.Path, "fitcheck check b.yaml --format json --output /dev/fd/3 3<>big").Status);
        Assert.EndsWith("}\n", File.ReadAllText(_folder.Of("big")), StringComparison.Ordinal);
        Assert.Equal(1, Shell.Of(_folder.Path, "fitcheck check b.yaml --format json --output /proc/self/cwd/own.json").Status);
        Assert.EndsWith("}\n", File.ReadAllText(_folder.Of("own.json")), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("suggest b.yaml --write soft --force")]
    [InlineData("suggest b.yaml --write soft")]
    [InlineData("suggest b.yaml --write a.json")]
    [InlineData("new build -o soft")]
    [InlineData("new build -o a.json")]
    public void Nothing_is_edited_or_begun_through_a_link(string command)
    {
        if (OperatingSystem.IsWindows())
            return;
        var (status, _, error) = Run.Of(_folder.Path, command.Split(' '));

        Assert.Equal(2, status);
        Assert.Matches(@"^fitcheck: (soft|a\.json) is a link to \S+/(b\.yaml|later\.json); it is kept as it is, name that file itself\n$",
            error);
        Assert.Equal(_before, Files());
    }

    [Fact]
    public void Fixing_leaves_everything_alone_where_a_link_would_have_to_be_fixed()
    {
        if (OperatingSystem.IsWindows())
            return;
        var cup = Trial.Entry("cups/cup-45-tansy.yaml").Replace("hole: 45 mm", "hole: 45mm", StringComparison.Ordinal);
        _folder.Write("own/cups/first.yaml", cup.Replace("id: cup-45-tansy", "id: first", StringComparison.Ordinal));
        _folder.Write("own/kept/elsewhere.yaml", cup.Replace("id: cup-45-tansy", "id: second", StringComparison.Ordinal));
        Link("own/cups/second.yaml", "../kept/elsewhere.yaml");
        var before = Files();

        var (status, _, error) = Run.Of(_folder.Path, "lint", "--fix", "--catalog", "own");

        Assert.Equal(2, status);
        Assert.Equal(
            $"fitcheck: own/cups/second.yaml is a link to {_folder.Of("own/kept/elsewhere.yaml")}; it is kept as it is, name that file "
                + $"itself\n", error);
        Assert.Equal(before, Files());
    }

    [Fact]
    public void A_build_is_changed_in_its_place_where_that_is_asked_for()
    {
        var (status, _, error) = Run.Of(_folder.Path, "suggest", "b.yaml", "--write", "b.yaml", "--force");

        Assert.Equal((0, ""), (status, error));
        Assert.NotEqual(_before["b.yaml"], File.ReadAllText(_folder.Of("b.yaml")));
        Assert.Equal(0, Run.Of(_folder.Path, "check", "b.yaml").Status);
    }

    [Fact]
    public void A_report_goes_where_a_link_leads_that_is_no_input()
    {
        if (OperatingSystem.IsWindows())
            return;
        Link("report.html", "shared/old.html");
        var (status, _, error) = Run.Of(_folder.Path, "check", "b.yaml", "--output", "report.html");

        Assert.Equal((1, ""), (status, error));
        Assert.Equal("shared/old.html", new FileInfo(_folder.Of("report.html")).LinkTarget);
        Assert.EndsWith("</html>\n", File.ReadAllText(_folder.Of("shared/old.html")), StringComparison.Ordinal);
    }

    [Fact]
    public void A_device_takes_as_much_as_it_is_given()
    {
        if (!OperatingSystem.IsLinux())
            return;
        var (status, output, error) =
            Run.Of(_folder.Path, "check", "b.yaml", "--format", "html", "--output", "/dev/null", "--format", "text", "--output",
                "/dev/stdout", "--sheet", "/dev/../dev/null");

        Assert.Equal("fitcheck: null is named twice, by --output and by --sheet\n", error);
        Assert.Equal((3, ""), (status, output));
        (status, output, error) =
            Run.Of(_folder.Path, "check", "b.yaml", "--format", "html", "--output", "/dev/null", "--format", "text", "--output",
                "/dev/stdout", "--sheet", "/dev/zero");
        Assert.Equal((1, ""), (status, error));
        Assert.StartsWith("Tansy, new tweeters plugged in bare", output, StringComparison.Ordinal);
    }

    [Fact]
    public void A_file_in_shared_memory_is_a_file()
    {
        if (!Directory.Exists("/dev/shm"))
            return;
        var file = $"/dev/shm/{Path.GetRandomFileName()}.json";
        try
        {
            File.WriteAllText(file, new string(' ', 4_000_000) + "end");
            Assert.Equal(1, Run.Of(_folder.Path, "check", "b.yaml", "--output", file).Status);
            Assert.EndsWith("}\n", File.ReadAllText(file), StringComparison.Ordinal);
        }
        finally
        {
            File.Delete(file);
        }
    }

    private void Refused(int status, string told, string command)
    {
        Assert.Equal((status, "", told), Run.Of(_folder.Path, command.Split(' ')));
        Assert.Equal(_before, Files());
    }

    private void Link(string name, string target) => File.CreateSymbolicLink(_folder.Of(name), target);

    private Dictionary<string, string> Files() =>
        Directory.GetFiles(_folder.Path, "*", new EnumerationOptions { RecurseSubdirectories = true, MaxRecursionDepth = 3 })
        .Select(f => Path.GetRelativePath(_folder.Path, f))
        .Where(f => !f.StartsWith("cache", StringComparison.Ordinal) && !f.StartsWith("here", StringComparison.Ordinal))
        .ToDictionary(f => f,
        f => File.ResolveLinkTarget(_folder.Of(f), returnFinalTarget: true) is { Exists: false } ? "leads nowhere"
            : File.ReadAllText(_folder.Of(f)), StringComparer.Ordinal);
}
