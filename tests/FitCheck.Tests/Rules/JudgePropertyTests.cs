using CsCheck;
using FitCheck.Facts.Values;
using FitCheck.Findings;
using FitCheck.Physics.Quantities;
using FitCheck.Rules;
using FitCheck.Rules.Model;
using Xunit;
using static FitCheck.Tests.Rules.RuleTestFacts;

namespace FitCheck.Tests.Rules;

/// <summary>What holds for any value.</summary>
public sealed class JudgePropertyTests
{
    private static readonly Gen<FactValue> Depth =
        from value in Gen.Double[-50, 50]
        from down in Gen.Double[0, 10]
        from up in Gen.Double[0, 10]
        select Mm(value - down, value, value + up);

    private static readonly Gen<Rule> AnyRule =
        from warn in OneOf("never", "{ below: 3 mm }", "{ below: 3 mm, above: 20 mm }", "{ below: depth_needed }")
        from fail in OneOf("{ below: 0 mm }", "{ above: 30 mm }", "{ above: depth_needed + 30 mm }")
        from fact in OneOf("depth_margin", "depth_margin + 1 mm", "max(depth_margin, depth_available)", "-depth_margin")
        select Rule(SampleRule.About(fact, warn, fail));

    private static Gen<string> OneOf(params string[] values) => Gen.Int[0, values.Length - 1].Select(i => values[i]);

    [Fact]
    public void Nothing_passes_that_rests_on_a_guess_or_a_gap() =>
        Gen.Select(AnyRule, Depth, Depth, Depth, Gen.Int[0, 5]).Sample((rule, a, b, c, doubt) =>
        {
            (string Name, FactValue Value)[] facts = [("depth_margin", a), ("depth_needed", b), ("depth_available", c)];
            facts[doubt % 3].Value = doubt < 3 ? facts[doubt].Value.Guessed() : UnknownDepth();
            var finding = Judge.Evaluate(rule, Table(facts), "b")!;
            return finding.Status != Status.Pass || !rule.Names.Contains(facts[doubt % 3].Name, StringComparer.Ordinal);
        });

    [Fact]
    public void A_pass_keeps_its_limits_in_the_worst_case() =>
        Gen.Select(AnyRule, Depth, Depth, Depth).Sample((rule, a, b, c) =>
            Judge.Evaluate(rule, Table(("depth_margin", a), ("depth_needed", b), ("depth_available", c)),
                "b")! is not { Status: Status.Pass, Margin: < 0 });

    [Fact]
    public void Only_a_measure_says_what_to_measure_and_always_does() =>
        Gen.Select(AnyRule, Depth, Depth, Gen.Bool).Sample((rule, a, b, known) =>
        {
            var finding = Judge.Evaluate(rule,
                known ? Table(("depth_margin", a), ("depth_needed", b), ("depth_available", b)) : Table(("depth_margin", a)), "b")!;
            return finding.ToMeasure.Count > 0 == (finding.Status == Status.Measure);
        });

    [Fact]
    public void A_wider_value_is_never_judged_more_certain() =>
        Gen.Select(Depth, Gen.Double[0, 5]).Sample((narrow, more) =>
        {
            var rule = Rule(SampleRule.About("depth_margin", "{ below: 3 mm }", "{ below: 0 mm }"));
            var n = narrow.Number!.Value;
            var wide = narrow with { Number = n with { Low = n.Low - (more * 1e-3), High = n.High + (more * 1e-3) } };
            return (Of(narrow), Of(wide)) is not ((not Status.Pass, Status.Pass) or (not Status.Fail, Status.Fail));

            Status Of(FactValue value) => Judge.Evaluate(rule, Table(("depth_margin", value)), "b")!.Status;
        });
}
