using System.Diagnostics;
using System.Text.RegularExpressions;
using System.Xml.Linq;
using Xunit;

namespace FitCheck.Tests.Hostile;

/// <summary>What comes from a registry is what was looked at: packages by version and hash, the SDK by its number.</summary>
public sealed partial class SupplyTests
{
    [Fact]
    public void Every_project_names_its_packages_by_version_and_hash()
    {
        var central = XDocument.Load(RepositoryRoot.Of("Directory.Packages.props")).Descendants("PackageVersion")
            .ToDictionary(p => (string)p.Attribute("Include")!, p => (string)p.Attribute("Version")!, StringComparer.Ordinal);
        foreach (var project in Locks.Projects().Except(Locks.Without))
        {
            Assert.True(File.Exists(Locks.Of(project)), $"{project} has no lock file; DEVELOPERS.md says how it is written");
            // No host and no folder: a package is the same wherever it comes from.
            Assert.DoesNotMatch("://|nupkg|[A-Z]:\\\\", File.ReadAllText(Locks.Of(project)));
            foreach (var (name, type, resolved, hash) in Locks.Packages(Locks.Of(project)))
            {
                if (type == "Direct")
                    Assert.Equal((project, name, central[name]), (project, name, resolved));
                // SHA-512 in Base64
                Assert.Equal(64, Convert.FromBase64String(hash).Length);
            }
        }
        Assert.All(Locks.Without, p => Assert.False(File.Exists(Locks.Of(p)), $"{p} has a lock file, which holds on one machine alone"));
    }

    [Fact]
    public void What_is_locked_is_what_the_projects_ask_for()
    {
        if (!Locks.AreServedHere)
            return;
        using var copy = Copied();
        var (status, told) = Restore(copy, "FitCheck.sln", "-p:Locked=true", "--locked-mode");
        Assert.True(status == 0, told);
    }

    // NU1403: "The package's content hash doesn't match" (NuGet's list of errors and warnings).
    [Fact]
    public void Another_package_of_the_same_version_is_refused_where_packages_are_locked()
    {
        using var copy = Copied();
        var file = copy.Of("src/FitCheck.Cli/packages.lock.json");
        var text = File.ReadAllText(file);
        var hash = Locks.Packages(file).Single(p => p.Name == "Spectre.Console").Hash;
        File.WriteAllText(file, text.Replace(hash, Convert.ToBase64String(new byte[64]), StringComparison.Ordinal));

        var (status, told) = Restore(copy, "src/FitCheck.Cli", "-p:Locked=true", "--locked-mode");
        Assert.NotEqual(0, status);
        Assert.Contains(Locks.AreServedHere ? "NU1403" : "error NU", told, StringComparison.Ordinal);
        // Nobody else waits for a registry that has every version.
        (status, told) = Restore(copy, "src/FitCheck.Cli");
        Assert.True(status == 0, told);
    }

    // NU1004: "The packages lock file is inconsistent with the project dependencies so restore can't be run in locked mode" (same list).
    [Fact]
    public void Another_version_than_the_locked_one_is_refused_where_packages_are_locked()
    {
        using var copy = Copied();
        var central = copy.Of("Directory.Packages.props");
        var text = File.ReadAllText(central);
        File.WriteAllText(central, Spectre().Replace(text, "Include=\"Spectre.Console\" Version=\"0.49.1\"", 1));

        var (status, told) = Restore(copy, "src/FitCheck.Cli", "-p:Locked=true", "--locked-mode");
        Assert.NotEqual(0, status);
        Assert.Contains("NU1004", told, StringComparison.Ordinal);
    }

    [Fact]
    public void The_workflow_restores_what_is_locked_on_one_SDK()
    {
        var workflow = File.ReadAllText(RepositoryRoot.Of(".github", "workflows", "catalog.yml"));
        foreach (var build in workflow.Split('\n').Where(l => Fetching().IsMatch(l)))
        {
            Assert.Contains("-p:Locked=true", build, StringComparison.Ordinal);
            Assert.Contains("-p:RestoreLockedMode=true", build, StringComparison.Ordinal);
            // Its compilers are no packages of a project, and so in no lock file.
            Assert.Contains("-p:Precompile=false", build, StringComparison.Ordinal);
        }
        var sdk = Sdk().Match(workflow);
        Assert.True(sdk.Success, "the workflow names no SDK to the last number");
        Assert.DoesNotContain("global-json-file", workflow, StringComparison.Ordinal);
        // A newer SDK of the same .NET is no other one (global.json: latestFeature).
        var least = Version.Parse(Sdk("\"version\": ").Match(File.ReadAllText(RepositoryRoot.Of("global.json"))).Groups["version"].Value);
        var named = Version.Parse(sdk.Groups["version"].Value);
        Assert.True(named >= least && (named.Major, named.Minor) == (least.Major, least.Minor), $"{named} for {least}");
    }

    [Fact]
    public void The_workflow_names_the_commit_of_each_action()
    {
        var actions = File.ReadAllLines(RepositoryRoot.Of(".github", "workflows", "catalog.yml"))
            .Where(l => l.Contains("uses:", StringComparison.Ordinal)).ToList();
        Assert.NotEmpty(actions);
        Assert.All(actions, a => Assert.Matches("uses: [a-z-]+(/[a-z-]+)+@[0-9a-f]{40} # v[0-9]+\\.[0-9]+\\.[0-9]+$", a));
    }

    private static TemporaryFolder Copied()
    {
        var folder = new TemporaryFolder();
        var files = Locks.Projects().SelectMany(p => new[] { p, Path.GetRelativePath(RepositoryRoot.Path, Locks.Of(p)) })
            .Concat(["FitCheck.sln", "global.json", "Directory.Build.props", "Directory.Packages.props", "src/Directory.Build.props",
                "tests/Directory.Build.targets", "src/FitCheck.Cli/Precompile/Precompile.targets"]);
        foreach (var file in files.Where(f => File.Exists(RepositoryRoot.Of(f))))
            folder.Write(file, File.ReadAllText(RepositoryRoot.Of(file)));
        return folder;
    }

    private static (int Status, string Told) Restore(TemporaryFolder copy, string what, params string[] options)
    {
        var start = new ProcessStartInfo("dotnet", ["restore", copy.Of(what), .. options])
        {
            RedirectStandardOutput = true,
            RedirectStandardError = true,
            UseShellExecute = false,
        };
        start.Environment["MSBUILDDISABLENODEREUSE"] = "1";
        foreach (var property in new[] { "Locked", "RestoreLockedMode" })
            start.Environment.Remove(property);
        using var process = Process.Start(start)!;
        var error = process.StandardError.ReadToEndAsync();
        var output = process.StandardOutput.ReadToEnd();
        process.WaitForExit();
        return (process.ExitCode, output + error.Result);
    }

    private static Regex Sdk(string before) => new(before + "\"(?<version>[0-9.]+)\"", RegexOptions.CultureInvariant);

    [GeneratedRegex("Include=\"Spectre.Console\" Version=\"[^\"]+\"", RegexOptions.CultureInvariant)]
    private static partial Regex Spectre();

    [GeneratedRegex(@"\bdotnet (build|restore|publish|pack|run|test)\b", RegexOptions.CultureInvariant | RegexOptions.ExplicitCapture)]
    private static partial Regex Fetching();

    [GeneratedRegex(@"dotnet-version: (?<version>\d+\.\d+\.\d+)\s", RegexOptions.CultureInvariant)]
    private static partial Regex Sdk();
}
