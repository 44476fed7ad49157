using FitCheck.Facts.Values;
using FitCheck.Findings;
using FitCheck.Foundation.Problems;
using FitCheck.Physics.Quantities;
using FitCheck.Rules;
using FitCheck.Rules.Model;
using Xunit;
using static FitCheck.Tests.Rules.RuleTestFacts;

namespace FitCheck.Tests.Rules;

/// <summary>What a finding tells besides its status.</summary>
public sealed class FindingTests
{
    private static readonly Rule TooDeep = Rule(SampleRule.TooDeep);

    [Fact]
    public void A_failure_tells_value_limit_and_margin_in_the_unit_of_the_rule()
    {
        var finding = Judge.Evaluate(TooDeep, Placed(Mm(-5, -4, -3)), "Tansy")!;
        Assert.Equal((-4, -5, -3), (Round(finding.Value!.Value.Value), Round(finding.Value.Value.Low), Round(finding.Value.Value.High)));
        Assert.Equal(("mm", 0d, -4d, "-4 mm"), (finding.Unit, finding.Limit!.Value, Round(finding.Margin!.Value), finding.ValueText));
        Assert.Equal("The driver is 4 mm too deep for Left front door. Add at least 4 mm of spacer.", finding.Message);
        Assert.Empty(finding.ToMeasure);
    }

    [Fact]
    public void A_pass_tells_the_nearest_limit() => Assert.Equal((3d, 5d), (Limit(Mm(8)), Margin(Mm(8))));

    [Fact]
    public void A_warning_tells_the_limit_that_it_broke() => Assert.Equal((3d, -2d), (Limit(Mm(1)), Margin(Mm(1))));

    [Fact]
    public void An_unknown_value_has_the_strictest_limit_and_no_margin()
    {
        var finding = Judge.Evaluate(TooDeep, Placed(UnknownDepth()), "Tansy")!;
        Assert.Equal((3d, null, null, "unknown"), (Round(finding.Limit!.Value), finding.Margin, finding.Value, finding.ValueText));
    }

    [Fact]
    public void What_to_measure_names_the_value_that_would_pass()
    {
        var guess = Guess
            with
        { Passing = l => $"{QuantityText.Format(l.Limit + 0.07, Dimension.Metre)} or {(l.AtLeast ? "more" : "less")}" };
        var finding = Judge.Evaluate(TooDeep, Placed(Mm(8) with { Unsure = [guess] }), "Tansy")!;
        Assert.Equal([new ToMeasure("depth behind the panel", "With a wire.", "73 mm or more")], finding.ToMeasure);
        Assert.Equal("Whether the driver fits is not known. Measure depth behind the panel (73 mm or more).", finding.Message);
    }

    [Fact]
    public void A_warning_asks_for_no_measure_even_when_it_rests_on_a_guess() =>
        Assert.Empty(Judge.Evaluate(TooDeep, Placed(Mm(1).Guessed()), "Tansy")!.ToMeasure);

    [Fact]
    public void A_collision_that_only_tolerances_could_save_says_so_and_waits_for_a_measurement()
    {
        var finding = Judge.Evaluate(TooDeep, Placed(Mm(-2.5, -1, 0.5)), "Tansy")!;
        Assert.Equal((Status.Measure, 0d, -1d), (finding.Status, finding.Limit!.Value, Round(finding.Margin!.Value)));
        Assert.Equal(
            "The driver is 1 mm too deep for Left front door. Add at least 1 mm of spacer. Only the tolerances of the figures could "
                + "save it: it may be 0.5 mm (typically ±1.5 mm). "
            + "Measure before you give it up: Depth left behind the driver (3 mm or more)",
            finding.Message);
    }

    [Fact]
    public void What_only_tolerances_leave_open_names_the_figures_to_read_again_where_a_fact_knows_them()
    {
        var glass = new Unsure("depth to the window glass", "With a depth gauge.", Estimated: false,
            l => $"{QuantityText.Format(l.Limit + 0.06, Dimension.Metre)} or more");
        var finding = Judge.Evaluate(TooDeep, Placed(Mm(-2.5, -1, 0.5) with { Rereadings = new(() => [glass]) }), "Tansy")!;
        Assert.Equal([new ToMeasure("depth to the window glass", "With a depth gauge.", "63 mm or more")], finding.ToMeasure);
    }

    [Fact]
    public void All_that_is_missing_is_asked_for()
    {
        var rule = Rule(SampleRule.About("depth_available - depth_needed", "{ below: 3 mm }", "never"));
        Assert.Equal("Measure Depth behind the panel; Depth that the driver needs behind the panel.",
            Judge.Evaluate(rule, Table(), "b")!.Message);
    }

    [Fact]
    public void With_limits_on_both_sides_both_are_told()
    {
        var rule = Rule(SampleRule.About("depth_margin", "{ below: 3 mm, above: 20 mm }", "never"));
        Assert.Equal("Measure Depth left behind the driver (3 mm or more and 20 mm or less).", Judge.Evaluate(rule, Table(), "b")!.Message);
    }

    [Fact]
    public void It_stands_where_the_first_part_was_chosen()
    {
        var finding = Judge.Evaluate(TooDeep, Placed(Mm(8)) with
        {
            Choices = new Dictionary<string, Choice>(StringComparer.Ordinal)
            {
                ["adapter"] = new("ring-16", new Location("b.yaml", 12, 5)),
                ["vehicle"] = new("tansy", new Location("b.yaml", 2, 1)),
            },
        }, "Tansy")!;
        Assert.Equal((new Location("b.yaml", 12, 5), "ring-16"), (finding.At, Assert.Single(finding.Parts)));
    }

    [Fact]
    public void Without_a_chosen_part_it_stands_at_the_subject() =>
        Assert.Equal(new Location("b.yaml", 9, 3), Judge.Evaluate(TooDeep, Placed(Mm(8)), "Tansy")!.At);

    [Fact]
    public void Related_places_are_the_data_and_the_threshold_in_order()
    {
        var depth = new Datum("depth", new Location("catalog/d.yaml", 4, 8));
        var panel = new Datum("panel", new Location("catalog/a.yaml", 7, 8));
        var finding = Judge.Evaluate(TooDeep, Placed(Mm(1) with { Data = [depth, panel, depth] }), "Tansy")!;
        Assert.Equal(
            "catalog/a.yaml:7:8 panel, catalog/d.yaml:4:8 depth, rules/mount/too-deep.yaml:9:16 threshold of the rule",
            string.Join(", ", finding.Related.Select(r => $"{r.At} {r.What}")));
    }

    [Fact]
    public void A_condition_that_is_not_known_points_at_itself()
    {
        var finding = Judge.Evaluate(TooDeep, Table(("in_cup", FactValue.Of(false)), ("depth_margin", Mm(1))), "Tansy")!;
        Assert.Equal("rules/mount/too-deep.yaml:6:7 condition of the rule",
            string.Join(", ", finding.Related.Select(r => $"{r.At} {r.What}")));
        Assert.Null(finding.Limit);
    }

    [Fact]
    public void An_unknown_value_of_a_rule_that_never_warns_has_the_limit_of_failing()
    {
        var rule = Rule(SampleRule.About("depth_margin", "never", "{ below: 5 mm }"));
        Assert.Equal(5, Round(Judge.Evaluate(rule, Table(), "b")!.Limit!.Value));
    }

    [Fact]
    public void A_message_that_can_not_be_rendered_is_replaced_by_title_and_value()
    {
        var rule = Rule(
            SampleRule.About("depth_margin", "{ below: 3 mm }", "never")
                .Replace("Fine, {{ value }}.", "Fine, {{ if value }}", StringComparison.Ordinal));
        Assert.Equal("Sample: 8 mm. (The message of this rule can't be rendered; `fitcheck lint` says why.)",
            Judge.Evaluate(rule, Table(("depth_margin", Mm(8))), "b")!.Message);
    }

    [Fact]
    public void The_fingerprint_does_not_know_lines()
    {
        var here = Judge.Evaluate(TooDeep, Placed(Mm(1)), "Tansy")!;
        var there = Judge.Evaluate(TooDeep, Placed(Mm(2)) with { At = new Location("b.yaml", 90, 1) }, "Tansy")!;
        Assert.Equal(here.Fingerprint, there.Fingerprint);
        Assert.Matches("^[0-9a-f]{16}$", here.Fingerprint);
        Assert.False(here.Fingerprint == Judge.Evaluate(TooDeep, Placed(Mm(1)), "Polo")!.Fingerprint);
    }

    [Fact]
    public void Money_is_shown_in_the_currency_of_the_build()
    {
        var rule = Rule(SampleRule.About("cost", "{ above: 50 money }", "never", unit: "money"));
        var finding = Judge.Evaluate(rule, Table(("cost", FactValue.Of(Dimension.Currency, 62.5))), "b")!;
        Assert.Equal(("EUR", "Doubtful, 62.50 EUR against 50.00 EUR, -12.50 EUR."), (finding.Unit, finding.Message));
    }

    [Fact]
    public void A_pure_number_has_no_unit()
    {
        var rule = Rule(SampleRule.About("ratio", "{ above: 1.5 }", "never", unit: "1"));
        var finding = Judge.Evaluate(rule, Table(("ratio", FactValue.Of(Dimension.One, 1.75))), "b")!;
        Assert.Equal(("", "Doubtful, 1.75 against 1.5, -0.25."), (finding.Unit, finding.Message));
    }

    private static FactTable Placed(FactValue depth) =>
        Table(("has_driver", FactValue.Of(true)), ("in_cup", FactValue.Of(false)), ("depth_margin", depth));

    private static double Limit(FactValue depth) => Round(Judge.Evaluate(TooDeep, Placed(depth), "Tansy")!.Limit!.Value);

    private static double Margin(FactValue depth) => Round(Judge.Evaluate(TooDeep, Placed(depth), "Tansy")!.Margin!.Value);

    private static double Round(double value) => Math.Round(value, 9);
}
