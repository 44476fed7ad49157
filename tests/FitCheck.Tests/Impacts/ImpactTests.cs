using System.Text.Json.Nodes;
using FitCheck.Tests.Cli;
using NJsonSchema;
using Xunit;

namespace FitCheck.Tests.Impacts;

/// <summary>What a reviewer of the shared catalog is told, from the program's command line, in a repository of its own.</summary>
public sealed class ImpactTests
{
    private const string Driver = "catalog/drivers/orrin-w165-4.yaml";

    [Fact]
    public void A_change_that_only_reads_differently_is_fine()
    {
        using var request = new PullRequest().Change(Driver, "id: orrin-w165-4", "# a remark\nid: orrin-w165-4");
        var (status, output, _) = request.Impact("--from", "HEAD");
        Assert.Equal(0, status);
        Assert.Contains("Nothing that FitCheck reads is different.", output, StringComparison.Ordinal);
    }

    [Fact]
    public void A_change_that_breaks_an_entry_is_bad_input_with_its_place()
    {
        using var request = new PullRequest().Change(Driver, "depth: 64 mm", "depth: 64");
        var (status, output, error) = request.Impact("--from", "main");
        Assert.Equal(2, status);
        Assert.Empty(output);
        Assert.Contains($"{Driver}:32:", error, StringComparison.Ordinal);
        Assert.DoesNotContain(System.IO.Path.GetTempPath() + "fitcheck-revision", error, StringComparison.Ordinal);
    }

    // By hand: Orrin W165-4 sits behind the glass in two Ostler builds (66 mm; spacer 12 mm, so 64 mm keeps 14 mm and 74 mm keeps 4 mm, the
    // warning is below 5 mm) and on the tilted spacer of the Tansy.
    [Fact]
    public void A_change_that_silently_makes_three_builds_worse_is_refused_with_its_cause()
    {
        using var request = new PullRequest().Deeper(Driver, 74);
        request.Commit("a deeper driver");
        var (status, output, _) = request.Impact("--from", "HEAD~1", "--to", "HEAD", "--format", "json");
        Assert.Equal(1, status);
        var json = JsonNode.Parse(output)!;
        var worse = json["builds"]!.AsArray().Where(b => (string?)b!["fate"] == "worse").ToList();
        Assert.Equal(["front-rear-two-amps", "ostler-hole-enlarged", "ostler-hole-too-small"], worse.Select(b => (string?)b!["id"]));
        Assert.All(worse.SelectMany(b => b!["findings"]!.AsArray()), f =>
        {
            Assert.Equal("dimensions.depth 64 mm → 74 mm", (string?)f!["because"]![0]!["what"]);
            Assert.Equal(Driver, (string?)f["because"]![0]!["at"]!["file"]);
            Assert.Equal(32, (int?)f["because"]![0]!["at"]!["line"]);
        });
    }

    [Fact]
    public void What_somebody_accepts_is_told_and_not_refused()
    {
        using var request = new PullRequest().Deeper(Driver, 74);
        Assert.Equal(1, request.Impact("--from", "HEAD", "--accept", "ostler-hole-enlarged").Status);
        var (status, output, _) = request.Impact("--from", "HEAD", "--accept", "all");
        Assert.Equal(0, status);
        Assert.Contains("ACCEPTED Ostler, round woofers in enlarged holes", output, StringComparison.Ordinal);
        var (wrong, _, error) = request.Impact("--from", "HEAD", "--accept", "ostler-hole-enlargd");
        Assert.Equal(2, wrong);
        Assert.Contains("did you mean `ostler-hole-enlarged`?", error, StringComparison.Ordinal);
    }

    [Fact]
    public void A_stricter_rule_is_told_with_the_builds_that_it_makes_worse()
    {
        using var request = new PullRequest().Change("rules/mount/glass-too-near.yaml", "warn: { below: 5 mm }", "warn: { below: 25 mm }")
            .Change("rules/mount/glass-too-near.yaml", "examples:", "examples:\n  - { name: on the new limit, given: 25 mm, expect: pass }")
            .Change("rules/mount/glass-too-near.yaml", "given: 9 mm, expect: pass", "given: 29 mm, expect: pass")
            .Change("rules/mount/glass-too-near.yaml", "given: 5 mm, expect: pass", "given: 5 mm, expect: warn");
        var (status, output, _) = request.Impact("--from", "HEAD", "--format", "markdown");
        Assert.Equal(1, status);
        Assert.Contains("because the rule warns below 25 mm instead of below 5 mm (`rules/mount/glass-too-near.yaml:", output,
            StringComparison.Ordinal);
    }

    [Fact]
    public void A_build_that_can_no_longer_be_read_is_worse_and_a_new_bad_one_is_not()
    {
        using var request = new PullRequest().Change("catalog/builds/tansy-bare-tweeter.yaml", "orrin-t25", "orrin-t26")
            .Write("catalog/builds/new-and-bad.yaml",
            "kind: build\nname: New and bad\nvehicle: tansy-hatch\nfit:\n  - {at: [front-door-left], driver: halvard-m200-4}\n");
        var (status, output, _) = request.Impact("--from", "HEAD");
        Assert.Equal(1, status);
        Assert.Contains("can no longer be read", output, StringComparison.Ordinal);
        Assert.Contains("`orrin-t26`", output, StringComparison.Ordinal);
        Assert.Contains("NEW      New and bad is new: fail.", output, StringComparison.Ordinal);
    }

    [Fact]
    public void A_build_that_is_deleted_is_lost_until_somebody_accepts_it()
    {
        using var request = new PullRequest().Delete("catalog/builds/ostler-hole-enlarged.yaml");
        var (status, output, _) = request.Impact("--from", "HEAD");
        Assert.Equal(1, status);
        Assert.Contains("1 build is lost.", output, StringComparison.Ordinal);
        Assert.Contains("LOST     Ostler, round woofers in enlarged holes is lost: nothing judges it any more (warn before).", output,
            StringComparison.Ordinal);
        Assert.Contains("::error file=catalog/builds/ostler-hole-enlarged.yaml", request.Impact("--from", "HEAD", "--format", "github").Out,
            StringComparison.Ordinal);
        Assert.Equal(0, request.Impact("--from", "HEAD", "--accept", "ostler-hole-enlarged").Status);
        Assert.Equal(0, request.Impact("--from", "HEAD", "--accept", "catalog/builds/ostler-hole-enlarged.yaml").Status);
    }

    [Fact]
    public void A_build_that_is_only_renamed_is_followed()
    {
        using var request = new PullRequest().Move("catalog/builds/ostler-hole-enlarged.yaml", "catalog/builds/summer/holes.yaml");
        var (status, output, _) = request.Impact("--from", "HEAD");
        Assert.Equal(0, status);
        Assert.Contains("MOVED    Ostler, round woofers in enlarged holes (was ostler-hole-enlarged) stays warn.", output,
            StringComparison.Ordinal);
        var json = JsonNode.Parse(request.Impact("--from", "HEAD", "--format", "json").Out)!["builds"]!.AsArray();
        Assert.Equal(("summer/holes", "same"),
            json.Where(b => (string?)b!["renamed_from"] == "ostler-hole-enlarged")
                .Select(b => ((string?)b!["id"], (string?)b["fate"])).Single());
    }

    // The glass of the Ostler is struck when its ring is left out: 64 mm of driver before 66 mm, worst case.
    [Fact]
    public void Nothing_gets_past_by_moving()
    {
        const string Was = "catalog/builds/ostler-hole-enlarged.yaml", Is = "catalog/builds/other.yaml";
        using var renamed = new PullRequest().Move(Was, Is).Change(Is, "name: Ostler", "name: Truck")
            .Deeper("catalog/drivers/orrin-w165-4.yaml", 90);
        var (status, output, _) = renamed.Impact("--from", "HEAD");
        Assert.Equal(1, status);
        Assert.Contains("(was ostler-hole-enlarged) goes from warn to fail.", output, StringComparison.Ordinal);
        Assert.Equal(1, renamed.Impact("--from", "HEAD", "--accept", "ostler-hole-too-small", "--accept", "front-rear-two-amps").Status);

        using var outside = new PullRequest().Move(Was, "attic/ostler-hole-enlarged.yaml");
        Assert.Contains("1 build is lost.", outside.Impact("--from", "HEAD").Out, StringComparison.Ordinal);

        // Something harmless in its place, and it under another name.
        using var swapped = new PullRequest().Move(Was, Is).Deeper("catalog/drivers/orrin-w165-4.yaml", 90)
            .Write(Was,
            "kind: build\nname: Harmless\nvehicle: ostler-pickup\nfit:\n  - {at: [front-door-left], keeps_factory_driver: true}\n");
        Assert.Contains("(was ostler-hole-enlarged) goes from warn to fail.", swapped.Impact("--from", "HEAD").Out,
            StringComparison.Ordinal);
    }

    // The second of two equal sides is known to be valid, and is read by a shorter way.
    [Fact]
    public void Two_sides_that_are_the_same_have_the_same_rules()
    {
        using var request = new PullRequest();
        Assert.Contains("Nothing that FitCheck reads is different.", request.Impact("--from", "HEAD", "--to", "HEAD").Out,
            StringComparison.Ordinal);
        Assert.Contains("Nothing that FitCheck reads is different.", request.Impact("--from", "HEAD").Out, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("no-such-thing")]
    [InlineData("--upload-pack=x")]
    public void A_side_that_is_nothing_is_told(string word)
    {
        using var request = new PullRequest();
        var (status, _, error) = request.Impact($"--from={word}");
        Assert.Equal(2, status);
        Assert.Contains($"--from: neither a folder nor a revision is named `{word}`", error, StringComparison.Ordinal);
    }

    // A change can bring a folder of any name; the revision that it is compared with must stay the revision.
    [Fact]
    public void A_folder_does_not_take_the_place_of_a_revision()
    {
        using var request = new PullRequest();
        request.Git("update-ref", "refs/remotes/origin/main", "HEAD");
        request.Deeper(Driver, 74).Copied("origin/main").Copied("refs/remotes/origin/main").Copied("HEAD");

        var (status, output, error) = request.Impact("--from", "origin/main");
        Assert.Equal(2, status);
        Assert.Empty(output);
        Assert.Contains(
            "--from: `origin/main` is a revision and a folder too; give `./origin/main` for the folder, `refs/remotes/origin/main` for "
                + "the revision", error, StringComparison.Ordinal);
        Assert.Contains("`refs/heads/main` for the revision", request.Impact("--from", "HEAD").Error, StringComparison.Ordinal);
        Assert.Contains("--to: `origin/main` is a revision and a folder too",
            request.Impact("--from", "main", "--to", "origin/main").Error, StringComparison.Ordinal);

        Assert.Equal(1, request.Impact("--from", "refs/remotes/origin/main").Status);
        Assert.Contains("Nothing that FitCheck reads is different.", request.Impact("--from", "./origin/main").Out,
            StringComparison.Ordinal);
        Assert.Contains("Nothing that FitCheck reads is different.", request.Impact("--from", "origin/main/").Out,
            StringComparison.Ordinal);
    }

    [Fact]
    public void A_revision_with_a_link_out_of_it_is_told_with_its_place()
    {
        if (!OperatingSystem.IsLinux())
            return;
        using var request = new PullRequest();
        File.CreateSymbolicLink(System.IO.Path.Combine(request.Path, "catalog/cups/z.yaml"), "/etc/hostname");
        File.CreateSymbolicLink(System.IO.Path.Combine(request.Path, "catalog/builds/z.yaml"), "../../../outside.yaml");
        request.Commit("links");
        var (status, _, error) = request.Impact("--from", "HEAD~1", "--to", "HEAD");
        Assert.Equal(2, status);
        Assert.Contains("catalog/cups/z.yaml:1:1: error: the link leads out of the folder", error, StringComparison.Ordinal);
        File.Delete(System.IO.Path.Combine(request.Path, "catalog/cups/z.yaml"));
        Assert.Contains("catalog/builds/z.yaml:1:1: error: the link leads to nothing", request.Impact("--from", "HEAD~1").Error,
            StringComparison.Ordinal);
        File.Delete(System.IO.Path.Combine(request.Path, "catalog/builds/z.yaml"));
    }

    // gitattributes(5): what `export-ignore` names is left out of archives, `export-subst` and `ident` rewrite. The builds of the Ostler
    // get worse as by hand above, though both sides ask for them to be left out.
    [Fact]
    public void A_revision_is_read_as_it_is_whatever_its_attributes_say()
    {
        using var request = new PullRequest();
        request.Write(".gitattributes", "catalog/builds/ostler* export-ignore\n*.yaml export-subst ident\n");
        request.Commit("attributes");
        request.Deeper(Driver, 74).Commit("a deeper driver");
        var (status, output, _) = request.Impact("--from", "HEAD~1", "--to", "HEAD", "--format", "json");
        Assert.Equal(1, status);
        Assert.Equal(["front-rear-two-amps", "ostler-hole-enlarged", "ostler-hole-too-small"],
            JsonNode.Parse(output)!["builds"]!.AsArray().Where(b => (string?)b!["fate"] == "worse").Select(b => (string?)b!["id"]));

        request.Write(".gitattributes", "catalog/builds/* export-ignore\n").Commit("more of them");
        Assert.Contains("Nothing that FitCheck reads is different.", request.Impact("--from", "HEAD~1", "--to", "HEAD").Out,
            StringComparison.Ordinal);
    }

    // Trees that git itself never makes, written by hand: git-mktree(1) and git-hash-object(1).
    [Theory]
    [InlineData("..", "the file `catalog/../z.yaml` leads out of it")]
    [InlineData(".", "the file `catalog/./z.yaml` leads out of it")]
    public void A_tree_that_leads_out_of_itself_is_told(string name, string told)
    {
        if (!OperatingSystem.IsLinux())
            return;
        using var request = new PullRequest();
        var (status, output, error) = Shell.Of(request.Path, $$"""
            raw() { printf '%s' "$1" | sed 's/../\\x&/g' | xargs -0 printf; }
            tree() { { printf '%s %s\0' "$2" "$3"; raw "$1"; } | git hash-object -t tree -w --literally --stdin; }
            blob=$(echo 'kind: cup' | git hash-object -w --stdin)
            top=$(tree "$(tree "$(tree "$blob" 100644 z.yaml)" 40000 '{{name}}')" 40000 catalog)
            git update-ref refs/heads/bad $(git -c user.name=t -c user.email=t@example.invalid commit-tree -m bad $top)
            fitcheck impact --from HEAD --to bad
            """);
        Assert.True(status == 2, output + error);
        Assert.Contains($"--to: the revision `bad` can't be compared: {told}", error, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("INT")]
    [InlineData("TERM")]
    [InlineData("HUP")]
    public void An_interrupted_run_leaves_no_folder(string signal)
    {
        if (!OperatingSystem.IsLinux())
            return;
        using var request = new PullRequest();
        var temporary = Directory.CreateDirectory(System.IO.Path.Combine(request.Path, "tmp")).FullName;
        // At once, in the middle, and when both are there.
        foreach (var folders in new[] { 1, 2 })
        {
            // In the background of a shell, an interruption is ignored and so would be by what is started here.
            var start = new System.Diagnostics.ProcessStartInfo("env",
                ["--default-signal=INT,TERM,HUP", "dotnet", System.IO.Path.Combine(AppContext.BaseDirectory, "fitcheck.dll"), "impact",
                    "--from", "HEAD", "--to", "HEAD"])
            {
                WorkingDirectory = request.Path,
                RedirectStandardOutput = true,
                RedirectStandardError = true,
                UseShellExecute = false,
            };
            start.Environment["TMPDIR"] = temporary;
            using var process = System.Diagnostics.Process.Start(start)!;
            var watch = System.Diagnostics.Stopwatch.StartNew();
            while (Directory.GetDirectories(temporary, "fitcheck-revision-*").Length < folders && watch.Elapsed.TotalSeconds < 60)
                Thread.Sleep(1);
            Assert.Equal(0, Shell.Of(request.Path, $"kill -{signal} {process.Id}").Status);
            Assert.True(process.WaitForExit(TimeSpan.FromSeconds(10)), "it goes on");
            Assert.True(process.ExitCode > 128, process.StandardError.ReadToEnd());
            Assert.Empty(Directory.GetDirectories(temporary, "fitcheck-revision-*"));
        }
    }

    [Fact]
    public void A_build_that_passes_by_a_waiver_is_told_so_and_one_that_may_not_waive_can_no_longer_be_read()
    {
        const string build = "catalog/builds/tansy-quote.yaml";
        using var request = new PullRequest();
        request.Write(build,
            File.ReadAllText(System.IO.Path.Combine(request.Path, build))
                + "\nwaive:\n  - {rule: list/over-budget, reason: agreed}\n  - {rule: list/missing-from-quote, reason: agreed}\n");
        Assert.Contains("on the strength of", request.Impact("--from", "HEAD").Out, StringComparison.Ordinal);
        using var other = new PullRequest();
        other.Write(build,
            File.ReadAllText(System.IO.Path.Combine(other.Path, build)) + "\nwaive:\n  - {rule: seal/airbag-near, reason: agreed}\n");
        var (status, output, _) = other.Impact("--from", "HEAD");
        Assert.Equal(1, status);
        Assert.Contains("can no longer be read", output, StringComparison.Ordinal);
        Assert.Contains("`seal/airbag-near` is never waived", output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Json_keeps_the_published_schema_and_folders_are_sides_too()
    {
        using var request = new PullRequest().Deeper(Driver, 74).Delete("rules/seal/airbag-near.yaml");
        var (status, output, _) = request.Impact("--from", RepositoryRoot.Path, "--to", ".", "--format", "json");
        var schema =
            await JsonSchema.FromJsonAsync(
                File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "reports", "schema", "impact.schema.json")));
        Assert.Equal(1, status);
        Assert.Empty(schema.Validate(output));
        Assert.Contains("\"rule\": \"seal/airbag-near\",\n      \"change\": \"removed\"", output, StringComparison.Ordinal);
    }
}
