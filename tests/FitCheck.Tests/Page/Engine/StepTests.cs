using CsCheck;
using FitCheck.Page.State;
using Xunit;

namespace FitCheck.Tests.Page.Engine;

/// <summary>What takes an action back.</summary>
public class StepTests
{
    private static readonly Gen<string> Texts = Gen.String[Gen.Char["ab\n\ud83d\ude00é"], 0, 40];

    [Fact]
    public void A_step_makes_the_second_text_of_the_first_also_after_it_travelled() => Gen.Select(Texts, Texts).Sample((before, after) =>
        Whole(before) != before || Whole(after) != after || Step.Parse(Step.Between(before, after).ToString())!.Of(before) == after);

    // Half a character is no text that a form could hold.
    private static string Whole(string text) => System.Text.Encoding.UTF8.GetString(System.Text.Encoding.UTF8.GetBytes(text));

    [Theory]
    [InlineData("")]
    [InlineData("1.2")]
    [InlineData("-1.2.YQ==")]
    [InlineData("1.99999999999.YQ==")]
    [InlineData("2147483647.2147483647.YQ==")]
    [InlineData("1.2.!!")]
    [InlineData("a.b.c")]
    public void What_is_no_step_is_none(string written) => Assert.Null(Step.Parse(written));

    [Fact]
    public void A_step_of_a_longer_text_changes_none() => Assert.Null(new Step(3, 4, "x").Of("abc"));

    [Fact]
    public void Back_and_forth_leads_through_every_text()
    {
        var texts = Enumerable.Range(0, 30).Select(i => string.Concat(Enumerable.Range(0, i).Select(j => $"line {j * i}\n"))).ToList();
        var state = new PageState();
        foreach (var text in texts)
            state = Travelled(state.Changed(text));
        foreach (var text in texts.AsEnumerable().Reverse())
        {
            Assert.Equal(text, state.Text);
            state = Travelled(state.Undone());
        }
        foreach (var text in texts.Skip(1))
            Assert.Equal(text, (state = Travelled(state.Redone())).Text);
        Assert.Equal("other", state.Undone().Changed("other").Text);
        Assert.Empty(state.Undone().Changed("other").Future.All);
    }

    [Fact]
    public void An_evening_of_actions_stays_small_enough_to_travel()
    {
        var state = new PageState();
        for (var i = 0; i < 500; i++)
            state = state.Changed(new string((char)('a' + (i % 20)), 5_000));
        Assert.InRange(state.Past.ToString().Length, 1, 400_000);
        Assert.NotEqual(state.Text, state.Undone().Text);
    }

    private static PageState Travelled(PageState state) => PageState.Of(name => name switch
    {
        "text" => state.Text.ReplaceLineEndings("\r\n"),
        "past" => state.Past.ToString(),
        "future" => state.Future.ToString(),
        _ => null,
    });
}
