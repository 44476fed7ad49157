using System.Globalization;
using System.Net;
using System.Text.RegularExpressions;
using FitCheck.Evaluation;
using FitCheck.Findings;
using FitCheck.Page.Judging;
using FitCheck.Tests.Checking;
using Xunit;

namespace FitCheck.Tests.Page.Engine;

/// <summary>What the page tells and keeps besides the verdict, held against what the library finds of the same text.</summary>
public class TellingTests
{
    [Theory]
    [InlineData(@"C:\Users\me\mine.yaml")]
    [InlineData("/home/me/mine.yaml")]
    public void A_file_is_called_by_its_name_alone(string path) => Assert.Equal("mine.yaml",
        new PageInHand().Give("open", "build", path, File.ReadAllBytes(OpenCheckers.Build("tansy-bare-tweeter"))).Field("file"));

    [Fact]
    public void A_build_that_is_held_beside_is_let_go()
    {
        var page = Opened("tansy-bare-tweeter").Press("hold");
        Assert.Equal(page.Text, page.Field("other"));
        Assert.Equal("", page.Press("drop").Field("other"));
    }

    [Fact]
    public void Who_has_chosen_is_led_back_to_the_place()
    {
        var page = Opened("tansy-bare-tweeter");
        page.Press("slot:driver@front-tweeter-left+front-tweeter-right");
        Assert.NotEqual("", page.Field("slot"));
        page.Press(page.Buttons.First(b => b.StartsWith("take:", StringComparison.Ordinal)));

        Assert.Equal("", page.Field("slot"));
        Assert.DoesNotContain("class=\"offers\"", page.Html, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("step:99999.5.YQ==", "has changed since this was offered")]
    [InlineData("take:driver@nowhere=nothing", "has no such choice any more")]
    public void What_can_not_be_taken_any_more_is_told(string button, string told)
    {
        var page = Opened("tansy-bare-tweeter");
        var before = page.Text;

        Assert.Contains(told, page.Press(button).Html, StringComparison.Ordinal);
        Assert.Equal(before, page.Text);
    }

    [Fact]
    public void An_offer_says_what_the_build_costs_more_with_it()
    {
        var page = Opened("tansy-bare-tweeter");
        page.Press("slot:driver@front-tweeter-left+front-tweeter-right");
        var offers = Regex.Matches(page.Html, "<li class=\"offer[^\"]*\">(?<offer>.*?)</li>", RegexOptions.Singleline)
            .Select(m => m.Groups["offer"].Value).Where(o => o.Contains("name=\"do\"", StringComparison.Ordinal)).Take(4).ToList();
        var before = Cost(page.Text);
        Assert.NotEmpty(offers);
        Assert.Contains(offers, o => !o.Contains("same price", StringComparison.Ordinal));
        foreach (var offer in offers)
        {
            var price = WebUtility.HtmlDecode(Regex.Match(offer, "<span class=\"price\">([^<]*)</span>").Groups[1].Value);
            var difference = Cost(Opened("tansy-bare-tweeter")
                .Press("slot:driver@front-tweeter-left+front-tweeter-right")
                .Press(WebUtility.HtmlDecode(Regex.Match(offer, "name=\"do\" value=\"([^\"]*)\"").Groups[1].Value)).Text) - before;
            Assert.Contains(difference == 0 ? "same price" : Math.Abs(difference).ToString("0.00", CultureInfo.InvariantCulture), price,
                StringComparison.Ordinal);
        }
    }

    [Fact]
    public void What_the_last_action_took_away_and_brought_is_told()
    {
        var page = Opened("tansy-bare-tweeter");
        var before = Judged(page.Text);
        page.Ask("ways", "ways", [], []);
        page.Press(page.Buttons.First(b => b.StartsWith("step:", StringComparison.Ordinal)));
        var moved = WebUtility.HtmlDecode(Regex.Match(page.Html, "id=\"moved\">([^<]*)<").Groups[1].Value);

        Assert.Contains("verdict fail → ", moved, StringComparison.Ordinal);
        // The treble without its capacitor is what the build is a mistake for.
        var title = before.Findings.First(f => f.Rule == "tweeter/full-range-feed").Title;
        Assert.Contains($"{title} (fail)", moved[moved.IndexOf("gone: ", StringComparison.Ordinal)..], StringComparison.Ordinal);
    }

    [Fact]
    public void A_wrong_reading_is_still_in_its_field()
    {
        var page = Opened("alder-missing-data").Press("side:measure");
        var depth = Regex.Match(page.Html, "<input id=\"[^\"]*\" name=\"(read\\.[^\"]*mounting\\.depth)\"").Groups[1].Value;

        Assert.Matches($"name=\"{Regex.Escape(depth)}\" value=\"deep\"", page.Press("read", (depth, "deep")).Html);
    }

    [Fact]
    public void All_that_is_wrong_with_a_text_is_told()
    {
        var page = Opened("tansy-bare-tweeter");
        page.Press("typed", ("typed", page.Text.Replace("vehicle:", "vehikle:", StringComparison.Ordinal)
            .Replace("budget:", "budgett:", StringComparison.Ordinal)));

        var told = Regex.Match(page.Html, "<ul class=\"problems\">.*?</ul>", RegexOptions.Singleline).Value;
        Assert.Contains("vehikle", told, StringComparison.Ordinal);
        Assert.Contains("budgett", told, StringComparison.Ordinal);
    }

    [Fact]
    public void What_the_catalog_has_no_part_for_is_told_beside_the_list()
    {
        var build = Directory.GetFiles(RepositoryRoot.Of("catalog", "builds"), "*.yaml").Order(StringComparer.Ordinal)
            .First(f => OpenCheckers.OfRepository.List([BuildSource.File(f)]).Result!.Builds[0].Unanswered.Count > 0);

        Assert.Contains("What the catalog has no part for",
            Opened(Path.GetFileNameWithoutExtension(build)).Press("side:buy").Html, StringComparison.Ordinal);
    }

    [Fact]
    public void Of_what_was_asked_for_the_last_is_kept()
    {
        var recent = new Recent<int, string>(2);
        recent.Put(1, "one");
        recent.Put(2, "two");
        Assert.True(recent.TryGet(1, out _));
        recent.Put(3, "three");

        Assert.False(recent.TryGet(2, out _));
        Assert.True(recent.TryGet(1, out var one));
        Assert.Equal("one", one);
    }

    private static decimal Cost(string text) => Judged(text).Totals.Sum(t => t.Amount);

    private static BuildResult Judged(string text) => OpenCheckers.OfRepository.Check([BuildSource.Text("b", text)]).Result!.Builds[0];

    private static PageInHand Opened(string build) =>
        new PageInHand().Give("open", "build", build + ".yaml", File.ReadAllBytes(OpenCheckers.Build(build)));
}
