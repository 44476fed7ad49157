using CsCheck;
using FitCheck.Facts.Values;
using FitCheck.Findings;
using FitCheck.Physics.Quantities;
using FitCheck.Rules.Conditions.Nodes;
using FitCheck.Rules.Model;
using FitCheck.Rules.Verdicts;
using Xunit;
using static FitCheck.Tests.Rules.RuleTestFacts;

namespace FitCheck.Tests.Rules;

/// <summary>
/// Judging facts in brief gives the status and the margin of judging them with all their evidence, on whatever way it is asked.
/// </summary>
public sealed class BriefRuleTests
{
    private static readonly Unsure[] Bounded = [Gap with { IsBounded = true }];

    private static readonly string[] Whens =
    [
        "has_driver", "not in_cup", "has_driver and not in_cup", "has_driver or in_cup", "known(depth_needed)",
        "has_driver and known(depth_needed) and depth_needed >= 3 mm",
        "connection == \"plug\"", "connection != \"plug\" or in_cup", "not (has_driver and in_cup)", "depth_needed < depth_available",
        "ratio == 1",
    ];

    private static readonly string[] Facts = ["depth_margin", "depth_margin - 1 mm", "max(depth_margin, depth_available)",
        "min(depth_available, depth_margin, 2 mm)", "min(depth_margin, 4 mm)", "-depth_margin", "abs(depth_margin)",
        "depth_margin * ratio", "depth_margin / ratio"];

    private static readonly string[] Warns = ["never", "{ below: 3 mm }", "{ below: 3 mm, above: 20 mm }", "{ below: depth_needed }"];

    private static readonly string[] Fails = ["never", "{ below: 0 mm }", "{ above: 30 mm }", "{ above: depth_needed + 3 mm }"];

    private static readonly Gen<Rule> AnyRule =
        from when in Gen.Int[0, Whens.Length - 1]
        from fact in Gen.Int[0, Facts.Length - 1]
        from warn in Gen.Int[0, Warns.Length - 1]
        from fail in Gen.Int[warn == 0 ? 1 : 0, Fails.Length - 1]
        select Rule(
            SampleRule.About(Facts[fact], Warns[warn], Fails[fail])
                .Replace("subject: position", "subject: position\nwhen: " + Whens[when], StringComparison.Ordinal));

    private static readonly Gen<FactValue?> Length =
        from value in Gen.Int[-5, 5]
        from half in Gen.Int[0, 2]
        from kind in Gen.Int[0, 9]
        select kind switch
        {
            0 => null,
            1 => UnknownDepth(),
            2 => Mm(value - half, value, value + half).Guessed(),
            3 or 4 =>
            Mm(value - half, value, value + half) with { Unsure = Bounded },
            _ => Mm(value - half, value, value + half)
        };

    private static readonly Gen<FactValue?> Truth =
        from value in Gen.Bool
        from kind in Gen.Int[0, 6]
        select kind switch
        {
            0 => null,
            1 => FactValue.Unknown(FactType.Truth, Gap),
            2 => FactValue.Of(value).Guessed(),
            3 =>
            FactValue.Of(value) with { Unsure = Bounded },
            _ => FactValue.Of(value)
        };

    private static readonly Gen<FactValue?> Word = Gen.Int[0, 3]
        .Select(i => i switch { 0 => null, 1 => FactValue.Of("plug"), 2 => FactValue.Of("plug").Guessed(), _ => FactValue.Of("splice") });

    private static readonly Gen<FactValue?> Ratio = Gen.Int[-1, 3]
        .Select(i => i < 0 ? null : FactValue.Of(FitCheck.Physics.Quantities.Dimension.One, i));

    [Fact]
    public void Both_agree() =>
        Gen.Select(AnyRule, Gen.Select(Length, Length, Length), Gen.Select(Truth, Truth), Gen.Select(Word, Ratio))
            .Sample((rule, lengths, truths, rest) =>
        {
            var values = new Dictionary<string, FactValue>(StringComparer.Ordinal);
            foreach (var (name, value) in new[]
            {
                ("depth_margin", lengths.Item1), ("depth_needed", lengths.Item2), ("depth_available", lengths.Item3),
                ("has_driver", truths.Item1),
                ("in_cup", truths.Item2), ("connection", rest.Item1), ("ratio", rest.Item2),
            })
            {
                if (value is not null)
                    values[name] = value;
            }
            var full = Judgement.Of(rule, new FactInputs(rule.Scope, values));
            var facts = new Brief[rule.Scope.Names.Count];
            foreach (var (name, value) in values)
                facts[rule.Scope.SlotOf(name)] = Brief.Of(value);
            return Is(full, new BriefRule(rule).Judge(facts)) && Is(full, new BriefRule(rule, Settled).Judge(facts))
                && IsPlainly(full, new BriefRule(rule, Settled), facts);

            // A truth that nobody doubts may be settled beforehand.
            bool? Settled(string name) => values.GetValueOrDefault(name) is { Truth: { } truth, Unsure.Count: 0 } ? truth : null;
        }, iter: 20_000);

    [Fact]
    public void A_value_in_brief_is_in_as_much_doubt_as_its_evidence_says() =>
        Gen.Select(Gen.Int[0, Facts.Length - 1], Gen.Int[0, Whens.Length - 1], Gen.Select(Length, Length, Length),
            Gen.Select(Truth, Truth), Word).Sample((fact, when, lengths, truths, word) =>
        {
            var values = new (string Name, FactValue? Value)[]
            {
                ("depth_margin", lengths.Item1), ("depth_needed", lengths.Item2), ("depth_available", lengths.Item3),
                ("has_driver", truths.Item1), ("in_cup", truths.Item2), ("connection", word),
            }.Where(v => v.Value is not null).Select(v => (v.Name, v.Value!)).ToArray();
            var facts = new Brief[Scope.Names.Count];
            foreach (var (name, value) in values)
                facts[Scope.SlotOf(name)] = Brief.Of(value);
            return new[] { Facts[fact], Whens[when] }.All(text => Brief.Of(Evaluate(text, values)) == Read(text, out _)!.Weigh(facts));
        }, iter: 20_000);

    private static bool Is(Judgement? full, Verdict? brief) => full is null ? brief is null
        : brief is { } verdict && verdict.Status == full.Status && verdict.Margin.Equals(full.Margin ?? double.NaN)
        && verdict.InDoubt == full.InDoubt;

    // A plain rule that always applies, of the number alone.
    private static bool IsPlainly(Judgement? full, BriefRule rule, Brief[] facts)
    {
        if (!rule.IsPlain || rule.Gate is not null || full is null)
            return true;
        var fact = facts[rule.Slot];
        var known = fact.IsKnown ? fact.Number : new Uncertain(double.NaN, double.NaN, double.NaN, 0);
        var keeps = rule.Keeps(known.Value, known.Low, known.High, out var margin);
        return Is(full, rule.Judge(known.Value, known.Low, known.High, fact.Doubt))
            && (keeps is null
            || (margin.Equals(full.Margin)
            && full.Status == (keeps == false ? Status.Fail : fact.Doubt == Doubt.Guessed ? Status.Measure : Status.Pass)));
    }
}
