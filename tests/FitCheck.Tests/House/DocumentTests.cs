using System.Text.RegularExpressions;
using FitCheck.Cli.Commands;
using FitCheck.Evaluation;
using FitCheck.Facts;
using FitCheck.Foundation;
using FitCheck.Foundation.Files;
using FitCheck.Foundation.Problems;
using FitCheck.Reports;
using FitCheck.Reports.Format;
using FitCheck.Rules;
using FitCheck.Rules.Files;
using FitCheck.Rules.Model;
using FitCheck.Yaml;
using Xunit;

namespace FitCheck.Tests.House;

/// <summary>What README.md and DEVELOPERS.md show is what happens.</summary>
public sealed class DocumentTests
{
    private static readonly Folders Repository = new([RepositoryRoot.Of("catalog")], [RepositoryRoot.Of("rules")]);

    [Fact]
    public void The_sample_in_the_readme_is_what_the_program_says()
    {
        const string build = "catalog/builds/tansy-bare-tweeter.yaml";
        var result = new Once(Repository, ValidationCache.Nothing).Check([RepositoryRoot.Of(build)]).Result!;
        using var text = new StringWriter { NewLine = "\n" };
        ReportList.Find("text")!.Write(result, ReportOptions.Default, text);

        Assert.Equal(text.ToString().Replace(RepositoryRoot.Path.Replace('\\', '/') + "/", "", StringComparison.Ordinal),
            Block("README.md", "text", 0));
    }

    [Fact]
    public void What_lint_says_in_the_readme_is_what_it_says()
    {
        var told = new[] { "resonance", "cutout-in-inches" }.SelectMany(name =>
        {
            var folder = RepositoryRoot.Of("tests", "cases", "lint", name).Replace('\\', '/');
            return Lint.Run([], Repository with { Catalog = [.. Repository.Catalog, folder] },
                ValidationCache.Nothing).Problems.Select(p => p.ToString().Replace(folder + "/", "", StringComparison.Ordinal));
        }).ToList();

        Assert.All(Block("README.md", "text", 2).Split('\n', StringSplitOptions.RemoveEmptyEntries), line => Assert.Contains(line, told));
    }

    [Fact]
    public void The_rule_in_the_developers_guide_keeps_its_examples()
    {
        var problems = new ProblemList();
        var root = YamlReader.Read(new SourceText("rules/mount/heavy-tilt.yaml", Block("DEVELOPERS.md", "yaml", 0)), problems)!;
        var rule = RuleReader.Read(root, FactRegistry.Declarations, problems);

        Assert.Empty(problems.Sorted());
        Assert.Empty(RuleChecks.Of(rule!));
        Assert.All(RuleExamples.Run(rule!), r => Assert.True(r.IsAsExpected, r.Example.Name));
    }

    [Fact]
    public void The_library_is_used_as_the_readme_shows()
    {
        using var folder = new TemporaryFolder();
        foreach (var name in new[] { "catalog", "rules" })
            Directory.CreateSymbolicLink(folder.Of(name), RepositoryRoot.Of(name));
        File.Copy(RepositoryRoot.Of("catalog", "builds", "tansy-bare-tweeter.yaml"), folder.Of("build.yaml"));

        var (status, output, error) = ReadmeProgram.Run(Block("README.md", "csharp", 0), folder.Path);

        Assert.Equal((0, ""), (status, error));
        Assert.Contains("fail tweeter/full-range-feed front-tweeter-left: ", output, StringComparison.Ordinal);
        Assert.Contains("vehicle: tansy-hatch\n\nfit:\n  - {at: [front-door-left, front-door-right], driver: ",
            output.ReplaceLineEndings("\n"), StringComparison.Ordinal);
    }

    // Made of the program's own drawing and its own style sheet; text that is not there can't be missed by those who don't see it.
    [Fact]
    public void The_picture_in_the_readme_is_the_programs_own_drawing()
    {
        var readme = File.ReadAllText(RepositoryRoot.Of("README.md"));
        var picture = Regex.Match(readme, @"<img src=""([^""]+\.svg)""[^>]* alt=""([^""]+)"">");
        var (file, words) = (picture.Groups[1].Value, picture.Groups[2].Value);

        Assert.Equal("reports/readme/door.svg", file);
        Assert.InRange(words.Length, 40, 300);
        Assert.InRange(readme[..picture.Index].Count(c => c == '\n'), 0, 12);
        var drawn = ReadmePicture.Drawn();
        var received = RepositoryRoot.Of(file.Replace(".svg", ".received.svg", StringComparison.Ordinal));
        File.WriteAllText(received, drawn); // look at it, and rename it if it is right
        Assert.Equal(drawn, File.ReadAllText(RepositoryRoot.Of(file)));
        File.Delete(received);
    }

    [Fact]
    public void Links_within_the_readme_lead_to_a_heading()
    {
        var readme = File.ReadAllText(RepositoryRoot.Of("README.md"));
        var headings = Regex.Matches(readme, "^#+ (?<words>.+)$", RegexOptions.Multiline)
            .Select(h => Regex.Replace(h.Groups["words"].Value.ToLowerInvariant(), "[^a-z0-9 -]", "").Replace(' ', '-'));
        var links = Regex.Matches(readme, @"\]\(#([^)]+)\)").Select(l => l.Groups[1].Value).ToList();

        Assert.NotEmpty(links);
        Assert.All(links, l => Assert.Contains(l, headings));
    }

    private static string Block(string file, string language, int index) =>
        Regex.Matches(File.ReadAllText(RepositoryRoot.Of(file)), $"```{language}\n(.*?)```",
            RegexOptions.Singleline)[index].Groups[1].Value;
}
