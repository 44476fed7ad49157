using System.Text.Json;
using Xunit;

namespace FitCheck.Tests.Cli;

public sealed class CheckCommandTests : IDisposable
{
    private const string Good = """
        kind: build
        name: One rear door
        vehicle: corvid-sedan
        accepts: [cut-wires, trim-parts]
        fit:
          - {at: [front-door-left], driver: orrin-w165-4, adapter: spacer-165-corvid-6}
          - {at: [front-tweeter-left], disconnected: true}
        """;

    private readonly TemporaryFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    [Fact]
    public void A_build_is_told_on_standard_output_alone()
    {
        _folder.Write("b.yaml", Good);
        var (status, output, error) = Run.Of(_folder.Path, "check", "b.yaml");

        Assert.Contains("One rear door", output, StringComparison.Ordinal);
        Assert.DoesNotContain("\u001b", output, StringComparison.Ordinal);
        Assert.Equal("", error);
        Assert.InRange(status, 0, 1);
    }

    [Theory]
    [InlineData("check", "b.yaml", "--format", "json", "--output", "b.yaml")]
    [InlineData("check", "b.yaml", "--sheet", "./b.yaml")]
    [InlineData("lint", "b.yaml", "--format", "json", "--output", "b.yaml")]
    [InlineData("list", "b.yaml", "--format", "json", "--output", "b.yaml")]
    public void What_is_read_is_not_written_over(params string[] arguments)
    {
        var file = _folder.Write("b.yaml", Good);
        var (status, _, error) = Run.Of(_folder.Path, arguments);

        Assert.Equal((3, "fitcheck: b.yaml is read; name another file for what is written\n"), (status, error));
        Assert.Equal(Good, File.ReadAllText(file));
    }

    [Fact]
    public void A_device_is_no_file_to_be_replaced()
    {
        if (!OperatingSystem.IsLinux())
            return;
        Assert.True(FitCheck.Foundation.Files.FileStamp.IsOther("/dev/null"));
        Assert.False(FitCheck.Foundation.Files.FileStamp.IsOther(_folder.Write("b.yaml", Good)));
        Assert.False(FitCheck.Foundation.Files.FileStamp.IsOther(_folder.Of("absent.yaml")));
    }

    // What lint tells of an overlay, a check of a build on it tells too: the entry is missed in both.
    [Theory]
    [InlineData("shop/spacer.yaml", "shop/spacer.yaml: warning: not read: entries stand in the folder of their kind")]
    [InlineData("shop/adaptors/spacer.yaml",
        "shop/adaptors: warning: not read: no kind of entry has a folder of this name; did you mean `adapters`?")]
    [InlineData("shop/adapters/spacer.yml", "shop/adapters/spacer.yml: warning: not read: the name of a catalog file ends in `.yaml`")]
    public void An_entry_outside_the_folder_of_its_kind_is_told(string file, string told)
    {
        _folder.Write("b.yaml", Good);
        var (status, output, _) = Run.Of(_folder.Path, "check", "b.yaml");
        _folder.Write(file, "id: spacer\n");
        _folder.Write("shop/cups/.keep", "");
        var with = Run.Of(_folder.Path, "check", "b.yaml", "--catalog", "default", "--catalog", "shop");

        Assert.Equal((status, output), (with.Status, with.Out));
        Assert.Equal(told + "\n", with.Error);
        Assert.Contains(told, Run.Of(_folder.Path, "lint", "b.yaml", "--catalog", "default", "--catalog", "shop").Out
            + Run.Of(_folder.Path, "lint", "b.yaml", "--catalog", "default", "--catalog", "shop").Error, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData(2, "check", "missing.yaml")]
    [InlineData(3, "check")]
    [InlineData(3, "chekc", "b.yaml")]
    [InlineData(3, "check", "b.yaml", "--format", "pdf")]
    [InlineData(3, "check", "b.yaml", "--format", "html", "--format", "json")]
    [InlineData(3, "check", "b.yaml", "--output", "a.html", "--output", "a.html")]
    [InlineData(3, "check", "b.yaml", "--format", "github", "--format", "markdown", "--output", "a.md")]
    [InlineData(3, "check", "b.yaml", "--fail-on", "never")]
    [InlineData(2, "check", "b.yaml", "--catalog", "nowhere")]
    [InlineData(2, "check", "b.yaml", "--output", "no/such/folder/a.html")]
    [InlineData(2, "explain", "mount/too-depe")]
    [InlineData(3, "schema", "gadget")]
    [InlineData(0, "explain", "mount/too-deep")]
    [InlineData(0, "schema", "driver")]
    [InlineData(0, "new", "build")]
    [InlineData(0, "completion", "bash")]
    [InlineData(0, "check", "--help")]
    public void The_exit_status_says_what_happened(int expected, params string[] arguments)
    {
        _folder.Write("b.yaml", Good);
        var (status, output, error) = Run.Of(_folder.Path, arguments);

        Assert.Equal(expected, status);
        Assert.DoesNotContain("   at FitCheck", output + error, StringComparison.Ordinal);
        Assert.DoesNotContain("Unhandled", output + error, StringComparison.Ordinal);
        if (expected is 2 or 3)
        {
            Assert.NotEqual("", error);
            Assert.Equal("", output);
        }
    }

    [Fact]
    public void Fail_on_decides_from_which_status_up_it_is_one()
    {
        _folder.Write("b.yaml", Good.Replace("orrin-w165-4", "orrin-w165-lite", StringComparison.Ordinal));
        var worst = JsonDocument.Parse(Run.Of(_folder.Path, "check", "b.yaml", "--format", "json").Out).RootElement.GetProperty("builds")[0]
            .GetProperty("verdict").GetString();

        Assert.Equal("measure", worst);
        Assert.Equal(0, Run.Of(_folder.Path, "check", "b.yaml").Status);
        Assert.Equal(1, Run.Of(_folder.Path, "check", "b.yaml", "--fail-on", "measure").Status);
        Assert.Equal(1, Run.Of(_folder.Path, "check", "b.yaml", "--fail-on", "warn").Status);
    }

    [Fact]
    public void Two_runs_give_the_same_bytes_with_and_without_the_cache()
    {
        _folder.Write("b.yaml", Good);
        foreach (var format in new[] { "text", "json", "html" })
        {
            var first = Run.Of(_folder.Path, "check", "b.yaml", "--format", format);
            var second = Run.Of(_folder.Path, "check", "b.yaml", "--format", format);
            Assert.Equal(first, second);
        }
        Assert.NotEmpty(Directory.GetFiles(_folder.Of("cache")));
    }

    [Fact]
    public void A_failed_run_leaves_an_old_report_as_it_was()
    {
        _folder.Write("b.yaml", Good.Replace("orrin-w165-4", "orrin-w166-4", StringComparison.Ordinal));
        _folder.Write("r.html", "yesterday's");
        var (status, _, error) = Run.Of(_folder.Path, "check", "b.yaml", "--format", "html", "--output", "r.html");

        Assert.Equal(2, status);
        Assert.Contains("did you mean `orrin-w165-4`?", error, StringComparison.Ordinal);
        Assert.Equal("yesterday's", File.ReadAllText(_folder.Of("r.html")));
    }

    [Fact]
    public void No_part_file_is_left_beside_a_report()
    {
        _folder.Write("b.yaml", Good);
        Run.Of(_folder.Path, "check", "b.yaml", "--output", "r.html", "--output", "r.json");

        Assert.Equal(["b.yaml", "r.html", "r.json"],
            Directory.GetFiles(_folder.Path).Select(f => Path.GetFileName(f)).Order(StringComparer.Ordinal));
    }

    [Fact]
    public void A_part_with_a_hostile_name_does_no_harm()
    {
        _folder.Write("b.yaml",
            Good.Replace("orrin-w165-4", "evil", StringComparison.Ordinal)
                .Replace("One rear door", "\"<b>x</b>\\e[31m\"", StringComparison.Ordinal));
        _folder.Write("shop/drivers/evil.yaml", Trial.Entry("drivers/orrin-w165-4.yaml")
            .Replace("id: orrin-w165-4", "id: evil", StringComparison.Ordinal)
            .Replace("name: ", "name: <script>alert(1)</script> ", StringComparison.Ordinal));
        var catalog = new[] { "--catalog", RepositoryRoot.Of("catalog"), "--catalog", "shop" };

        var html = Run.Of(_folder.Path, ["check", "b.yaml", "--format", "html", .. catalog]).Out;
        var text = Run.Of(_folder.Path, ["check", "b.yaml", .. catalog]).Out;

        Assert.Contains("&lt;script&gt;", html, StringComparison.Ordinal);
        Assert.DoesNotContain("<script", html, StringComparison.OrdinalIgnoreCase);
        Assert.DoesNotContain("\u001b", text, StringComparison.Ordinal);
    }

    [Fact]
    public void A_huge_file_is_refused_unread()
    {
        _folder.Write("b.yaml", new string('#', 5 * 1024 * 1024));
        var (status, _, error) = Run.Of(_folder.Path, "check", "b.yaml");

        Assert.Equal(2, status);
        Assert.Contains("larger than", error, StringComparison.Ordinal);
    }

    [Fact]
    public void A_waiver_keeps_the_status_and_tells_its_reason()
    {
        _folder.Write("b.yaml", Good.Replace("orrin-w165-4", "tamsin-t165-heavy", StringComparison.Ordinal) + """

            waive:
              - {rule: power/headroom-too-small, at: front-door-left, reason: an amplifier follows in spring}
              - {rule: mount/too-deep, at: front-tweeter-left, reason: nothing there}
            """);
        var (_, output, error) = Run.Of(_folder.Path, "check", "b.yaml", "--format", "json");
        var findings = JsonDocument.Parse(output).RootElement.GetProperty("builds")[0].GetProperty("findings").EnumerateArray()
            .Where(f => f.TryGetProperty("waived", out _)).ToList();

        Assert.Equal("an amplifier follows in spring", Assert.Single(findings).GetProperty("waived").GetString());
        Assert.Equal("warn", findings[0].GetProperty("status").GetString());
        Assert.Contains("nothing to waive: `mount/too-deep`", error, StringComparison.Ordinal);
    }
}
