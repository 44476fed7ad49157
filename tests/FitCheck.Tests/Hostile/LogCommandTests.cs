using System.Text.Json.Nodes;
using System.Text.RegularExpressions;
using System.Xml.Linq;
using FitCheck.Reports;
using FitCheck.Tests.Cli;
using Xunit;

namespace FitCheck.Tests.Hostile;

/// <summary>
/// What is printed lands in the log of a build server, which takes some lines for commands. GitHub: a line that begins with `::word`, white
/// space aside, and `##[word]` anywhere ("Workflow commands for GitHub Actions"; the second from memory of the runner's sources). Azure
/// Pipelines: `##vso[word]` anywhere ("Logging commands"). TeamCity: `##teamcity[word` ("Service messages").
/// </summary>
public sealed partial class LogCommandTests : IDisposable
{
    private const string Name = "::stop-commands::x";
    private const string Words = "##vso[task.setvariable]y ##teamcity[buildStop] ##[error]z";

    private readonly TemporaryFolder _folder = new();

    public LogCommandTests()
    {
        var build = File.ReadAllText(RepositoryRoot.Of("catalog", "builds", "tansy-bare-tweeter.yaml"));
        _folder.Write("a.yaml", Named(build, Name));
        _folder.Write("b.yaml", Named(build, $"{new string('a', 99)} {Name} {Words}"));
        _folder.Write("::error::c.yaml", Named(build, Words) + "\nnotes: \"one\\n::error::two\\r::error::three\"\n");
        _folder.Write("::error::bad.yaml", $"'{Words}': 1\n");
    }

    public static TheoryData<string> Commands
    {
        get
        {
            var all = new TheoryData<string>();
            foreach (var format in ReportList.Formats)
                foreach (var build in new[] { "a.yaml", "b.yaml", "::error::c.yaml" })
                    all.Add($"check {build} --format {format}");
            foreach (var command in new[] { "list", "suggest", "measure", "lint" })
                foreach (var build in new[] { "a.yaml", "b.yaml", "::error::c.yaml", "::error::bad.yaml", "::error::nowhere.yaml" })
                    all.Add($"{command} {build}");
            all.Add("list b.yaml --format csv");
            all.Add("list b.yaml --format markdown");
            all.Add("suggest b.yaml --format json");
            all.Add("check a.yaml --format ::error::x");
            all.Add("check a.yaml --catalog ::error::x");
            all.Add("explain ::error::x");
            all.Add("::error::x");
            return all;
        }
    }

    public void Dispose() => _folder.Dispose();

    [Theory]
    [MemberData(nameof(Commands))]
    public void No_line_is_a_command_of_a_build_server(string command)
    {
        var (status, output, error) = Run.InTime(_folder.Path, command.Split(' '));
        Assert.InRange(status, 0, 3);
        Assert.NotEmpty(output + error);
        foreach (var line in (output + "\n" + error).Split('\n', '\r'))
        {
            Assert.DoesNotMatch(Anywhere(), line);
            if (!command.EndsWith("github", StringComparison.Ordinal))
                Assert.DoesNotMatch(Beginning(), line);
            else if (Beginning().IsMatch(line))
                Assert.Matches("^::(error|warning|notice) file=", line);
        }
    }

    [Fact]
    public void What_a_program_reads_says_the_same_as_before()
    {
        var json = JsonNode.Parse(Run.InTime(_folder.Path, "check", "b.yaml", "--format", "json").Out)!;
        Assert.Contains(Words, (string)json["builds"]![0]!["name"]!, StringComparison.Ordinal);
        var xml = XDocument.Parse(Run.InTime(_folder.Path, "check", "b.yaml", "--format", "junit").Out);
        Assert.Contains(xml.Descendants("testsuite"), s => s.Attribute("name")!.Value.Contains(Words, StringComparison.Ordinal));
    }

    private static string Named(string build, string name) => NameLine().Replace(build, $"name: \"{name}\"");

    [GeneratedRegex(@"^\s*::", RegexOptions.CultureInvariant)]
    private static partial Regex Beginning();

    [GeneratedRegex(@"##[a-z]*\[", RegexOptions.CultureInvariant)]
    private static partial Regex Anywhere();

    [GeneratedRegex("^name:.*$", RegexOptions.Multiline | RegexOptions.CultureInvariant)]
    private static partial Regex NameLine();
}
