using FitCheck.Facts;
using FitCheck.Foundation.Files;
using FitCheck.Foundation.Problems;
using FitCheck.Rules;
using FitCheck.Rules.Files;
using FitCheck.Rules.Model;
using FitCheck.Yaml;
using Xunit;

namespace FitCheck.Tests.Rules;

public sealed class AskedPartTests
{
    [Theory]
    [InlineData("{ kind: sundry, type: heat-shrink }", "heat-shrink", "with", null)]
    [InlineData("{ kind: sundry, type: [foam-tape, damping-sheet] }", "foam-tape or damping-sheet", "with", null)]
    [InlineData("{ kind: harness, goes: harness }", "harness", "harness", null)]
    [InlineData("{ kind: wiring, type: signal-cable, goes: extras, length: 5 m }", "signal-cable", "extras", 5.0)]
    public void A_rule_says_what_cures_it(string text, string words, string goes, double? length)
    {
        var (rule, problems) = Read(text);

        Assert.Empty(problems);
        Assert.Equal((words, goes, length), (rule!.AsksFor!.Words, rule.AsksFor.Goes, rule.AsksFor.Length));
        Assert.Contains($"asks for  {words}", Explain.Text(rule, FactRegistry.Declarations), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("heat-shrink", "`asks_for` of a rule needs a mapping such as `{ kind: sundry, type: heat-shrink }`, found `heat-shrink`")]
    [InlineData("{ type: heat-shrink }", "`asks_for` needs the key `kind`")]
    [InlineData("{ kind: sundri }", "did you mean `sundry`?")]
    [InlineData("{ kind: vehicle }", "not `vehicle`")]
    [InlineData("{ kind: sundry, tipe: x }", "`tipe` is no key of `asks_for`; did you mean `type`?")]
    [InlineData("{ kind: wiring, goes: fuse }", "not `fuse`")]
    [InlineData("{ kind: wiring, length: 5 }", "expected a length with its unit, such as `5 m`, found `5`")]
    [InlineData("{ kind: sundry, type: heat-shrinc }", "no sundry has the type `heat-shrinc`; did you mean `heat-shrink`?")]
    public void A_mistake_is_told_with_its_place(string text, string message)
    {
        var (_, problems) = Read(text);

        var problem = Assert.Single(problems);
        Assert.Contains(message, problem.Message, StringComparison.Ordinal);
        Assert.True(problem.At.Line > 1 && problem.At.Column > 0);
    }

    private static (Rule? Rule, IReadOnlyList<Problem> Problems) Read(string asked)
    {
        var problems = new ProblemList();
        var text = SampleRule.TooDeep.Replace("examples:", $"asks_for: {asked}\nexamples:", StringComparison.Ordinal);
        var rule = RuleReader.Read(YamlReader.Read(new SourceText("mount/too-deep.yaml", text), problems)!, FactRegistry.Declarations,
            problems);
        if (rule is not null)
            problems.AddRange(RuleChecks.Of(rule));
        return (rule, problems.Sorted());
    }
}
