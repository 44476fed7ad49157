using FitCheck.Facts;
using FitCheck.Findings;
using FitCheck.Rules.Conditions;
using FitCheck.Yaml;

namespace FitCheck.Rules;

/// <summary>What a rule gave for one of its examples.</summary>
/// <param name="Example">The row.</param>
/// <param name="Finding">Null when the rule didn't apply.</param>
/// <param name="Value">The value of the rule's fact in this row.</param>
public sealed record ExampleResult(RuleExample Example, Finding? Finding, FactValue Value)
{
    /// <summary>The status that came out, or null when the rule didn't apply.</summary>
    public Status? Actual => Finding?.Status;

    public bool IsAsExpected => Actual == Example.Expect;
}

/// <summary>Runs a rule's own examples, for tests and for lint.</summary>
public static class RuleExamples
{
    /// <summary>Every example with its outcome, in the order of the file.</summary>
    /// <param name="rule">The rule.</param>
    /// <param name="problems">Where a message that can't be rendered is told.</param>
    public static IReadOnlyList<ExampleResult> Run(Rule rule, ProblemList? problems = null) => [.. rule.Examples.Select(e => Run(rule, e, problems))];

    private static ExampleResult Run(Rule rule, RuleExample example, ProblemList? problems)
    {
        var table = new FactTable(rule.Subject, "example", example.Name, example.Facts) { At = example.At };
        var inputs = new FactInputs(rule.Scope, example.Facts);
        var value = example.Given ?? rule.Fact.Evaluate(inputs);
        var judgement = Judgement.Of(rule, inputs, example.Given, TakenAsTrue(rule, example, inputs));
        return new ExampleResult(example, judgement is null ? null : Judge.Find(rule, table, inputs, judgement, "example", problems), value);
    }

    // A row that gives the value itself is about the limits; facts of the condition that it leaves out are not its matter.
    private static bool? TakenAsTrue(Rule rule, RuleExample example, FactInputs inputs) =>
        example.Given is not null && rule.When is { } when && when.Names.Any(n => !example.Facts.ContainsKey(n)) && !when.Evaluate(inputs).IsKnown ? true : null;
}
