using FitCheck.Facts.Values;
using FitCheck.Physics.Quantities;
using Xunit;

namespace FitCheck.Tests.Rules;

/// <summary>Reading expressions: types, units, and mistakes with their exact column (the text begins in column 11).</summary>
public sealed class ExpressionReadTests
{
    [Theory]
    [InlineData("3", 3)]
    [InlineData("0.8", 0.8)]
    [InlineData("3 mm", 0.003)]
    [InlineData("3mm", 0.003)]
    [InlineData("2.5 mm2", 2.5e-6)]
    [InlineData("80 %", 0.8)]
    [InlineData("12 dB/octave", 12)]
    [InlineData("5.5 T m", 5.5)]
    [InlineData("2 N/A", 2)]
    [InlineData("1 + 2 * 3", 7)]
    [InlineData("(1 + 2) * 3", 9)]
    [InlineData("8 - 4 - 2", 2)]
    [InlineData("8 / 4 / 2", 1)]
    [InlineData("-2 * -3", 6)]
    [InlineData("- - 2", 2)]
    [InlineData("min(3, 1, 2)", 1)]
    [InlineData("max(3 mm, 1 cm)", 0.01)]
    [InlineData("abs(2 - 5)", 3)]
    [InlineData("6 mm / 2 mm", 3)]
    public void Numbers_are_read_in_si(string text, double si) => Assert.Equal(si, RuleTestFacts.Evaluate(text).Number!.Value.Value, 12);

    [Theory]
    [InlineData("1 < 2", true)]
    [InlineData("2 <= 2", true)]
    [InlineData("2 < 2", false)]
    [InlineData("3 < 2", false)]
    [InlineData("3 <= 2", false)]
    [InlineData("2 >= 3", false)]
    [InlineData("2 > 3", false)]
    [InlineData("2 >= 2", true)]
    [InlineData("3 > 2", true)]
    [InlineData("65 mm - 62 mm < 3 mm", false)] // 0.0030000000000000027 in binary: rounding is no difference
    [InlineData("0.1 + 0.2 == 0.3", true)]
    [InlineData("0.3 - 0.2 - 0.1 == 0", true)] // -2.8e-17 in binary
    [InlineData("(0.1 + 0.2) * 1000000000 == 300000000", true)] // 6e-8 apart in binary, a part in 5e15
    [InlineData("300000001 == 300000000", false)]
    [InlineData("0.001 mm == 0 mm", false)]
    [InlineData("10 mm == 1 cm", true)]
    [InlineData("1 != 2", true)]
    [InlineData("\"a\" == \"a\"", true)]
    [InlineData("\"a\" != \"a\"", false)]
    [InlineData("true == false", false)]
    [InlineData("not 1 == 2", true)]
    [InlineData("true or false and false", true)]
    [InlineData("(true or false) and false", false)]
    [InlineData("\"and\" == \"or\" or true", true)]
    public void Truths_are_read(string text, bool truth) => Assert.Equal(truth, RuleTestFacts.Evaluate(text).Truth);

    [Fact]
    public void Dimensions_of_products_are_known() =>
        Assert.Equal(FactType.Number(Dimension.Volt), RuleTestFacts.Read("2 A * load", out _)!.Type);

    [Fact]
    public void Names_are_told_once_in_their_order() =>
        Assert.Equal(["load", "depth_margin"], RuleTestFacts.Read("load > 2 ohm and depth_margin > 1 mm or known(load)", out _)!.Names);

    [Theory]
    [InlineData("depth_margin + load", 24, "`+` needs two values of one dimension; the left is mm, the right is ohm")]
    [InlineData("depth_margin < 3", 24, "`<` compares values of one dimension; the left is mm, the right is a pure number")]
    [InlineData("depth_margin == \"a\"", 24, "`==` compares like with like; the left is a number in mm, the right is a word")]
    [InlineData("connection < \"a\"", 22, "`<` compares numbers, found a word; `==` and `!=` compare anything")]
    [InlineData("has_driver and load", 26, "`and` needs true or false, found a number in ohm")]
    [InlineData("not load", 15, "`not` needs true or false, found a number in ohm")]
    [InlineData("3 + has_driver", 15, "`+` needs a number, found true or false")]
    [InlineData("has_driver + 3", 11, "`+` needs a number, found true or false")]
    [InlineData("load and in_cup", 11, "`and` needs true or false, found a number in ohm")]
    [InlineData("in_cup or ratio", 21, "`or` needs true or false, found a pure number")]
    [InlineData("min(3, in_cup)", 18, "`min` needs a number, found true or false")]
    [InlineData("abs(connection)", 15, "`abs` needs a number, found a word")]
    [InlineData("-in_cup", 12, "`-` needs a number, found true or false")]
    [InlineData("min(load, 3 mm)", 21, "`min` needs values of one dimension; the first is ohm, this one is mm")]
    [InlineData("min(load)", 11, "`min` takes two values or more, found 1")]
    [InlineData("abs(1, 2)", 11, "`abs` takes one value, found 2")]
    [InlineData("supposing(load, 2 ohm) > 1 ohm", 27,
        "`supposing` takes the most that an inductance can be, such as `0.5 mH`, found a number in ohm")]
    [InlineData("supposing(load) > 1 ohm", 11,
        "`supposing` takes the name of one fact and the most that an inductance can be, `supposing(load_min, 0.5 mH)`")]
    [InlineData("known(load + load)", 11, "`known` takes the name of one fact, `known(depth)`")]
    [InlineData("maxx(1, 2)", 11, "there is no function `maxx`; did you mean `max`?")]
    [InlineData("max(load)", 11, "`max` takes two values or more, found 1")]
    [InlineData("minn(1, 2)", 11, "there is no function `minn`; did you mean `min`?")]
    [InlineData("abbs(1)", 11, "there is no function `abbs`; did you mean `abs`?")]
    [InlineData("knowm(load)", 11, "there is no function `knowm`; did you mean `known`?")]
    [InlineData("load / 0", 18, "nothing can be divided by zero")]
    [InlineData("depth_margn > 3 mm", 11, "no fact is named `depth_margn`; did you mean `depth_margin`?")]
    [InlineData("known(lod)", 17, "no fact is named `lod`; did you mean `load`?")]
    [InlineData("corner > 100 Hz", 11, "`corner` is a fact of a channel; this rule is about a position")]
    [InlineData("load > 3 Ohm", 20, "`Ohm` is no unit that FitCheck knows; did you mean `ohm`?")]
    [InlineData("load > 3 ohms", 20, "`ohms` is no unit that FitCheck knows; did you mean `ohm`?")]
    [InlineData("ratio > 80 %x", 23, "expected an operator or the end, found `x`")]
    [InlineData("load > 3.4.5", 18, "`3.4.5` is no number")]
    [InlineData("load = 3", 16, "`=` has no meaning; write `==` to compare")]
    [InlineData("has_driver && in_cup", 22, "`&` has no meaning; write `and`")]
    [InlineData("has_driver || in_cup", 22, "`|` has no meaning; write `or`")]
    [InlineData("!in_cup", 11, "`!` has no meaning; write `not`")]
    [InlineData("load ; 3", 16, "`;` has no meaning in an expression")]
    [InlineData("load \u0001", 16, "a character here has no meaning in an expression")]
    [InlineData("load \ud83d\ude00", 16, "a character here has no meaning in an expression")]
    [InlineData("connection == 'a'", 25, "a word stands in double quotes here, `\"splice\"`")]
    [InlineData("connection == \"a", 25, "the word that starts here has no closing `\"`")]
    [InlineData("1 < 2 < 3", 17, "a comparison can't be compared again; write `a < b and b < c`")]
    [InlineData("load load", 16, "expected an operator or the end, found `load`")]
    [InlineData("(load", 16, "expected `)`, found the end")]
    [InlineData("load +", 17, "expected a number, a name or `(`, found the end")]
    [InlineData("and", 11, "expected a number, a name or `(`, found `and`")]
    [InlineData("or", 11, "expected a number, a name or `(`, found `or`")]
    [InlineData("load + not in_cup", 18, "expected a number, a name or `(`, found `not`")]
    [InlineData("", 11, "expected a number, a name or `(`, found the end")]
    public void A_mistake_is_told_where_it_stands(string text, int column, string message)
    {
        Assert.Null(RuleTestFacts.Read(text, out var problems));
        Assert.Equal($"r.yaml:7:{column}: error: {message}", Assert.Single(problems).ToString());
    }

    [Fact]
    public void A_quote_of_yaml_moves_the_column_by_one()
    {
        RuleTestFacts.Read("lod", out var problems, quoted: true);
        Assert.Equal(12, Assert.Single(problems).At.Column);
    }

    [Fact]
    public void Several_mistakes_are_told_at_once()
    {
        Assert.Null(RuleTestFacts.Read("lod > 3 ohm and in_cop", out var problems));
        Assert.Equal([11, 27], problems.Select(p => p.At.Column));
    }

    [Fact]
    public void Both_sides_of_a_connective_are_looked_at()
    {
        RuleTestFacts.Read("load or ratio", out var problems);
        Assert.Equal([11, 19], problems.Select(p => p.At.Column));
    }

    [Fact]
    public void An_expression_of_the_greatest_length_is_read_and_one_more_is_refused()
    {
        Assert.NotNull(RuleTestFacts.Read(new string(' ', 1999) + "1", out _));
        Assert.Null(RuleTestFacts.Read(new string(' ', 2000) + "1", out var problems));
        Assert.Equal("r.yaml:7:11: error: the expression has 2001 characters; at most 2000 are read", Assert.Single(problems).ToString());
    }
}
