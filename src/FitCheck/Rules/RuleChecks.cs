using FitCheck.Facts.Values;
using FitCheck.Findings;
using FitCheck.Foundation.Problems;
using FitCheck.Rules.Conditions;
using FitCheck.Rules.Model;

namespace FitCheck.Rules;

/// <summary>
/// What a rule has to keep beyond being readable: it proves itself by its examples, and it reads well. For lint and for tests.
/// </summary>
internal static class RuleChecks
{
    // A waiver of `mount/too-deep` reads right; one of `mount/use-spacer` says the opposite of what is meant.
    private static readonly string[] AdviceWords = ["use-", "add-", "avoid-", "prefer-", "check-", "no-", "should-"];

    /// <summary>Every problem of the rule, in the order of the file.</summary>
    public static IReadOnlyList<Problem> Of(Rule rule)
    {
        var problems = new ProblemList(ProblemKind.BrokenRule);
        Name(rule, problems);
        Sentence(rule, "advice", rule.Advice, problems);
        Sentence(rule, "why", rule.Why, problems);
        MessageVariables.Check(rule, problems);
        AskedPart.Check(rule, problems);
        var results = RuleExamples.Run(rule, problems);
        foreach (var wrong in results.Where(r => !r.IsAsExpected))
            problems.Error(wrong.Example.At,
                $"the example `{wrong.Example.Name}` gives {Word(wrong.Actual)}, not {Word(wrong.Example.Expect)}");
        // A shop that moves a limit may leave the examples to those who wrote the rule.
        if (rule.IsChanged && rule.Examples.Count == 0)
            return problems.Sorted();
        foreach (var status in rule.Statuses.Where(s => !rule.Examples.Any(e => e.Expect == s)))
            problems.Error(rule.PlaceOf("examples"), $"no example shows {status.Word()}");
        foreach (var bound in Constants(rule).Where(b => !results.Any(r => IsOn(r.Value, b))))
            problems.Error(bound.At, $"no example stands exactly on this limit, `{bound.Text}`");
        return problems.Sorted();
    }

    private static void Name(Rule rule, ProblemList problems)
    {
        var slug = rule.Id[(rule.Id.IndexOf('/', StringComparison.Ordinal) + 1)..];
        if (Array.Find(AdviceWords, w => slug.StartsWith(w, StringComparison.Ordinal)) is { } word)
            problems.Error(rule.PlaceOf("id"), $"a rule is named after the defect, not after the advice; `{slug}` begins with `{word}`");
    }

    private static void Sentence(Rule rule, string key, string text, ProblemList problems)
    {
        if (!text.EndsWith('.'))
            problems.Error(rule.PlaceOf(key), $"`{key}` is a sentence and ends with a full stop");
    }

    private static IEnumerable<Expression> Constants(Rule rule) =>
        new[] { rule.Fail, rule.Warn }.OfType<Threshold>().SelectMany(t => new[] { t.Below, t.Above }).OfType<Expression>()
            .Where(b => b.Constant?.Number is not null);

    private static bool IsOn(FactValue value, Expression bound) =>
        value.Number is { IsExact: true } number
            && Comparison.Near(number.Value, bound.Constant!.Number!.Value.Value, value.Type.Dimension);

    private static string Word(Status? status) => status?.Word() ?? "none";
}
