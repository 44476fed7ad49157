using FitCheck.Facts;
using FitCheck.Physics.Quantities;
using FitCheck.Yaml;
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
    public void Not_turns_over(string a, string expected) => Assert.Equal(expected, Letter(Evaluate("not has_driver", ("has_driver", Truth(a)))));

    [Fact]
    public void False_and_unknown_carries_nothing() => Assert.Empty(Evaluate("has_driver and depth_margin > 3 mm", ("has_driver", FactValue.Of(false))).Unsure);

    [Fact]
    public void Unknown_and_false_carries_nothing() => Assert.Empty(Evaluate("depth_margin > 3 mm and has_driver", ("has_driver", FactValue.Of(false))).Unsure);

    [Fact]
    public void True_and_unknown_carries_the_unknown() =>
        Assert.Equal([Gap], Evaluate("has_driver and depth_margin > 3 mm", ("has_driver", FactValue.Of(true)), ("depth_margin", UnknownDepth())).Unsure);

    [Fact]
    public void A_guess_that_settles_is_carried() =>
        Assert.Equal([Guess], Evaluate("has_driver and in_cup", ("has_driver", FactValue.Of(false) with { Unsure = [Guess] })).Unsure);

    [Fact]
    public void A_guess_is_not_carried_when_a_sure_side_settles_too() =>
        Assert.Empty(Evaluate("has_driver and in_cup", ("has_driver", FactValue.Of(false) with { Unsure = [Guess] }), ("in_cup", FactValue.Of(false))).Unsure);

    [Fact]
    public void Guesses_are_carried_by_known_values() =>
        Assert.Equal([Guess], Evaluate("depth_available - depth_needed", ("depth_available", Mm(80).Guessed()), ("depth_needed", Mm(70))).Unsure);

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
        Assert.Equal("Depth left behind the driver", Assert.Single(Evaluate("depth_margin > 3 mm", ("depth_margin", Mm(2, 4, 6))).Unsure).What);

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
        var value = Mm(3) with { Unsure = [Guess with { Passing = l => "71 mm or more" }], Data = [new Datum("depth", new Location("c.yaml", 1, 1))] };
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
        Assert.Equal(new Uncertain(3, 1, 5, Math.Sqrt(2)), Evaluate("ratio - load / 1 ohm", ("ratio", FactValue.Of(Dimension.One, Uncertain.Within(5, 1))), ("load", FactValue.Of(Dimension.Ohm, Uncertain.Within(2, 1)))).Number);

    private static FactValue Truth(string letter) => letter == "?" ? FactValue.Unknown(FactType.Truth, Gap) : FactValue.Of(letter == "T");

    private static string Letter(FactValue value) => value.Truth switch { true => "T", false => "F", null => "?" };
}
