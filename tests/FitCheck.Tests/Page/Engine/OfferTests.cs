using System.Net;
using System.Text.RegularExpressions;
using FitCheck.Evaluation;
using FitCheck.Findings;
using FitCheck.Tests.Checking;
using Xunit;

namespace FitCheck.Tests.Page.Engine;

/// <summary>What is said of a choice before it is taken.</summary>
public class OfferTests
{
    // The builds with their first slots: drivers, sets, spacers, cables and what amplifiers are.
    public static TheoryData<string> Builds => ["tansy-bare-tweeter", "front-rear-two-amps", "pellet-too-deep", "corvid-shelf-6x9"];

    [Theory]
    [MemberData(nameof(Builds))]
    public void Each_comes_best_first_and_is_told_as_it_is_when_taken(string build)
    {
        var page = Opened(build);
        var slots = page.Buttons.Where(b => b.StartsWith("slot:", StringComparison.Ordinal)).Take(3).ToList();
        Assert.NotEmpty(slots);
        foreach (var slot in slots)
        {
            page.Press(slot);
            var offers = Regex.Matches(page.Html, "<li class=\"offer[^\"]*\">(?<offer>.*?)</li>", RegexOptions.Singleline)
                .Select(m => m.Groups["offer"].Value)
                .ToList();
            var ranks = offers.Select(o => Regex.Match(o, "status-([a-z]+)").Groups[1].Value)
                .Select(w => StatusWords.Parse(w) is { } s ? (int)s : 9).ToList();
            Assert.Equal(ranks.Order(), ranks);
            foreach (var offer in offers.Where(o => o.Contains("name=\"do\"", StringComparison.Ordinal)).Take(4))
            {
                var said = Regex.Match(offer, "the whole build: ([a-z]+)") is { Success: true } whole ? whole.Groups[1].Value
                    : Regex.Match(offer, "status-([a-z]+)").Groups[1].Value;
                var taken = Opened(build).Press(slot)
                    .Press(WebUtility.HtmlDecode(Regex.Match(offer, "name=\"do\" value=\"([^\"]*)\"").Groups[1].Value));
                Assert.True(taken.Verdict == said || StatusWords.Parse(taken.Verdict) < StatusWords.Parse(said),
                    $"{slot}: said {said}, then {taken.Verdict}: {offer}");
                if (Regex.IsMatch(offer, "the whole build"))
                    Assert.Equal(said, taken.Verdict);
            }
        }
    }

    [Fact]
    public void A_driver_that_fits_on_a_spacer_alone_is_offered_with_it()
    {
        var page = new PageInHand().Press("vehicle:tansy-hatch").Press("slot:driver@front-door-left+front-door-right");

        // The window glass of this car stands so near that nothing fits straight on the panel.
        Assert.Matches("<p class=\"offer-with\">with [^<]*spacer", page.Html);
        page.Press(page.Buttons.First(b => b.StartsWith("step:", StringComparison.Ordinal)));
        Assert.Contains("adapter:", page.Text, StringComparison.Ordinal);
    }

    [Fact]
    public void Parts_come_by_and_by_the_same_as_all_at_once()
    {
        var page = new PageInHand().Press("vehicle:tansy-hatch").Press("slot:driver@front-door-left+front-door-right");
        var request = page.Request("choices", "", [("upto", "500")], [], isPart: true);
        var engine = new FitCheck.Page.PageEngine(OpenCheckers.OfRepository,
            new FitCheck.Page.PageOptions { TemplatesDirectory = RepositoryRoot.Of("reports") });
        string Upto(string count) => engine.Answer(request with { Fields = [.. request.Fields, new("upto", count)] }).Text;

        var (first, all) = (Upto("10"), Upto("500"));

        Assert.Contains("hx-trigger=\"load\"", first, StringComparison.Ordinal);
        Assert.DoesNotContain("hx-trigger=\"load\"", all, StringComparison.Ordinal);
        Assert.Equal(10, Regex.Count(first, "<li class=\"offer"));
        Assert.Equal(all, Upto("500"));
        Assert.Equal(OpenCheckers.OfRepository.Choices(BuildSource.Text("b", page.Text)).Result!.Slots
            .First(s => s.What == "driver" && s.Where.Contains("front-door-left")).Choices.Count, Regex.Count(all, "<li class=\"offer"));
    }

    private static PageInHand Opened(string build)
    {
        var page = new PageInHand().Give("open", "build", build + ".yaml", File.ReadAllBytes(OpenCheckers.Build(build)));
        return page.Press(page.Buttons.First(b => b.StartsWith("place:", StringComparison.Ordinal)));
    }
}
