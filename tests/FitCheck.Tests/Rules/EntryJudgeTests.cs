using FitCheck.Catalog;
using FitCheck.Evaluation;
using FitCheck.Facts;
using FitCheck.Facts.Values;
using FitCheck.Findings;
using FitCheck.Foundation.Problems;
using FitCheck.Rules;
using FitCheck.Tests.Entries;
using Xunit;

namespace FitCheck.Tests.Rules;

/// <summary>Lint looks at entries in brief first; it must find what judging every rule in full finds, no more and no less.</summary>
public sealed class EntryJudgeTests
{
    private static readonly Lazy<RuleSet> Rules = new(
        () => RuleSet.Load([RepositoryRoot.Of("rules")], FactRegistry.Declarations, new ProblemList()));

    public static TheoryData<string> Catalogs() =>
        [RepositoryRoot.Of("catalog"),
            .. Directory.GetDirectories(RepositoryRoot.Of("tests", "cases", "lint")).Order(StringComparer.Ordinal)];

    [Theory]
    [MemberData(nameof(Catalogs))]
    public void What_is_found_in_brief_is_what_is_found_in_full(string folder)
    {
        var catalog = PartsCatalog.Open([RepositoryRoot.Of("catalog"), folder], new ProblemList());
        var judge = new EntryJudge(Rules.Value);

        foreach (var table in EntryTables.Of(catalog))
        {
            var full = Rules.Value.Rules.Select(r => Judge.Evaluate(r, table, table.Key)).OfType<Finding>()
                .Where(f => f.Status is Status.Warn or Status.Fail);

            Assert.Equal(full.Select(f => (f.Rule, f.Message)), judge.Of(table).Select(p => (p.Rule!, p.Message)));
        }
    }

    [Theory]
    [MemberData(nameof(Catalogs))]
    public void What_is_found_in_a_class_at_once_is_what_is_found_one_by_one(string folder)
    {
        var catalog = PartsCatalog.Open([RepositoryRoot.Of("catalog"), folder], new ProblemList());
        var judge = new EntryJudge(Rules.Value);

        foreach (var (own, figures) in EntryTables.Classes(catalog))
        {
            var each = Enumerable.Range(0, figures.Count).SelectMany(i => judge.Of(figures.TableOf(i)));

            Assert.Equal(each.Select(p => p.ToString()), judge.Of(own, figures).Select(p => p.ToString()));
        }
    }
}
