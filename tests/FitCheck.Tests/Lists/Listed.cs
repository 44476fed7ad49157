using FitCheck.Builds;
using FitCheck.Catalog;
using FitCheck.Facts;
using FitCheck.Foundation.Files;
using FitCheck.Foundation.Problems;
using FitCheck.Lists;
using FitCheck.Rules;
using FitCheck.Yaml;
using Xunit;

namespace FitCheck.Tests.Lists;

/// <summary>Lists the parts of a build given as text, on the repository's catalog with entries replaced as a test needs.</summary>
internal static class Listed
{
    private static readonly Lazy<RuleSet> Rules = new(
        () => RuleSet.Load([RepositoryRoot.Of("rules")], FactRegistry.Declarations, new ProblemList()));

    public static PartsList Of(string build, params IEnumerable<(string File, string Text)> overlay)
    {
        using var folder = new TemporaryFolder();
        foreach (var (file, text) in overlay)
            folder.Write(file, text);
        var problems = new ProblemList();
        var catalog = PartsCatalog.Open([RepositoryRoot.Of("catalog"), folder.Path], problems);
        var root = (YamlMap)YamlReader.Read(new SourceText("build.yaml", build), problems)!;
        var read = BuildReader.Read(root, catalog, problems);
        Assert.Empty(problems.Sorted());
        return AskedParts.Of(root, read!, catalog, Rules.Value);
    }

    /// <summary>What is asked for, as `2 × id`.</summary>
    public static IEnumerable<string> Asked(this PartsList list) => list.Asked.Select(a => $"{a.Line.Packs} × {a.Line.Part}");

    public static ListLine Line(this PartsList list, string part) => Assert.Single(list.Lines, l => l.Part == part);
}
