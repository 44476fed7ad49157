using System.Diagnostics;
using System.Text.Json;
using System.Text.RegularExpressions;
using System.Xml.Linq;
using FitCheck.Foundation.Files;
using FitCheck.Foundation.Problems;
using FitCheck.Yaml;
using Xunit;

namespace FitCheck.Tests.Cli;

/// <summary>
/// Runs the very commands of the workflow file and of the hooks, in a repository of their own, as the services do that read these files.
/// </summary>
public sealed class WorkflowTests : IDisposable
{
    private const string Workflow = ".github/workflows/catalog.yml";
    private const string Hooks = ".pre-commit-hooks.yaml";
    private const string Compare = "Compare with the branch the change is made for";
    private const string Driver = "catalog/drivers/orrin-t25.yaml";
    private const string Woofer = "catalog/drivers/orrin-w165-4.yaml";

    private readonly TemporaryFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    [Fact]
    public void The_workflow_runs_from_a_clone()
    {
        Copy("src", "catalog", "rules", "reports", "Directory.Build.props", "Directory.Packages.props", "global.json", ".editorconfig");
        var steps = Steps().ToDictionary(s => s.Name, s => s.Run, StringComparer.Ordinal);

        Assert.Equal(["Build", "Lint", "Check every build", Compare, "Tell it on the page of the run"], steps.Keys);
        // The service fetches the branch that the change is made for under this name.
        Assert.Equal(0, Bash("git update-ref refs/remotes/origin/main HEAD").Status);
        foreach (var (name, run) in steps)
        {
            var (status, output, error) = Bash(run);
            Assert.True(status == 0, $"{name} ends with {status}:\n{output}\n{error}");
        }
        Assert.Equal("2.1.0",
            JsonDocument.Parse(File.ReadAllText(_folder.Of("out/lint.sarif"))).RootElement.GetProperty("version").GetString());
        Assert.Equal(Directory.GetFiles(_folder.Of("catalog/builds"), "*.yaml").Length,
            XDocument.Load(_folder.Of("out/check.xml")).Descendants("testsuite").Count());
        var summary = File.ReadAllText(_folder.Of("summary.md"));
        Assert.Contains("### FitCheck lint: 0 errors", summary, StringComparison.Ordinal);
        Assert.Contains("builds are as meant", summary, StringComparison.Ordinal);
        Assert.Contains("Nothing that FitCheck reads is different.", File.ReadAllText(_folder.Of("out/impact.md")),
            StringComparison.Ordinal);
        Assert.Equal("", Bash("git status --porcelain -- catalog rules src").Out);

        // Every entry is sound, and still three builds get worse (by hand in ImpactTests): only the comparison says so, until a commit
        // accepts it.
        Alter(Woofer, "depth: 64 mm", "depth: 74 mm");
        Alter(Woofer, "- [64 mm, ", "- [74 mm, ");
        Assert.Equal(0, Bash(steps["Lint"]).Status);
        Assert.Equal(0, Bash(steps["Check every build"]).Status);
        Commit("Measure the depth again");
        var worse = Bash(steps[Compare]);
        Assert.Equal(1, worse.Status);
        Assert.Contains($"file={Woofer},line=32", worse.Out, StringComparison.Ordinal);
        Assert.Contains("depth 64 mm → 74 mm", File.ReadAllText(_folder.Of("out/impact.md")), StringComparison.Ordinal);
        Commit("Say that it is meant\n\nAccept-Worse: front-rear-two-amps\nAccept-Worse: ostler-hole-enlarged\nAccept-Worse: "
            + "ostler-hole-too-small");
        Assert.Equal(0, Bash(steps[Compare]).Status);

        // A mistake stops the run, is shown beside its line and stands in the summary.
        Alter(Driver, "\nname:", "\nnaem:");
        var broken = Bash(steps["Lint"]);
        Assert.Equal(2, broken.Status);
        Assert.Contains($"::error file={Driver},line=", broken.Out, StringComparison.Ordinal);
        Assert.Contains("input/wrong-shape", File.ReadAllText(_folder.Of("out/lint.sarif")), StringComparison.Ordinal);
        Assert.NotEqual(0, Bash(steps["Check every build"]).Status);
    }

    [Fact]
    public void The_hooks_run_before_a_commit()
    {
        Copy("catalog", "rules");
        var hooks = ((YamlList)Read(Hooks)).Items.Cast<YamlMap>().ToDictionary(h => Text(h, "id")!, StringComparer.Ordinal);
        Assert.Equal(["fitcheck-lint", "fitcheck-check"], hooks.Keys);

        // Nothing that they are for: they are not run.
        _folder.Write("README.md", "# Ours\n");
        Assert.All(hooks.Values, h => Assert.Null(Hook(h)));

        var good = File.ReadAllText(_folder.Of($"catalog/builds/{Passing()}.yaml"));
        _folder.Write("catalog/builds/mine.yaml", good);
        Assert.All(hooks.Values, h => Assert.Equal(0, Hook(h)!.Value.Status));

        // A mistake that is kept as one is no reason to stop; the same one unsaid is.
        var bare = File.ReadAllText(_folder.Of("catalog/builds/tansy-bare-tweeter.yaml"));
        _folder.Write("catalog/builds/mine.yaml", bare + "\n");
        Assert.All(hooks.Values, h => Assert.Equal(0, Hook(h)!.Value.Status));
        _folder.Write("catalog/builds/mine.yaml", bare[..bare.IndexOf("\nexpect:", StringComparison.Ordinal)]);
        Assert.Equal(0, Hook(hooks["fitcheck-lint"])!.Value.Status);
        var failing = Hook(hooks["fitcheck-check"])!.Value;
        Assert.Equal(1, failing.Status);
        Assert.Contains("tweeter/full-range-feed  catalog/builds/mine.yaml:", failing.Out, StringComparison.Ordinal);

        _folder.Write("catalog/builds/mine.yaml", good.Replace("\nvehicle:", "\nvehcile:", StringComparison.Ordinal));
        Assert.All(hooks.Values, h => Assert.Equal(2, Hook(h)!.Value.Status));
    }

    // The hooks are installed from the sources, on the machine of whoever uses them: nothing is made that no package holds.
    [Theory]
    [InlineData("src/FitCheck.Cli", "Precompile", "true", "")]
    [InlineData("src/FitCheck.Cli", "RunAnalyzers", "", "false")]
    public void Packing_compiles_nothing_ahead_and_analyses_nothing(string project, string property, string built, string packed)
    {
        Assert.Equal(built, Asked(project, $"-getProperty:{property}"));
        Assert.Equal(packed, Asked(project, $"-getProperty:{property}", "-p:_IsPacking=true"));
    }

    [Fact]
    public void The_first_run_of_a_fresh_clone_makes_no_machine_code_and_a_build_of_the_solution_does()
    {
        string[] decided = ["-t:DecideOnNative", "-getProperty:CompileNative", "-p:IntermediateOutputPath=nothing-made-yet/"];
        Assert.Equal("false", Asked("src/FitCheck.Cli", decided));
        Assert.Equal("", Asked("src/FitCheck.Cli", [.. decided, "-p:SolutionPath=FitCheck.sln"]));
        Assert.Equal("true", Asked("src/FitCheck.Cli", [.. decided, "-p:CompileNative=true"]));
    }

    [Fact]
    public void Packing_fetches_nothing_that_only_tests_take()
    {
        Assert.Contains("Microsoft.Playwright", Asked("tests/FitCheck.Browser", "-getItem:PackageReference"), StringComparison.Ordinal);
        Assert.DoesNotContain("Identity",
            Asked("tests/FitCheck.Browser", "-getItem:PackageReference", "-p:_IsPacking=true"), StringComparison.Ordinal);
    }

    [Fact]
    public void Only_pinned_actions_are_used_and_no_host_is_named()
    {
        Assert.All(AllSteps().Select(s => Text(s, "uses")).OfType<string>(),
            u => Assert.Matches(@"^(actions|github)/[a-z/-]+@[0-9a-f]{40}$", u));
        Assert.All(new[] { Workflow, Hooks },
            f => Assert.DoesNotContain("://", File.ReadAllText(RepositoryRoot.Of(f)), StringComparison.Ordinal));
    }

    private static string Asked(string project, params string[] options)
    {
        var start = new ProcessStartInfo("dotnet", ["msbuild", RepositoryRoot.Of(project), "-p:Configuration=Release", .. options])
        {
            RedirectStandardOutput = true,
            UseShellExecute = false,
        };
        start.Environment["MSBUILDDISABLENODEREUSE"] = "1";
        // What the tests were started with is not what is asked.
        foreach (var property in new[] { "Precompile", "RunAnalyzers", "CompileNative" })
            start.Environment.Remove(property);
        using var process = Process.Start(start)!;
        var output = process.StandardOutput.ReadToEnd();
        process.WaitForExit();
        Assert.Equal(0, process.ExitCode);
        return output.Trim();
    }

    private static string Passing() => Directory.GetFiles(RepositoryRoot.Of("tests", "cases", "builds"), "*.expected")
        .Where(f => !Regex.IsMatch(File.ReadAllText(f), "^fail", RegexOptions.Multiline)).Select(f => Path.GetFileNameWithoutExtension(f))
        .Order(StringComparer.Ordinal).First();

    private static YamlNode Read(string file)
    {
        var problems = new ProblemList();
        var root = YamlReader.Read(new SourceText(file, File.ReadAllText(RepositoryRoot.Of(file))), problems);
        Assert.Empty(problems.Sorted());
        return root!;
    }

    private static string? Text(YamlMap map, string key) => (map[key] as YamlScalar)?.Text;

    private static IEnumerable<YamlMap> AllSteps() =>
        ((YamlList)((YamlMap)((YamlMap)((YamlMap)Read(Workflow))["jobs"]!)["catalog"]!)["steps"]!).Items.Cast<YamlMap>();

    private static IEnumerable<(string Name, string Run)> Steps() =>
        AllSteps().Where(s => s["run"] is not null).Select(s => (Text(s, "name")!, Text(s, "run")!));

    // Stages everything, and gives the hook the staged files that it asks for; null when there is none.
    private (int Status, string Out, string Error)? Hook(YamlMap hook)
    {
        var staged = Bash("git add -A; git diff --cached --name-only").Out.Split('\n', StringSplitOptions.RemoveEmptyEntries);
        var files = staged.Where(f => Regex.IsMatch(f, Text(hook, "files")!)).ToList();
        if (files.Count == 0)
            return null;
        var arguments = ((YamlList)hook["args"]!).Items.Cast<YamlScalar>().Select(a => a.Text)
            .Concat(Text(hook, "pass_filenames") == "false" ? [] : files);
        return Bash($"{Text(hook, "entry")} {string.Join(' ', arguments)}");
    }

    private void Alter(string file, string old, string now)
    {
        var text = File.ReadAllText(_folder.Of(file));
        Assert.Contains(old, text, StringComparison.Ordinal);
        File.WriteAllText(_folder.Of(file), text.Replace(old, now, StringComparison.Ordinal));
    }

    private void Commit(string message)
    {
        _folder.Write("message.txt", message);
        var (status, _, error) =
            Bash("git add catalog rules && git -c user.name=Test -c user.email=test@example.org commit -q --allow-empty -F message.txt");
        Assert.True(status == 0, error);
    }

    private void Copy(params string[] entries)
    {
        foreach (var entry in entries)
        {
            var from = RepositoryRoot.Of(entry);
            foreach (var file in Directory.Exists(from) ? Directory.EnumerateFiles(from, "*", SearchOption.AllDirectories) : [from])
            {
                var relative = Path.GetRelativePath(RepositoryRoot.Path, file).Replace('\\', '/');
                if (relative.Contains("/bin/", StringComparison.Ordinal) || relative.Contains("/obj/", StringComparison.Ordinal))
                    continue;
                Directory.CreateDirectory(Path.GetDirectoryName(_folder.Of(relative))!);
                File.Copy(file, _folder.Of(relative));
            }
        }
        _folder.Write(".gitignore", File.ReadAllText(RepositoryRoot.Of(".gitignore")) + "/cache/\n/tools/\n/summary.md\n/message.txt\n");
        // What `pre-commit` has installed.
        _folder.Write("tools/fitcheck", $"#!/bin/sh\nexec dotnet '{Path.Combine(AppContext.BaseDirectory, "fitcheck.dll")}' \"$@\"\n");
        var (status, _, error) =
            Bash("chmod +x tools/fitcheck && git init -q && git add -A && git -c user.name=Test -c user.email=test@example.org commit "
                + "-qm 'Take over the catalog'");
        Assert.True(status == 0, error);
    }

    private (int Status, string Out, string Error) Bash(string command)
    {
        // The shell as the service starts it.
        var start = new ProcessStartInfo("bash", ["--noprofile", "--norc", "-e", "-o", "pipefail", "-c", command])
        {
            WorkingDirectory = _folder.Path,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
            UseShellExecute = false,
        };
        foreach (var entry in ((YamlMap)((YamlMap)Read(Workflow))["env"]!).Entries)
            start.Environment[entry.Key] = ((YamlScalar)entry.Value).Text;
        start.Environment["GITHUB_BASE_REF"] = "main";
        start.Environment["GITHUB_STEP_SUMMARY"] = _folder.Of("summary.md");
        start.Environment["FITCHECK_CACHE"] = _folder.Of("cache");
        start.Environment["PATH"] = $"{_folder.Of("tools")}:{Environment.GetEnvironmentVariable("PATH")}";
        // What only makes the build longer.
        start.Environment["Precompile"] = "false";
        start.Environment["RunAnalyzers"] = "false";
        start.Environment["MSBUILDDISABLENODEREUSE"] = "1";
        // Where a registry lacks a version that is locked, the service would stop, and the rest is tried all the same.
        if (!Hostile.Locks.AreServedHere)
            start.ArgumentList[^1] = command.Replace("-p:Locked=true", "", StringComparison.Ordinal);
        using var process = Process.Start(start)!;
        var error = process.StandardError.ReadToEndAsync();
        var output = process.StandardOutput.ReadToEnd();
        process.WaitForExit();
        return (process.ExitCode, output, error.Result);
    }
}
