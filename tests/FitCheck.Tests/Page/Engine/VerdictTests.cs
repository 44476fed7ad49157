using FitCheck.Evaluation;
using FitCheck.Findings;
using FitCheck.Reports.Wording;
using FitCheck.Tests.Checking;
using Xunit;

namespace FitCheck.Tests.Page.Engine;

/// <summary>What the page says is what `check` says of the same text.</summary>
public class VerdictTests
{
    private const int Actions = 250;

    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(3)]
    [InlineData(4)]
    [InlineData(5)]
    [InlineData(6)]
    [InlineData(7)]
    [InlineData(8)]
    public void After_actions_by_lot_the_verdict_is_that_of_check(int seed)
    {
        var (lot, page) = (new Random(seed), new PageInHand());
        var compared = 0;
        for (var i = 0; i < Actions; i++)
        {
            var button = Next(lot, page);
            page.Press(button);
            Assert.False(string.IsNullOrEmpty(page.Sentence), $"no verdict after {button}");
            if (page.Text.Length == 0 || !page.Text.Contains("fit:", StringComparison.Ordinal))
                continue;
            var checkd = OpenCheckers.OfRepository.Check([BuildSource.Text("build.yaml", page.Text)]).Result?.Builds[0];
            Assert.True(checkd is not null, $"the page made a text that is no build, by {button}:\n{page.Text}");
            if (page.Verdict.Length == 0)
                continue;
            Assert.Equal((checkd.Verdict.Word(), Headline.Of(checkd)), (page.Verdict, page.Sentence));
            compared++;
        }
        Assert.InRange(compared, Actions / 4, Actions);
    }

    // Mostly forward, now and then back, seldom from the beginning; the search for ways has tests of its own.
    private static string Next(Random lot, PageInHand page)
    {
        var buttons = page.Buttons.Where(b => b is not ("enter" or "save" or "open" or "quote" or "ways" or "more" or "seek" or "typed")
            && !(b == "new" && lot.Next(20) > 0) && !b.StartsWith("instead:", StringComparison.Ordinal)).ToList();
        var takes = buttons.Where(b => b.StartsWith("take:", StringComparison.Ordinal) || b.StartsWith("step:", StringComparison.Ordinal))
            .ToList();
        var slots = buttons.Where(b => b.StartsWith("slot:", StringComparison.Ordinal)).ToList();
        return takes.Count > 0 && lot.Next(3) > 0 ? takes[lot.Next(takes.Count)]
            : slots.Count > 0 && lot.Next(2) > 0 ? slots[lot.Next(slots.Count)]
            : buttons[lot.Next(buttons.Count)];
    }

    [Theory]
    [InlineData("tansy-hatch", "front-door-left")]
    [InlineData("corvid-sedan", "front-door-left")]
    [InlineData("gannet-coupe", "front-door-left")]
    public void From_nothing_to_a_build_that_goes_together(string vehicle, string place)
    {
        var page = new PageInHand();
        page.Press($"vehicle:{vehicle}").Press($"place:{place}");
        page.Press(page.Buttons.First(b => b.StartsWith("slot:", StringComparison.Ordinal)));
        page.Press(page.Buttons.First(
            b => b.StartsWith("take:", StringComparison.Ordinal) || b.StartsWith("step:", StringComparison.Ordinal)));

        Assert.True(page.Verdict is "pass" or "warn", $"{page.Sentence}\n{page.Text}");
        Assert.Equal(page.Verdict, OpenCheckers.OfRepository.Check([BuildSource.Text("b", page.Text)]).Result!.Verdict.Word());
    }
}
