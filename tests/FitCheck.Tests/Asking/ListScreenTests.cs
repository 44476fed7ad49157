using FitCheck.Cli.Asking;
using Xunit;

namespace FitCheck.Tests.Asking;

public class ListScreenTests
{
    private static readonly Choice[] Many = [.. Enumerable.Range(1, 30).Select(i => new Choice($"part-{i}", $"Part number {i}"))];

    private static ListScreen Pressed(ListScreen screen, params object[] keys)
    {
        foreach (var key in keys)
        {
            if (key is ConsoleKey named)
                screen.Press(
                    new ConsoleKeyInfo(named == ConsoleKey.Spacebar ? ' ' : '\0', named, shift: false, alt: false, control: false));
            else
                ((string)key).ToList()
                    .ForEach(c => screen.Press(new ConsoleKeyInfo(c, ConsoleKey.None, shift: false, alt: false, control: false)));
        }
        return screen;
    }

    [Fact]
    public void Enter_takes_the_first_and_arrows_go_round() =>
        Assert.Equal(["part-1", "part-2", "part-30"],
            [Pressed(new("?", Many), ConsoleKey.Enter).Answer![0].Id,
                Pressed(new("?", Many), ConsoleKey.DownArrow, ConsoleKey.Enter).Answer![0].Id,
                Pressed(new("?", Many), ConsoleKey.UpArrow, ConsoleKey.Enter).Answer![0].Id]);

    [Fact]
    public void Words_in_any_order_narrow_the_list() =>
        Assert.Equal("part-17", Pressed(new("?", Many), "17 PART", ConsoleKey.Enter).Answer![0].Id);

    [Fact]
    public void Words_that_nothing_has_get_an_answer_and_Enter_takes_nothing()
    {
        var screen = Pressed(new("?", Many), "nmber", ConsoleKey.Enter);

        Assert.Null(screen.Answer);
        Assert.Contains(screen.Lines(12, c => c.Label), l => l.Text.Contains("did you mean `number`?", StringComparison.Ordinal));
        Assert.Contains(screen.Lines(12, c => c.Label), l => l.Text.Contains("take some letters back", StringComparison.Ordinal));
        Assert.Equal("part-1", Pressed(screen, ConsoleKey.Backspace, ConsoleKey.Backspace, ConsoleKey.Backspace, ConsoleKey.Backspace,
            ConsoleKey.Enter).Answer![0].Id);
    }

    [Theory]
    [InlineData(5)]
    [InlineData(11)]
    [InlineData(40)]
    public void No_screen_has_more_lines_than_there_is_room_for_and_shows_what_Enter_takes(int rows)
    {
        var screen = new ListScreen("?", Many);
        for (var i = 0; i < Many.Length; i++)
        {
            var lines = screen.Lines(rows, c => c.Label);
            Assert.True(lines.Count <= rows);
            Assert.Equal($"> Part number {i + 1}", Assert.Single(lines, l => l.IsChosen).Text);
            Pressed(screen, ConsoleKey.DownArrow);
        }
    }

    [Fact]
    public void Space_marks_and_what_is_usual_is_marked_already()
    {
        Assert.Equal(["part-2", "part-3"],
            Pressed(new("?", Many, [Many[1], Many[2]], atLeastOne: true), ConsoleKey.Enter).Answer!.Select(c => c.Id));
        Assert.Equal(["part-1", "part-3"],
            Pressed(new("?", Many, [Many[1], Many[2]], atLeastOne: true), ConsoleKey.Spacebar, ConsoleKey.DownArrow, ConsoleKey.Spacebar,
                ConsoleKey.Enter).Answer!.Select(c => c.Id));
        var none = Pressed(new("?", Many, [], atLeastOne: true), ConsoleKey.Enter);
        Assert.Null(none.Answer);
        Assert.Contains(none.Lines(12, c => c.Label), l => l.Text.Contains("at least one", StringComparison.Ordinal));
        Assert.Empty(Pressed(new("?", Many, []), ConsoleKey.Enter).Answer!);
    }

    [Fact]
    public void Escape_goes_a_question_back() => Assert.Throws<StepBack>(() => Pressed(new("?", Many), ConsoleKey.Escape));
}
