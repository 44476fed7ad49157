using FitCheck.Catalog;
using FitCheck.Cli.Commands;
using FitCheck.Evaluation;
using FitCheck.Facts;
using FitCheck.Facts.Values;
using FitCheck.Foundation;
using FitCheck.Foundation.Problems;
using FitCheck.Tests.Entries;
using Xunit;

namespace FitCheck.Tests.Facts;

public sealed class FactRegistryTests
{
    private static readonly Lazy<IReadOnlyList<FactTable>> Tables = new(() =>
    [
        .. new Once(new Folders([RepositoryRoot.Of("catalog")], [RepositoryRoot.Of("rules")]),
            ValidationCache.Nothing).Check(
                [.. Directory.GetFiles(RepositoryRoot.Of("catalog", "builds"), "*.yaml")
                    .Order(StringComparer.Ordinal)]).Result!.Builds.SelectMany(b => b.Facts),
        .. EntryTables.Of(
            PartsCatalog.Open([RepositoryRoot.Of("catalog"), .. Directory.GetDirectories(RepositoryRoot.Of("tests", "cases", "lint"))],
                new ProblemList())),
    ]);

    [Fact]
    public void A_name_is_declared_once_for_a_subject()
    {
        var twice = FactRegistry.Declarations.GroupBy(d => (d.Subject, d.Name)).Where(g => g.Count() > 1).Select(g => g.Key);

        Assert.Empty(twice);
    }

    [Fact]
    public void A_meaning_is_a_sentence() =>
        Assert.Empty(FactRegistry.Declarations.Where(d => !d.Meaning.EndsWith('.') || !char.IsUpper(d.Meaning[0])).Select(d => d.Name));

    [Fact]
    public void Every_computed_fact_is_declared_with_its_type()
    {
        var declared = FactRegistry.Declarations.ToDictionary(d => (d.Subject, d.Name), d => d.Type);
        var wrong = Tables.Value.SelectMany(t => t.Values.Select(v => (t.Subject, v.Key, v.Value.Type)))
            .Where(v => !declared.TryGetValue((v.Subject, v.Key), out var type) || type != v.Type).Distinct();

        Assert.Empty(wrong);
    }

    [Fact]
    public void Every_declared_fact_is_computed_for_some_build_or_entry()
    {
        var computed = Tables.Value.SelectMany(t => t.Values.Select(v => (t.Subject, v.Key))).ToHashSet();
        var never = FactRegistry.Declarations.Where(d => !computed.Contains((d.Subject, d.Name))).Select(d => $"{d.Subject} {d.Name}");

        Assert.Empty(never);
    }
}
