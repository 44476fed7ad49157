using FitCheck.Builds;
using FitCheck.Catalog;
using FitCheck.Evaluation;
using FitCheck.Facts;
using FitCheck.Foundation.Files;
using FitCheck.Foundation.Problems;
using FitCheck.Rules;
using FitCheck.Yaml;
using Xunit;

namespace FitCheck.Tests;

/// <summary>
/// Checks a build given as text against the repository's catalog, with entries replaced as a test needs, without the validator.
/// </summary>
internal static class Trial
{
    private static readonly Lazy<RuleSet> Rules = new(
        () => RuleSet.Load([RepositoryRoot.Of("rules")], FactRegistry.Declarations, new ProblemList()));

    /// <summary>The result of a build on the catalog, overlaid by entries (`drivers/id.yaml` → text).</summary>
    public static BuildResult Of(string build, params IEnumerable<(string File, string Text)> overlay) =>
        Judged(build, Rules.Value, overlay);

    /// <summary>The same, judged by other rules.</summary>
    public static BuildResult Judged(string build, RuleSet rules, params IEnumerable<(string File, string Text)> overlay)
    {
        using var folder = new TemporaryFolder();
        foreach (var (file, text) in overlay)
            folder.Write(file, text);
        var problems = new ProblemList();
        var catalog = PartsCatalog.Open([RepositoryRoot.Of("catalog"), folder.Path], problems);
        var root = YamlReader.Read(new SourceText("build.yaml", build), problems);
        var read = root is null ? null : BuildReader.Read(root, catalog, problems);
        Assert.Empty(problems.Sorted());
        return BuildEvaluation.Judged(read!, rules);
    }

    /// <summary>The text of an entry of the repository's catalog.</summary>
    public static string Entry(string file) => File.ReadAllText(RepositoryRoot.Of("catalog", file));
}
