using CsCheck;
using Xunit;

namespace FitCheck.Tests.Rules;

/// <summary>Text that means harm gives an error, never an exception.</summary>
public sealed class HostileExpressionTests
{
    [Theory]
    [InlineData("(", 10_000)]
    [InlineData("(", 1_500)]
    [InlineData("not ", 400)]
    [InlineData("-", 1_900)]
    [InlineData("abs(", 400)]
    [InlineData("x", 1_000_000)]
    [InlineData("x", 1_999)]
    [InlineData("9", 1_999)]
    [InlineData("\u0000", 3)]
    [InlineData("\ud83d", 3)]
    [InlineData("1 + ", 300)]
    public void Repetition_is_refused(string piece, int times)
    {
        Assert.Null(RuleTestFacts.Read(string.Concat(Enumerable.Repeat(piece, times)), out var problems));
        Assert.NotEmpty(problems);
    }

    [Fact]
    public void Nesting_of_64_is_read_and_one_more_is_refused_where_it_begins()
    {
        Assert.NotNull(RuleTestFacts.Read(Nested(64), out _));
        Assert.Null(RuleTestFacts.Read(Nested(65), out var problems));
        Assert.Equal("r.yaml:7:75: error: the expression is nested more than 64 deep here", Assert.Single(problems).ToString());
    }

    [Fact]
    public void A_long_sum_is_evaluated() =>
        Assert.Equal(501, RuleTestFacts.Evaluate("1" + string.Concat(Enumerable.Repeat("+ 1", 500))).Number!.Value.Value);

    [Fact]
    public void Brackets_in_a_row_are_not_deep() =>
        Assert.Equal(101, RuleTestFacts.Evaluate("(1)" + string.Concat(Enumerable.Repeat("+(1)", 100))).Number!.Value.Value);

    [Fact]
    public void A_power_of_a_thousand_factors_is_a_dimension_not_a_crash() =>
        Assert.NotNull(RuleTestFacts.Read("load" + string.Concat(Enumerable.Repeat("*load", 300)), out _));

    [Fact]
    public void Any_text_is_read_or_told() =>
        Gen.String[Gen.OneOf(Gen.Char["()+-*/<>=!\"., _%"], Gen.Char.AlphaNumeric), 0, 60].Sample(text =>
            RuleTestFacts.Read(text, out var problems) is null == problems.Count > 0);

    private static string Nested(int depth) => new string('(', depth) + "1" + new string(')', depth);
}
