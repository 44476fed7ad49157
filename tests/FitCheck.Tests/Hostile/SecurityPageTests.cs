using System.Text.RegularExpressions;
using Xunit;

namespace FitCheck.Tests.Hostile;

/// <summary>The page that says what is trusted: each threat names a test that there is, and the workflow does what the page says.</summary>
public sealed partial class SecurityPageTests
{
    private static readonly string Page = File.ReadAllText(RepositoryRoot.Of(".github", "SECURITY.md"));

    private static string Workflow => File.ReadAllText(RepositoryRoot.Of(".github", "workflows", "catalog.yml"));

    [Fact]
    public void Each_threat_names_who_how_what_stops_it_and_tests_that_there_are()
    {
        var rows = Page.Split('\n').Where(l => l.StartsWith("| ", StringComparison.Ordinal)).Skip(1).ToList();
        Assert.InRange(rows.Count, 10, 50);
        var tests = typeof(SecurityPageTests).Assembly.GetTypes().SelectMany(t => t.GetMethods())
            .Where(m => m.IsDefined(typeof(FactAttribute), inherit: true)).Select(m => $"{m.DeclaringType!.Name}.{m.Name}").ToHashSet();
        foreach (var row in rows)
        {
            var cells = row.Trim('|').Split(" | ");
            Assert.Equal(4, cells.Length);
            Assert.All(cells, c => Assert.NotEmpty(c.Trim()));
            var named = Code().Matches(cells[3]).Select(m => m.Groups["name"].Value).ToList();
            Assert.NotEmpty(named);
            Assert.All(named, n => Assert.Contains(n, tests));
        }
    }

    [Fact]
    public void The_manual_leads_to_the_page() =>
        Assert.Contains("](.github/SECURITY.md)", File.ReadAllText(RepositoryRoot.Of("README.md")), StringComparison.Ordinal);

    [Fact]
    public void The_workflow_keeps_no_notes_for_others()
    {
        Assert.Contains("**Never share the folder of notes.**", Page, StringComparison.Ordinal);
        Assert.DoesNotContain("actions/cache", Workflow, StringComparison.Ordinal);
        Assert.DoesNotContain("cache:", Workflow, StringComparison.Ordinal);
        Assert.DoesNotContain("FITCHECK_CACHE", Workflow, StringComparison.Ordinal);
    }

    // What a change brings there would be quoted on the page of the run, or written over through a link.
    [Fact]
    public void The_workflow_writes_into_a_folder_that_no_change_brought()
    {
        var lines = Workflow.Split('\n').Select(l => l.Trim()).ToList();
        Assert.Equal("rm -rf out && mkdir out", lines.First(l => !l.StartsWith('#') && l.Contains(" out", StringComparison.Ordinal)));
    }

    // The command line goes before what the project says: of the codes of NuGet's audit, 1901 to 1904 are known vulnerabilities, 1900 a
    // registry that can't tell ("NuGet Warning NU1900" to "NU1904").
    [Fact]
    public void A_package_with_a_known_weakness_stops_the_workflow()
    {
        var build = Workflow.Split('\n').Single(l => l.Contains("dotnet build", StringComparison.Ordinal));
        var spared = Spared().Match(build).Groups["codes"].Value;
        Assert.NotEmpty(spared);
        Assert.DoesNotMatch("NU190[1-4]", spared);
    }

    [GeneratedRegex("`(?<name>[A-Za-z_]+\\.[A-Za-z_]+)`", RegexOptions.CultureInvariant)]
    private static partial Regex Code();

    [GeneratedRegex("-p:WarningsNotAsErrors=(?<codes>\\S+)", RegexOptions.CultureInvariant)]
    private static partial Regex Spared();
}
