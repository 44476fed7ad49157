using FitCheck.Facts.Values;
using FitCheck.Foundation.Problems;
using FitCheck.Physics.Quantities;
using Xunit;
using static FitCheck.Tests.Rules.RuleTestFacts;

namespace FitCheck.Tests.Rules;

/// <summary>What is unknown stays unknown unless it doesn't matter, and says what is missing.</summary>
public sealed class ThreeValuedTests
{
    [Theory]
    [InlineData("T", "T", "T", "T")]
    [InlineData("T", "F", "F", "T")]
    [InlineData("T", "?", "?", "T")]
    [InlineData("F", "T", "F", "T")]
    [InlineData("F", "F", "F", "F")]
    [InlineData("F", "?", "F", "?")]
    [InlineData("?", "T", "?", "T")]
    [InlineData("?", "F", "F", "?")]
    [InlineData("?", "?", "?", "?")]
    public void Kleene_tables_hold(string a, string b, string and, string or)
    {
        Assert.Equal(and, Letter(Evaluate("has_driver and in_cup", ("has_driver", Truth(a)), ("in_cup", Truth(b)))));
        Assert.Equal(or, Letter(Evaluate("has_driver or in_cup", ("has_driver", Truth(a)), ("in_cup", Truth(b)))));
    }

    [Theory]
    [InlineData("T", "F")]
    [InlineData("F", "T")]
    [InlineData("?", "?")]
    public void Not_turns_over(string a, string expected) =>
        Assert.Equal(expected, Letter(Evaluate("not has_driver", ("has_driver", Truth(a)))));

    [Fact]
    public void False_and_unknown_carries_nothing() =>
        Assert.Empty(Evaluate("has_driver and depth_margin > 3 mm", ("has_driver", FactValue.Of(false))).Unsure);

    [Fact]
    public void Unknown_and_false_carries_nothing() =>
        Assert.Empty(Evaluate("depth_margin > 3 mm and has_driver", ("has_driver", FactValue.Of(false))).Unsure);

    [Fact]
    public void True_and_unknown_carries_the_unknown() =>
        Assert.Equal([Gap],
            Evaluate("has_driver and depth_margin > 3 mm", ("has_driver", FactValue.Of(true)), ("depth_margin", UnknownDepth())).Unsure);

    [Fact]
    public void A_guess_that_settles_is_carried() =>
        Assert.Equal([Guess], Evaluate("has_driver and in_cup", ("has_driver", FactValue.Of(false) with { Unsure = [Guess] })).Unsure);

    [Fact]
    public void A_guess_is_not_carried_when_a_sure_side_settles_too() =>
        Assert.Empty(
            Evaluate("has_driver and in_cup", ("has_driver", FactValue.Of(false) with { Unsure = [Guess] }),
                ("in_cup", FactValue.Of(false))).Unsure);

    [Fact]
    public void A_guess_that_settles_is_carried_past_a_sure_side_that_does_not() =>
        Assert.Equal([Guess],
            Evaluate("has_driver and in_cup", ("has_driver", FactValue.Of(false) with { Unsure = [Guess] }),
                ("in_cup", FactValue.Of(true))).Unsure);

    [Fact]
    public void A_guess_that_settles_on_the_right_is_carried_past_a_sure_left() =>
        Assert.Equal([Guess],
            Evaluate("has_driver and in_cup", ("has_driver", FactValue.Of(true)),
                ("in_cup", FactValue.Of(false) with { Unsure = [Guess] })).Unsure);

    [Fact]
    public void Of_two_sides_that_settle_the_surer_one_is_carried_and_the_left_of_equals()
    {
        Assert.Equal([Guess], Evaluate("has_driver and in_cup", ("has_driver", Doubted(Guess)), ("in_cup", Doubted(Gap))).Unsure);
        Assert.Equal([Gap], Evaluate("has_driver and in_cup", ("has_driver", Doubted(Guess, Gap)), ("in_cup", Doubted(Gap))).Unsure);
        Assert.Equal([Gap], Evaluate("has_driver and in_cup", ("has_driver", Doubted(Gap)), ("in_cup", Doubted(Guess, Gap))).Unsure);

        static FactValue Doubted(params Unsure[] doubts) => FactValue.Of(false) with { Unsure = doubts };
    }

    [Fact]
    public void Guesses_are_carried_by_known_values() =>
        Assert.Equal([Guess],
            Evaluate("depth_available - depth_needed", ("depth_available", Mm(80).Guessed()), ("depth_needed", Mm(70))).Unsure);

    [Theory]
    [InlineData(4, 5, 6, "depth_margin > 3 mm", "T")]
    [InlineData(1, 2, 2.5, "depth_margin > 3 mm", "F")]
    [InlineData(2, 4, 6, "depth_margin > 3 mm", "?")]
    [InlineData(1, 2, 3, "depth_margin > 3 mm", "F")]
    [InlineData(1, 2, 3, "depth_margin <= 3 mm", "T")]
    [InlineData(3, 4, 5, "depth_margin >= 3 mm", "T")]
    [InlineData(3, 4, 5, "depth_margin > 3 mm", "?")]
    [InlineData(2, 3, 4, "depth_margin == 3 mm", "?")]
    [InlineData(4, 5, 6, "depth_margin == 3 mm", "F")]
    [InlineData(4, 5, 6, "depth_margin != 3 mm", "T")]
    [InlineData(3, 3, 3, "depth_margin == 3 mm", "T")]
    public void Bounds_that_overlap_are_unknown(double low, double value, double high, string text, string expected) =>
        Assert.Equal(expected, Letter(Evaluate(text, ("depth_margin", Mm(low, value, high)))));

    [Fact]
    public void An_overlap_says_which_fact_to_measure() =>
        Assert.Equal(
            new Unsure("Depth left behind the driver", "Measure it more exactly; as recorded it may lie on either side of the limit.",
                Estimated: false),
            Assert.Single(Evaluate("depth_margin > 3 mm", ("depth_margin", Mm(2, 4, 6))).Unsure));

    [Fact]
    public void An_overlap_of_a_guess_names_the_guess_alone() =>
        Assert.Equal([Guess], Evaluate("depth_margin > 3 mm", ("depth_margin", Mm(2, 4, 6).Guessed())).Unsure);

    [Fact]
    public void What_would_pass_is_told_of_a_datum_and_not_of_a_result()
    {
        var told = Mm(4) with { Unsure = [Guess with { Passing = _ => "71 mm or more" }] };
        Assert.NotNull(Assert.Single(Evaluate("depth_margin", ("depth_margin", told)).Unsure).Passing);
        Assert.Null(Assert.Single(Evaluate("depth_margin + 1 mm", ("depth_margin", told)).Unsure).Passing);
    }

    [Fact]
    public void What_is_unknown_without_a_reason_is_said_to_be_missing()
    {
        var missing = Assert.Single(Evaluate("depth_margin", ("depth_margin", FactValue.Unknown(FactType.Number(Dimension.Metre)))).Unsure);
        Assert.Equal(
            ("Depth left behind the driver", "Look for what is not recorded of it.", false),
            (missing.What, missing.How, missing.Estimated));
        Assert.Empty(Evaluate("depth_margin", ("depth_margin", Mm(4))).Unsure);
    }

    [Theory]
    [InlineData(double.NaN, 4, 5)]
    [InlineData(3, double.NaN, 5)]
    [InlineData(3, 4, double.NaN)]
    public void A_number_that_is_none_is_unknown(double low, double value, double high) =>
        Assert.False(Evaluate("depth_margin", ("depth_margin", Mm(low, value, high))).IsKnown);

    [Theory]
    [InlineData(double.NegativeInfinity, double.PositiveInfinity, "T")]
    [InlineData(double.PositiveInfinity, double.PositiveInfinity, "F")]
    [InlineData(4, double.PositiveInfinity, "T")]
    public void What_has_no_bound_is_compared_all_the_same(double available, double needed, string less) =>
        Assert.Equal(less,
            Letter(Evaluate("depth_available < depth_needed", ("depth_available", Mm(available)), ("depth_needed", Mm(needed)))));

    [Theory]
    [InlineData("depth_margin * load")]
    [InlineData("load * depth_margin")]
    [InlineData("depth_margin / (1 / load)")]
    public void A_product_knows_its_dimension_even_when_it_has_no_value(string text)
    {
        var type = FactType.Number(Dimension.Metre * Dimension.Ohm);
        Assert.Equal(type, Evaluate(text).Type);
        Assert.Equal(type, Evaluate(text, ("depth_margin", Mm(4)), ("load", FactValue.Of(Dimension.Ohm, 4))).Type);
    }

    [Fact]
    public void A_sum_has_the_dimension_of_its_parts() =>
        Assert.Equal(FactType.Number(Dimension.Metre), Evaluate("depth_margin + 1 mm - depth_needed").Type);

    [Fact]
    public void A_fact_that_was_not_computed_is_named_by_its_meaning()
    {
        var value = Evaluate("depth_margin");
        Assert.False(value.IsKnown);
        Assert.Equal("Depth left behind the driver", Assert.Single(value.Unsure).What);
    }

    [Theory]
    [InlineData("known(depth_margin)", "F")]
    [InlineData("not known(depth_margin) or depth_margin > 3 mm", "T")]
    [InlineData("known(depth_needed)", "T")]
    public void Known_is_never_unknown(string text, string expected)
    {
        var value = Evaluate(text, ("depth_margin", UnknownDepth()), ("depth_needed", Mm(70)));
        Assert.Equal(expected, Letter(value));
        Assert.Empty(value.Unsure);
    }

    [Fact]
    public void A_single_name_hands_its_value_on_untouched()
    {
        var value = Mm(3) with
        {
            Unsure = [Guess with { Passing = l => "71 mm or more" }],
            Data = [new Datum("depth", new Location("c.yaml", 1, 1))]
        };
        Assert.Same(value, Evaluate("(depth_margin)", ("depth_margin", value)));
    }

    [Fact]
    public void A_divisor_that_may_be_zero_leaves_it_unknown()
    {
        var value = Evaluate("depth_needed / depth_margin", ("depth_needed", Mm(4)), ("depth_margin", Mm(-1, 1, 3)));
        Assert.False(value.IsKnown);
        Assert.Equal("Depth left behind the driver", Assert.Single(value.Unsure).What);
    }

    [Fact]
    public void Data_are_carried_once()
    {
        var data = new Datum("depth", new Location("c.yaml", 1, 1));
        Assert.Equal([data], Evaluate("depth_margin + depth_margin", ("depth_margin", Mm(4) with { Data = [data] })).Data);
    }

    [Fact]
    public void Worst_cases_add() =>
        Assert.Equal(new Uncertain(3, 1, 5, Math.Sqrt(2)),
            Evaluate("ratio - load / 1 ohm", ("ratio", FactValue.Of(Dimension.One, Uncertain.Within(5, 1))),
                ("load", FactValue.Of(Dimension.Ohm, Uncertain.Within(2, 1)))).Number);

    private static FactValue Truth(string letter) => letter == "?" ? FactValue.Unknown(FactType.Truth, Gap) : FactValue.Of(letter == "T");

    private static string Letter(FactValue value) => value.Truth switch { true => "T", false => "F", null => "?" };
}
