using FitCheck.Catalog;
using FitCheck.Cli.Commands;
using FitCheck.Evaluation;
using FitCheck.Findings;
using FitCheck.Foundation;
using FitCheck.Foundation.Problems;
using Xunit;

namespace FitCheck.Tests;

/// <summary>The commented starting files that `fitcheck new` prints: each validates as it stands.</summary>
public sealed class StarterTests
{
    private static readonly Lazy<IReadOnlyList<Problem>> Problems = new(LintWithAllStarters);

    public static TheoryData<string> PartKinds() => [.. Kinds.All.Select(k => k.Kind)];

    [Theory]
    [MemberData(nameof(PartKinds))]
    public void A_part_starter_is_a_valid_entry_under_its_id(string kind) =>
        Assert.Equal([],
            Problems.Value.Where(
                p => p.At.File.EndsWith($"/{Kinds.All.First(k => k.Kind == kind).Folder}/{IdOf(kind)}.yaml", StringComparison.Ordinal))
                    .Select(p => p.ToString()));

    [Fact]
    public void The_build_starter_is_a_build_with_nothing_to_object_to()
    {
        var outcome = new Once(new Folders([RepositoryRoot.Of("catalog")], [RepositoryRoot.Of("rules")]),
            ValidationCache.Nothing).Check([StarterOf("build")]);
        Assert.Equal([], outcome.Problems.Select(p => p.ToString()));
        Assert.Equal(Status.Pass, Assert.Single(outcome.Result!.Builds).Verdict);
    }

    [Fact]
    public void Every_starter_is_of_a_kind_that_new_prints() =>
        Assert.Equal(
            Kinds.All.Select(k => k.Kind).Append("build").Order(StringComparer.Ordinal),
            Directory.GetFiles(RepositoryRoot.Of("catalog", "starters")).Select(f => Path.GetFileNameWithoutExtension(f))
                .Order(StringComparer.Ordinal), StringComparer.Ordinal);

    private static IReadOnlyList<Problem> LintWithAllStarters()
    {
        var overlay = Directory.CreateTempSubdirectory("fitcheck-starters-").FullName;
        try
        {
            foreach (var (folder, kind) in Kinds.All)
            {
                Directory.CreateDirectory(Path.Combine(overlay, folder));
                File.Copy(StarterOf(kind), Path.Combine(overlay, folder, IdOf(kind) + ".yaml"));
            }
            return Lint.Run([StarterOf("build")], new Folders([RepositoryRoot.Of("catalog"), overlay], [RepositoryRoot.Of("rules")]),
                ValidationCache.Nothing).Problems;
        }
        finally
        {
            Directory.Delete(overlay, recursive: true);
        }
    }

    private static string IdOf(string kind) =>
        File.ReadLines(StarterOf(kind)).First(l => l.StartsWith("id: ", StringComparison.Ordinal))["id: ".Length..];

    private static string StarterOf(string kind) => RepositoryRoot.Of("catalog", "starters", kind + ".yaml");
}
