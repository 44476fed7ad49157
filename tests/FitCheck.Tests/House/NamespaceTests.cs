using System.Text.RegularExpressions;
using FitCheck.Findings;
using FitCheck.Foundation.Problems;
using FitCheck.Physics.Geometry;
using FitCheck.Reports;
using Xunit;

namespace FitCheck.Tests.House;

public sealed class NamespaceTests
{
    // What a person takes in at a glance.
    private const int MostFiles = 20;

    // The program is loaded beside the tests; its folder has all that it is made of.
    private static readonly string[] Assemblies =
    [
        typeof(BodyProfile).Assembly.Location, typeof(Finding).Assembly.Location, typeof(ReportList).Assembly.Location,
        typeof(FitCheck.Cli.Commands.CheckCommand).Assembly.Location,
    ];

    private static readonly Lazy<NamespaceGraph> Graph = new(() => new NamespaceGraph(Assemblies));

    [Fact]
    public void No_namespaces_use_each_other()
    {
        var told = Graph.Value.Cycles()
            .Select(cycle => string.Join('\n', Graph.Value.Uses.Where(u => cycle.Contains(u.Key.From) && cycle.Contains(u.Key.To))
            .OrderBy(u => u.Value.Count).Select(u => $"{u.Key.From} uses {u.Key.To}: {string.Join(", ", u.Value.Take(5))}")));

        Assert.Empty(told);
    }

    [Fact]
    public void The_graph_sees_a_use_in_a_signature_in_a_body_and_across_assemblies()
    {
        var uses = Graph.Value.Uses;

        Assert.True(uses.ContainsKey((typeof(Check).Namespace!, "FitCheck.Evaluation")), "the stories evaluate builds");
        Assert.True(uses.ContainsKey(("FitCheck.Facts.Fitting", "FitCheck.Physics.Geometry")), "facts of fitting are geometry");
        Assert.True(uses.ContainsKey(("FitCheck.Cli.Commands", typeof(Check).Namespace!)), "commands tell the stories");
        Assert.True(uses.ContainsKey(("FitCheck.Yaml", typeof(Location).Namespace!)), "a reader tells problems");
    }

    [Fact]
    public void A_circle_is_found_and_a_line_is_none()
    {
        (string, string)[] line = [("a", "b"), ("b", "c"), ("a", "c")];

        Assert.Empty(NamespaceGraph.Cycles(line));
        Assert.Equal(["a", "b", "c"], Assert.Single(NamespaceGraph.Cycles([.. line, ("c", "a"), ("d", "a")])));
    }

    [Fact]
    public void A_namespace_is_its_folder()
    {
        var offenders =
            from file in Sources()
            let expected = string.Join('.', file.Split('/')[1..^1])
            let declared = Regex.Match(File.ReadAllText(RepositoryRoot.Of(file)), @"^namespace (?<space>[\w.]+);",
                RegexOptions.Multiline | RegexOptions.ExplicitCapture)
            where declared.Success && declared.Groups["space"].Value != expected
            select $"{file} is in {declared.Groups["space"].Value}";

        Assert.Empty(offenders);
    }

    [Fact]
    public void No_folder_has_more_files_than_a_person_takes_in()
    {
        var offenders = Sources().GroupBy(f => f[..f.LastIndexOf('/')]).Where(g => g.Count() > MostFiles)
            .Select(g => $"{g.Key}: {g.Count()} files");

        Assert.Empty(offenders);
    }

    private static IEnumerable<string> Sources() =>
        Directory.EnumerateFiles(RepositoryRoot.Of("src"), "*.cs", SearchOption.AllDirectories)
            .Select(file => Path.GetRelativePath(RepositoryRoot.Path, file).Replace('\\', '/'))
            .Where(file => !file.Contains("/bin/") && !file.Contains("/obj/"))
            .Order(StringComparer.Ordinal);
}
