using FitCheck.Catalog;
using FitCheck.Evaluation;
using FitCheck.Facts;
using FitCheck.Facts.Entries;
using FitCheck.Facts.Values;
using FitCheck.Findings;
using FitCheck.Foundation.Problems;
using FitCheck.Rules;
using Xunit;

namespace FitCheck.Tests.Rules;

/// <summary>Lint looks at entries in brief first; it must find what judging every rule in full finds, no more and no less.</summary>
public sealed class EntryJudgeTests
{
    public static TheoryData<string> Catalogs() =>
        [RepositoryRoot.Of("catalog"), .. Directory.GetDirectories(RepositoryRoot.Of("tests", "cases", "lint")).Order(StringComparer.Ordinal)];

    [Theory]
    [MemberData(nameof(Catalogs))]
    public void What_is_found_in_brief_is_what_is_found_in_full(string folder)
    {
        var rules = RuleSet.Load([RepositoryRoot.Of("rules")], FactRegistry.Declarations, new ProblemList());
        var catalog = PartsCatalog.Open([RepositoryRoot.Of("catalog"), folder], new ProblemList());
        var judge = new EntryJudge(rules);

        foreach (var table in Plausibility.Tables(catalog, _ => true, _ => true))
        {
            var full = rules.Rules.Select(r => Judge.Evaluate(r, table, table.Key)).OfType<Finding>().Where(f => f.Status is Status.Warn or Status.Fail);

            Assert.Equal(full.Select(f => (f.Rule, f.Message)), judge.Of(table).Select(p => (p.Rule!, p.Message)));
        }
    }

    [Theory]
    [MemberData(nameof(Catalogs))]
    public void What_is_found_in_a_class_at_once_is_what_is_found_one_by_one(string folder)
    {
        var catalog = PartsCatalog.Open([RepositoryRoot.Of("catalog"), folder], new ProblemList());
        var judge = new EntryJudge(RuleSet.Load([RepositoryRoot.Of("rules")], FactRegistry.Declarations, new ProblemList()));
        var samples = catalog.Ids.Select(catalog.Find).OfType<Entry>().SelectMany(FigureSample.Of).ToList();

        foreach (var own in samples.GroupBy(s => s.Within))
        {
            FigureSample[] members = [.. own];
            var facts = new FigureFacts(own.Key, Array.ConvertAll(members, m => m.Value), i => members[i]);
            var each = Enumerable.Range(0, members.Length).SelectMany(i => judge.Of(facts.TableOf(i)));

            Assert.Equal(each.Select(p => p.ToString()), judge.Of(own.Key, facts).Select(p => p.ToString()));
        }
    }
}
