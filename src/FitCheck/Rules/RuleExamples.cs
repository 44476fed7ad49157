using FitCheck.Facts.Values;
using FitCheck.Findings;
using FitCheck.Foundation.Problems;
using FitCheck.Rules.Conditions.Nodes;
using FitCheck.Rules.Model;
using FitCheck.Rules.Verdicts;

namespace FitCheck.Rules;

/// <summary>What a rule gave for one of its examples.</summary>
/// <param name="Example">The row.</param>
/// <param name="Finding">Null when the rule didn't apply.</param>
/// <param name="Value">The value of the rule's fact in this row.</param>
internal sealed record ExampleResult(RuleExample Example, Finding? Finding, FactValue Value)
{
    /// <summary>The status that came out, or null when the rule didn't apply.</summary>
    public Status? Actual => Finding?.Status;

    public bool IsAsExpected => Actual == Example.Expect;
}

/// <summary>Runs a rule's own examples, for tests and for lint.</summary>
internal static class RuleExamples
{
    /// <summary>Every example with its outcome, in the order of the file.</summary>
    /// <param name="rule">The rule.</param>
    /// <param name="problems">Where a message that can't be rendered is told.</param>
    public static IReadOnlyList<ExampleResult> Run(Rule rule, ProblemList? problems = null) =>
        [.. rule.Examples.Select(e => Run(rule, e, problems))];

    private static ExampleResult Run(Rule rule, RuleExample example, ProblemList? problems)
    {
        // What is given for a rule whose fact stands alone is what its condition sees too; what is given as unknown is not its matter.
        var facts = example.Given is { IsKnown: true } given && rule.Scope.Find(rule.Fact.Text) is { } alone
            && !example.Facts.ContainsKey(alone.Name)
            ? new Dictionary<string, FactValue>(example.Facts, StringComparer.Ordinal) { [alone.Name] = given } : example.Facts;
        var table = new FactTable(rule.Subject, "example", example.Name, facts) { At = example.At };
        var inputs = new FactInputs(rule.Scope, facts, absentIsOpen: true);
        var value = example.Given ?? rule.Fact.Evaluate(inputs);
        var judgement = Judgement.Of(rule, inputs, example.Given, TakenAsTrue(rule, inputs));
        return new ExampleResult(example, judgement is null ? null : Judge.Find(rule, table, inputs, judgement, "example", problems),
            value);
    }

    // Facts of the condition that a row leaves out are not its matter; one that it gives as unknown is.
    private static bool? TakenAsTrue(Rule rule, FactInputs inputs) =>
        rule.When is { } when && !when.Evaluate(inputs).IsKnown && when.Names.All(n => inputs.IsOpen(n) || inputs.Of(n).IsKnown) ? true
            : null;
}
