using FitCheck.Facts;
using FitCheck.Foundation.Problems;
using FitCheck.Rules;
using FitCheck.Rules.Model;
using Xunit;

namespace FitCheck.Tests.Rules;

/// <summary>Runs the examples of every rule in the repository: a new rule file is tested without a line of C#.</summary>
public sealed class RuleExampleTests
{
    private static readonly ProblemList Problems = new();
    private static readonly RuleSet Rules = RuleSet.Load([RepositoryRoot.Of("rules")], FactRegistry.Declarations, Problems,
        checkTemplates: true);

    /// <summary>An id and the name of an example of that rule.</summary>
    public static TheoryData<string, string> Examples()
    {
        var rows = new TheoryData<string, string>();
        foreach (var rule in Rules.Rules)
        {
            foreach (var example in rule.Examples)
                rows.Add(rule.Id, example.Name);
        }
        return rows;
    }

    public static TheoryData<string> Ids() => [.. Rules.Rules.Select(r => r.Id)];

    [Fact]
    public void Every_rule_file_can_be_read() => Told(Problems.Sorted());

    [Theory]
    [MemberData(nameof(Examples))]
    public void An_example_gives_its_status(string id, string example)
    {
        var result = RuleExamples.Run(Rules.Find(id)!).First(r => r.Example.Name == example);
        Assert.Equal(result.Example.Expect, result.Actual);
    }

    [Theory]
    [MemberData(nameof(Ids))]
    public void A_rule_proves_itself_and_reads_well(string id) => Told(RuleChecks.Of(Rules.Find(id)!));

    // In full, so that the line to mend can be seen in the log.
    private static void Told(IReadOnlyList<Problem> problems) => Assert.True(problems.Count == 0, string.Join('\n', problems));
}
