using FitCheck.Evaluation;
using FitCheck.Facts;
using FitCheck.Facts.Values;
using FitCheck.Foundation;
using FitCheck.Foundation.Problems;
using FitCheck.Rules;
using FitCheck.Rules.Files;
using Xunit;

namespace FitCheck.Tests.Entries;

/// <summary>
/// Each folder of tests/cases/lint is a catalog with one defect, laid over the repository's. expected.txt has the working by hand after
/// `#`, and then all that must be told: place, severity, rule, and words that the message must have, the two numbers among them.
/// </summary>
public sealed class PlausibilityTests
{
    private static readonly string Cases = RepositoryRoot.Of("tests", "cases", "lint");
    private static readonly Lazy<RuleSet> Rules = new(
        () => RuleSet.Load([RepositoryRoot.Of("rules")], FactRegistry.Declarations, new ProblemList()));

    public static TheoryData<string> Names =>
        [.. Directory.GetDirectories(Cases).Select(d => Path.GetFileName(d)).Order(StringComparer.Ordinal)];

    [Theory, MemberData(nameof(Names))]
    public void A_defect_is_told_at_its_value_with_both_numbers(string name)
    {
        var folder = Path.Combine(Cases, name).Replace('\\', '/');
        using var cache = new TemporaryFolder();
        var told = Lint.Run([], With(folder), ValidationCache.In(cache.Path)).Problems;
        var problems = told.Where(p => p.At.File.StartsWith(folder + "/", StringComparison.Ordinal)).OrderBy(p => p.At)
            .ThenBy(p => p.Rule, StringComparer.Ordinal).ToList();
        var expected = File.ReadAllLines(Path.Combine(folder, "expected.txt")).Where(l => !l.StartsWith('#')).ToList();

        Assert.NotEmpty(expected);
        Assert.True(expected.Count == problems.Count && expected.Zip(problems).All(x => Matches(x.First, x.Second, folder)),
            $"expected\n{string.Join('\n', expected)}\n\ntold\n{string.Join('\n', problems)}");
        Assert.All(problems, p => Assert.Contains(p.Related, r => r.At.File.Contains("/rules/data/", StringComparison.Ordinal)));
        Assert.Equal(told.Select(Whole), Lint.Run([], With(folder), ValidationCache.In(cache.Path)).Problems.Select(Whole));
    }

    [Fact]
    public void Every_rule_of_the_catalog_is_broken_by_some_case()
    {
        var broken = Directory.GetFiles(Cases, "expected.txt", SearchOption.AllDirectories).SelectMany(File.ReadAllLines)
            .Where(l => !l.StartsWith('#'))
            .Select(l => l.Split(": ")[2]).ToHashSet(StringComparer.Ordinal);

        Assert.Empty(Rules.Value.Rules.Where(r => r.Id.StartsWith("data/", StringComparison.Ordinal)).Select(r => r.Id).Except(broken));
    }

    [Fact]
    public void Our_own_catalog_has_three_oddities_and_all_are_meant()
    {
        var told = Lint.Run([], With(), ValidationCache.Nothing).Problems;

        Assert.Equal(
            // shown by the builds corvid-boost-woofers, tansy-unprinted-limit and sedge-bold-cable
            ["data/resistance-implausible pellworth-p165-boost.yaml", "data/lowest-crossover-missing tamsin-t25.yaml",
                "data/claim-above-gauge power-cable-8awg-300a-5m.yaml"],
            told.Select(p => $"{p.Rule} {Path.GetFileName(p.At.File)}"));
    }

    [Fact]
    public void A_rule_of_the_catalog_is_not_read_for_a_check_of_known_inputs()
    {
        var known = RuleSet.Load(RuleBytes.Of([RepositoryRoot.Of("rules")], new ProblemList()), FactRegistry.Declarations,
            new ProblemList(), examples: false, unless: s => s.IsOfCatalog());

        Assert.Equal(Rules.Value.Rules.Where(r => !r.Subject.IsOfCatalog()).Select(r => r.Id), known.Rules.Select(r => r.Id));
    }

    [Fact]
    public void A_rule_of_builds_is_not_read_for_a_lint_of_entries_with_known_rules()
    {
        var known = RuleSet.Load(RuleBytes.Of([RepositoryRoot.Of("rules")], new ProblemList()), FactRegistry.Declarations,
            new ProblemList(), examples: false, unless: s => !s.IsOfEntries());

        Assert.Equal(Rules.Value.Rules.Where(r => r.Subject.IsOfEntries()).Select(r => r.Id), known.Rules.Select(r => r.Id));
    }

    [Fact]
    public void The_second_of_two_numbers_is_told_beside_the_first()
    {
        var folder = Path.Combine(Cases, "resistance");
        var problem = Assert.Single(Lint.Run([], With(folder), ValidationCache.Nothing).Problems,
            p => p.At.File.Contains("bad-woofer", StringComparison.Ordinal));

        // line 12 of the case: `impedance: 4 ohm`
        Assert.Contains(problem.Related, r => r.What == "rated impedance: 4 ohm" && r.At.Line == 12 && r.At.Column == 12);
    }

    private static Folders With(params string[] folders) => new([RepositoryRoot.Of("catalog"), .. folders], [RepositoryRoot.Of("rules")]);

    private static string Whole(Problem told) =>
        string.Join("\n  ", [$"{told} ({told.Code}, {told.Subject})", .. told.Related.Select(r => $"{r.At}: {r.What}")]);

    private static bool Matches(string expected, Problem told, string folder)
    {
        var parts = expected.Split(": ", 4);
        return told.At.ToString().Replace(folder + "/", "", StringComparison.Ordinal) == parts[0]
            && told.Severity.ToString().Equals(parts[1], StringComparison.OrdinalIgnoreCase)
            && told.Rule == parts[2] && parts[3].Split("; ").All(w => told.Message.Contains(w, StringComparison.Ordinal));
    }
}
