using CsCheck;
using FitCheck.Facts.Values;
using FitCheck.Findings;
using FitCheck.Physics.Quantities;
using FitCheck.Rules;
using FitCheck.Rules.Model;
using FitCheck.Rules.Verdicts;
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

    // Whether a value is beyond a limit is worked out here from the middle values alone, in tenths of a millimetre, so that rounding is out
    // of the way; a limit and a fact may be expressions, and everything may be guessed.
    [Fact]
    public void What_is_nominally_beyond_a_limit_of_failing_fails_or_is_measured() =>
        Gen.Select(Gen.Int[0, 3], Gen.Int[0, 3], Gen.Int[0, 3], Gen.Select(Tenths, Tenths, Tenths), Gen.Int[0, 7]).Sample(
            (fact, warn, fail, given, guessed) =>
        {
            var (facts, warns, fails) = (Facts[fact], Warns[warn], Fails[fail]);
            (string Name, FactValue Value)[] table =
            [
                ("depth_margin", Given(given.Item1, guessed & 1)), ("depth_needed", Given(given.Item2, guessed & 2)),
                ("depth_available", Given(given.Item3, guessed & 4)),
            ];
            var (m, n, a) = (given.Item1.At, given.Item2.At, given.Item3.At);
            var beyond = fails.IsBeyond(facts.Value(m, n, a), n);
            var rule = Rule(SampleRule.About(facts.Text, warns, fails.Text));

            var judged = Judge.Evaluate(rule, Table(table), "b")!.Status;
            var brief = new NotesOfThreads().Judge(rule, Table(table))!.Value.Status;

            Assert.Equal(judged, brief);
            Assert.True(!beyond || judged is Status.Fail or Status.Measure, $"{judged} beyond {fails.Text}");
        }, iter: 4000);

    private static readonly Gen<(int At, int Down, int Up)> Tenths = Gen.Select(Gen.Int[-500, 500], Gen.Int[0, 60], Gen.Int[0, 60]);

    private static readonly (string Text, Func<int, int, int, int> Value)[] Facts =
    [
        ("depth_margin", (m, _, _) => m), ("depth_margin + 1 mm", (m, _, _) => m + 10),
        ("max(depth_margin, depth_available)", (m, _, a) => Math.Max(m, a)), ("abs(depth_margin)", (m, _, _) => Math.Abs(m)),
    ];

    private static readonly string[] Warns =
        ["never", "{ below: 3 mm }", "{ below: 3 mm, above: 20 mm }", "{ below: depth_needed + 5 mm }"];

    private static readonly (string Text, Func<int, int, bool> IsBeyond)[] Fails =
    [
        ("{ below: 0 mm }", (v, _) => v < 0), ("{ above: 30 mm }", (v, _) => v > 300),
        ("{ below: -2 mm, above: 30 mm }", (v, _) => v is < -20 or > 300), ("{ above: depth_needed + 30 mm }", (v, n) => v > n + 300),
    ];

    private static FactValue Given((int At, int Down, int Up) tenths, int guessed)
    {
        var value = Mm((tenths.At - tenths.Down) / 10.0, tenths.At / 10.0, (tenths.At + tenths.Up) / 10.0);
        return guessed == 0 ? value : value.Guessed();
    }

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
