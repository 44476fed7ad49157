using FitCheck.Facts.Values;
using FitCheck.Findings;
using FitCheck.Physics.Quantities;
using FitCheck.Rules;
using FitCheck.Rules.Model;
using FitCheck.Rules.Verdicts;
using Xunit;
using static FitCheck.Tests.Rules.RuleTestFacts;

namespace FitCheck.Tests.Rules;

/// <summary>Which status comes out of which value.</summary>
public sealed class JudgeTests
{
    private static readonly Rule Both = Rule(SampleRule.About("depth_margin", "{ below: 3 mm }", "{ below: 0 mm }"));
    private static readonly Rule OnlyFail = Rule(SampleRule.About("depth_margin", "never", "{ below: 0 mm }"));
    private static readonly Rule OnlyWarn = Rule(SampleRule.About("depth_margin", "{ below: 3 mm }", "never"));
    private static readonly Rule Between =
        Rule(SampleRule.About("depth_margin", "{ below: 3 mm, above: 20 mm }", "{ below: 0 mm, above: 30 mm }"));

    [Theory]
    [InlineData(8, 8, 8, false, "pass", "pass", "pass")]
    [InlineData(3, 3, 3, false, "pass", "pass", "pass")] // on the warn limit
    [InlineData(2, 2, 2, false, "warn", "pass", "warn")]
    [InlineData(0, 0, 0, false, "warn", "pass", "warn")] // on the fail limit
    [InlineData(-1, -1, -1, false, "fail", "fail", "warn")]
    [InlineData(2, 4, 6, false, "pass", "pass", "warn")] // short of a failure the nominal value decides; the only limit must be settled
    [InlineData(-1, 1, 2, false, "warn", "measure", "warn")] // fail uncertain, warn certain
    [InlineData(-1, 4, 9, false, "warn", "measure", "warn")] // both uncertain
    // beyond the limit of failing, and the tolerances just reach it: never "goes together"
    [InlineData(-3, -2, 0, false, "measure", "measure", "warn")]
    [InlineData(-3, -1, 4, false, "measure", "measure", "warn")]
    [InlineData(-3, -2, 0, true, "measure", "measure", "warn")]
    [InlineData(-3, -2, -1, false, "fail", "fail", "warn")] // nothing saves it
    [InlineData(8, 8, 8, true, "measure", "measure", "measure")]
    [InlineData(3, 3, 3, true, "measure", "measure", "measure")]
    [InlineData(2, 2, 2, true, "warn", "measure", "warn")]
    [InlineData(-1, -1, -1, true, "fail", "fail", "warn")]
    [InlineData(2, 2.5, 6, false, "warn", "pass", "warn")]
    [InlineData(2, 3, 4, false, "pass", "pass", "warn")] // nominally on the warn limit
    [InlineData(2, 4, 6, true, "measure", "measure", "measure")]
    [InlineData(-1, 1, 2, true, "measure", "measure", "warn")]
    [InlineData(-1, 4, 9, true, "measure", "measure", "measure")]
    public void A_number_is_judged_by_its_bounds(double low, double value, double high, bool guessed, string both, string onlyFail,
        string onlyWarn)
    {
        var depth = guessed ? Mm(low, value, high).Guessed() : Mm(low, value, high);
        Assert.Equal(both, StatusOf(Both, depth));
        Assert.Equal(onlyFail, StatusOf(OnlyFail, depth));
        Assert.Equal(onlyWarn, StatusOf(OnlyWarn, depth));
    }

    [Theory]
    [InlineData(-1, "fail")]
    [InlineData(0, "warn")]
    [InlineData(3, "pass")]
    [InlineData(20, "pass")]
    [InlineData(21, "warn")]
    [InlineData(30, "warn")]
    [InlineData(31, "fail")]
    public void A_number_may_be_held_between_two_limits(double value, string expected) =>
        Assert.Equal(expected, StatusOf(Between, Mm(value)));

    [Fact]
    public void An_unknown_fact_is_measured() => Assert.Equal("measure", StatusOf(Both, UnknownDepth()));

    [Fact]
    public void Rounding_does_not_break_a_limit()
    {
        var rule = Rule(SampleRule.About("depth_available - depth_needed", "{ below: 3 mm }", "{ below: 0 mm }"));
        Assert.Equal(Status.Pass, Judge.Evaluate(rule, Table(("depth_available", Mm(64.3)), ("depth_needed", Mm(61.3))), "b")!.Status);
    }

    [Theory]
    [InlineData("false", 9, null)]
    [InlineData("unknown", 1, "measure")]
    [InlineData("unknown", -1, "measure")]
    [InlineData("unknown", 9, "pass")] // it passes if it applies: there is nothing to ask about
    [InlineData("true", 9, "pass")]
    public void The_condition_comes_first(string hasDriver, double margin, string? expected)
    {
        var value = hasDriver == "unknown" ? FactValue.Unknown(FactType.Truth, Gap) : FactValue.Of(hasDriver == "true");
        var finding = Judge.Evaluate(Rule(SampleRule.TooDeep),
            Table(("has_driver", value), ("in_cup", FactValue.Of(false)), ("depth_margin", Mm(margin))), "b");
        Assert.Equal(expected, finding?.Status.Word());
        if (expected == "measure")
            Assert.Equal("depth of the driver", Assert.Single(finding!.ToMeasure).What);
    }

    [Fact]
    public void Of_a_condition_no_value_is_told_that_would_pass()
    {
        var rule = Rule(
            SampleRule.About("depth_margin", "{ below: 3 mm }", "never")
                .Replace("subject: position", "subject: position\nwhen: has_driver", StringComparison.Ordinal));
        Assert.Equal(
            [new ToMeasure("Whether the build puts a driver here",
                "Look for what is not recorded of it.", null)],
                    Judge.Evaluate(rule, Table(("depth_margin", Mm(1))), "b")!.ToMeasure);
    }

    [Theory]
    [InlineData("depth_margin", "0 mm or more")]
    [InlineData("depth_margin + 1 mm", null)]
    public void A_fact_that_tolerances_leave_open_is_told_what_would_pass_but_not_a_part_of_one(string fact, string? passing)
    {
        var rule = Rule(SampleRule.About(fact, "never", "{ below: 0 mm }"));
        var told = Assert.Single(Judge.Evaluate(rule, Table(("depth_margin", Mm(-2, 0.5, 2))), "b")!.ToMeasure);
        Assert.Equal(
            ("Depth left behind the driver", "Measure it more exactly; as recorded it may lie on either side of the limit.", passing),
            (told.What, told.How, told.Passing));
    }

    [Fact]
    public void A_condition_that_rests_on_a_guess_does_not_pass()
    {
        var table = Table(("has_driver", FactValue.Of(true) with { Unsure = [Guess] }), ("in_cup", FactValue.Of(false)),
            ("depth_margin", Mm(9)));
        Assert.Equal(Status.Measure, Judge.Evaluate(Rule(SampleRule.TooDeep), table, "b")!.Status);
    }

    [Fact]
    public void Another_subject_is_not_judged() =>
        Assert.Null(Judge.Evaluate(Both, Table(("depth_margin", Mm(9))) with { Subject = Subject.Channel }, "b"));

    [Theory]
    [InlineData("61 mm", null, "measure")]
    [InlineData("61 mm", "50 mm", "pass")]
    [InlineData("61 mm", "70 mm", "fail")]
    [InlineData("61 mm", "61 mm", "pass")]
    public void A_limit_may_be_a_fact(string available, string? needed, string expected)
    {
        var rule = Rule(SampleRule.About("depth_available", "never", "{ below: depth_needed }"));
        var facts = new List<(string, FactValue)> { ("depth_available", Quantity(available)) };
        if (needed is not null)
            facts.Add(("depth_needed", Quantity(needed)));
        Assert.Equal(expected, Judge.Evaluate(rule, Table([.. facts]), "b")!.Status.Word());
    }

    [Fact]
    public void A_certain_failure_is_not_hidden_by_an_unknown_warning_limit()
    {
        var rule = Rule(SampleRule.About("depth_available", "{ below: depth_needed }", "{ below: 10 mm }"));
        Assert.Equal(Status.Fail, Judge.Evaluate(rule, Table(("depth_available", Mm(5))), "b")!.Status);
        Assert.Equal(Status.Measure, Judge.Evaluate(rule, Table(("depth_available", Mm(50))), "b")!.Status);
    }

    [Fact]
    public void A_limit_that_is_guessed_does_not_let_pass()
    {
        var rule = Rule(SampleRule.About("depth_available", "never", "{ below: depth_needed }"));
        var finding = Judge.Evaluate(rule, Table(("depth_available", Mm(90)), ("depth_needed", Mm(50).Guessed())), "b")!;
        Assert.Equal((Status.Measure, Guess.What), (finding.Status, Assert.Single(finding.ToMeasure).What));
    }

    [Fact]
    public void What_is_guessed_about_a_limit_is_not_asked_while_the_fact_is_unknown()
    {
        var rule = Rule(SampleRule.About("depth_available", "never", "{ below: depth_needed }"));
        Assert.Equal("Depth behind the panel",
            Assert.Single(Judge.Evaluate(rule, Table(("depth_needed", Mm(50).Guessed())), "b")!.ToMeasure).What);
    }

    [Fact]
    public void A_limit_that_tolerances_leave_open_is_measured_itself()
    {
        var rule = Rule(SampleRule.About("depth_available", "never", "{ below: depth_needed }"));
        var told = Assert.Single(
            Judge.Evaluate(rule, Table(("depth_available", Mm(61)), ("depth_needed", Mm(60, 60.5, 62))), "b")!.ToMeasure);
        Assert.Equal(("Depth that the driver needs behind the panel", null), (told.What, told.Passing));
    }

    [Fact]
    public void A_value_that_an_example_gives_open_is_to_be_measured_again()
    {
        var told = Assert.Single(Judgement.Of(OnlyFail, Inputs(), given: Mm(-1, 1, 2))!.Unsure);
        Assert.Equal(("depth_margin", "The data recorded leave it open; measure them again.", false),
            (told.What, told.How, told.Estimated));
    }

    [Theory]
    [InlineData("{ is: splice }", "{ is: none }")]
    [InlineData("{ is: '\"splice\"' }", "{ is: [none, cut] }")]
    public void Words_are_judged_by_being_one(string warn, string fail)
    {
        var rule = Rule(SampleRule.About("connection", warn, fail, unit: ""));
        Assert.Equal((Status.Pass, Status.Warn, Status.Fail), (Of("mates"), Of("splice"), Of("none")));

        Status Of(string word) => Judge.Evaluate(rule, Table(("connection", FactValue.Of(word))), "b")!.Status;
    }

    [Fact]
    public void Truths_are_judged_by_being_one()
    {
        var rule = Rule(SampleRule.About("in_cup", "never", "{ is: true }", unit: ""));
        var bad = Judge.Evaluate(rule, Table(("in_cup", FactValue.Of(true))), "b")!;
        Assert.Equal(("fail", "yes", "", "Wrong, yes against yes, unknown."), (bad.Status.Word(), bad.ValueText, bad.Unit, bad.Message));
        Assert.Equal(Status.Pass, Judge.Evaluate(rule, Table(("in_cup", FactValue.Of(false))), "b")!.Status);
        Assert.Equal(Status.Measure, Judge.Evaluate(rule, Table(), "b")!.Status);
    }

    private static string StatusOf(Rule rule, FactValue depth) => Judge.Evaluate(rule, Table(("depth_margin", depth)), "b")!.Status.Word();

    private static FactValue Quantity(string text) => FactValue.Of(Dimension.Metre, QuantityText.Parse(text)!.Value.Si);
}
