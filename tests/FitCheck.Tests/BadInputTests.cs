using System.Text.RegularExpressions;
using FitCheck.Cli.Commands;
using FitCheck.Evaluation;
using FitCheck.Foundation;
using Xunit;

namespace FitCheck.Tests;

/// <summary>
/// Each folder of tests/cases/bad holds a build (and perhaps a catalog or rules that overlay the repository's) and expected.txt: every
/// problem, one a line, as the program must tell it. A line between slashes is a regular expression.
/// </summary>
public sealed class BadInputTests
{
    private static readonly string Cases = RepositoryRoot.Of("tests", "cases", "bad");

    public static TheoryData<string> Names =>
        [.. Directory.GetDirectories(Cases).Select(d => Path.GetFileName(d)).Order(StringComparer.Ordinal)];

    [Theory, MemberData(nameof(Names))]
    public void Bad_input_is_told_whole_and_with_its_place(string name)
    {
        var folder = Path.Combine(Cases, name);
        var outcome = new Once(new Folders(Overlaid(folder, "catalog"), Overlaid(folder, "rules")),
            ValidationCache.Nothing).Check([Path.Combine(folder, "build.yaml")]);

        Assert.Null(outcome.Result);
        var told = outcome.Problems.Select(p => p.ToString().Replace(folder.Replace('\\', '/') + "/", "", StringComparison.Ordinal))
            .ToList();
        var expected = File.ReadAllLines(Path.Combine(folder, "expected.txt"));
        Assert.NotEmpty(expected);
        Assert.True(expected.Length == told.Count && expected.Zip(told).All(x => Matches(x.First, x.Second)),
            $"expected\n{string.Join('\n', expected)}\n\ntold\n{string.Join('\n', told)}");
    }

    private static string[] Overlaid(string folder, string kind) =>
        Directory.Exists(Path.Combine(folder, kind)) ? [RepositoryRoot.Of(kind), Path.Combine(folder, kind)] : [RepositoryRoot.Of(kind)];

    private static bool Matches(string expected, string told) => expected.StartsWith('/') && expected.EndsWith('/')
        ? Regex.IsMatch(told, $"^{expected[1..^1]}$", RegexOptions.None, TimeSpan.FromSeconds(1))
        : expected == told;
}
