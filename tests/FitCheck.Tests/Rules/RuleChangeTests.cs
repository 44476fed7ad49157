using FitCheck.Evaluation;
using FitCheck.Facts;
using FitCheck.Findings;
using FitCheck.Foundation.Files;
using FitCheck.Foundation.Problems;
using FitCheck.Rules;
using FitCheck.Rules.Model;
using FitCheck.Schemas;
using FitCheck.Yaml;
using Xunit;

namespace FitCheck.Tests.Rules;

/// <summary>
/// A shop's directory over the one that comes with the program: limits moved, rules switched off, replaced or added, each accounted for.
/// </summary>
public sealed class RuleChangeTests : IDisposable
{
    private const string Moved = "id: mount/too-deep\nreason: Old glass wobbles.\nwarn: { below: 8 mm }\n";
    private const string Off = "id: mount/too-deep\nreason: We never cut.\noff: true\n";

    private readonly TemporaryFolder _folder = new();

    public void Dispose() => _folder.Dispose();

    [Fact]
    public void A_limit_is_moved_and_all_else_stays()
    {
        var rules = Load(out var problems, Moved);
        Assert.Empty(problems);
        var rule = Assert.Single(rules.Rules);
        Assert.Equal("below 8 mm", rule.Warn!.ToString());
        Assert.Equal("below 0 mm", rule.Fail!.ToString());
        Assert.EndsWith("shop/mount/too-deep.yaml", rule.Warn.At.File, StringComparison.Ordinal);
        var change = Assert.Single(rules.Changes);
        Assert.Equal("warns below 8 mm instead of below 3 mm", change.What);
        Assert.Equal("Old glass wobbles.", change.Reason);
        Assert.False(change.IsOff);
        Assert.Empty(RuleChecks.Of(rule));
    }

    [Fact]
    public void A_rule_is_switched_off()
    {
        var rules = Load(out var problems, Off);
        Assert.Empty(problems);
        Assert.Empty(rules.Rules);
        Assert.True(Assert.Single(rules.Changes).IsOff);
    }

    [Fact]
    public void A_whole_file_replaces_the_rule_and_a_new_id_adds_one()
    {
        _folder.Write("shop/mount/extra.yaml", SampleRule.TooDeep.Replace("mount/too-deep", "mount/extra", StringComparison.Ordinal));
        var rules = Load(out var problems,
            SampleRule.TooDeep.Replace("warn: { below: 3 mm }", "warn: { below: 5 mm }", StringComparison.Ordinal));
        Assert.Empty(problems);
        Assert.Equal(["mount/extra", "mount/too-deep"], rules.Rules.Select(r => r.Id), StringComparer.Ordinal);
        Assert.Equal(["added", "replaced: warns below 5 mm instead of below 3 mm"], rules.Changes.Select(c => c.What),
            StringComparer.Ordinal);
    }

    [Fact]
    public void The_first_directory_changes_nothing()
    {
        _folder.Write("base/mount/too-deep.yaml", SampleRule.TooDeep);
        Assert.Empty(RuleSet.Load([_folder.Of("base")], RuleTestFacts.Declared, new ProblemList()).Changes);
    }

    [Fact]
    public void A_limit_taken_away_takes_its_message_away()
    {
        var rule = Assert.Single(Load(out var problems, "id: mount/too-deep\nreason: r\nwarn: never\n").Rules);
        Assert.Empty(problems);
        Assert.Null(rule.Warn);
        Assert.Equal([Status.Pass, Status.Measure, Status.Fail], rule.Statuses);
    }

    [Fact]
    public void Examples_of_its_own_prove_the_new_limit()
    {
        var rule = Assert.Single(Load(out _, Moved + "examples:\n  - { name: on it, given: 8 mm, expect: warn }\n").Rules);
        Assert.Contains(RuleChecks.Of(rule), p => p.Message.Contains("`on it` gives pass, not warn", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("id: mount/too-deep\nreason: r\n", "1:1: error: this changes nothing; give `off: true`, or a limit in `warn` or `fail`")]
    [InlineData("id: mount/too-deep\noff: true\n", "1:1: error: a change of a rule needs the key `reason`")]
    [InlineData("id: mount/too-deep\nreason: r\noff: perhaps\nwarn: never\n", "3:6: error: `off` is true or false, not `perhaps`")]
    [InlineData("id: mount/too-deep\nreason: r\noff: true\nwarn: never\n",
        "4:1: error: the rule is switched off, so `warn` has no use; delete one of the two")]
    [InlineData("id: mount/too-deep\nreason: r\nwarm: never\noff: true\n",
        "3:1: error: `warm` is no key of a change of a rule; did you mean `warn`?")]
    [InlineData("id: mount/too-deep\nreason: r\nwarn: { below: 3 V }\n",
        "3:16: error: the fact is a number in mm, but this limit is a number in V")]
    [InlineData("id: mount/deep\nreason: r\noff: true\n",
        "1:5: error: a change of a rule begins with the rule's id, which is also its path: `id: mount/too-deep`")]
    public void A_mistake_is_told_where_it_stands(string change, string expected)
    {
        Load(out var problems, change);
        Assert.Contains(problems, p => p.ToString().EndsWith(expected, StringComparison.Ordinal));
    }

    [Fact]
    public void A_change_of_nothing_is_told()
    {
        _folder.Write("shop/mount/too-deap.yaml", "id: mount/too-deap\nreason: r\noff: true\n");
        Load(out var problems, Moved);
        Assert.EndsWith("no earlier directory of rules has `mount/too-deap`, which this file changes; did you mean `mount/too-deep`?",
            Assert.Single(problems).Message, StringComparison.Ordinal);
        var alone = new ProblemList();
        RuleSet.Load([_folder.Of("shop")], RuleTestFacts.Declared, alone);
        Assert.Contains(alone.Sorted(),
            p => p.Message.EndsWith("give the rules that it changes first: `--rules default --rules …`", StringComparison.Ordinal));
    }

    [Fact]
    public void The_report_and_a_waiver_say_what_is_off()
    {
        _folder.Write("shop/mount/glass-too-near.yaml", "id: mount/glass-too-near\nreason: Fixed windows.\noff: true\n");
        var problems = new ProblemList();
        var rules = RuleSet.Load([RepositoryRoot.Of("rules"), _folder.Of("shop")], FactRegistry.Declarations, problems);
        Assert.Empty(problems.Sorted());
        var text = File.ReadAllText(RepositoryRoot.Of("catalog/builds/tansy-door-swap.yaml"))
            + "\nwaive:\n  - { rule: mount/glass-too-near, reason: r }\n";
        var result = Trial.Judged(text, rules);
        Assert.DoesNotContain(result.Findings, f => f.Rule == "mount/glass-too-near");
        Assert.True(Assert.Single(result.RuleChanges).IsOff);
        Assert.Contains(result.Remarks, r => r.Message == "nothing to waive: `mount/glass-too-near` is switched off (Fixed windows.)");
    }

    [Fact]
    public void The_schema_for_editors_takes_what_the_reader_takes()
    {
        Assert.Empty(Violations(Moved));
        Assert.Empty(Violations(Off));
        Assert.NotEmpty(Violations("id: mount/too-deep\noff: true\n"));
        Assert.NotEmpty(Violations(Off + "fact: depth_margin\n"));
        Assert.NotEmpty(Violations(Off.Replace("true", "perhaps", StringComparison.Ordinal)));
    }

    private static IReadOnlyList<Problem> Violations(string yaml)
    {
        var problems = new ProblemList();
        new SchemaCheck().Check("rule-change", YamlReader.Read(new SourceText("r.yaml", yaml), problems)!, problems);
        return problems.Sorted();
    }

    private RuleSet Load(out IReadOnlyList<Problem> problems, string shop)
    {
        _folder.Write("base/mount/too-deep.yaml", SampleRule.TooDeep);
        _folder.Write("shop/mount/too-deep.yaml", shop);
        var list = new ProblemList();
        var rules = RuleSet.Load([_folder.Of("base"), _folder.Of("shop")], RuleTestFacts.Declared, list);
        problems = list.Sorted();
        return rules;
    }
}
