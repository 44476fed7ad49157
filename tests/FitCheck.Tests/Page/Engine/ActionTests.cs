using System.Text;
using System.Text.RegularExpressions;
using FitCheck.Evaluation;
using FitCheck.Findings;
using FitCheck.Page;
using FitCheck.Tests.Checking;
using FitCheck.Tests.Reports;
using Xunit;

namespace FitCheck.Tests.Page.Engine;

/// <summary>What people do on the page.</summary>
public class ActionTests
{
    [Fact]
    public void A_word_of_a_name_finds_the_car()
    {
        var page = new PageInHand().Press("seek", ("sought", "tansy"));

        Assert.Equal(["vehicle:tansy-hatch"], page.Buttons.Where(b => b.StartsWith("vehicle:", StringComparison.Ordinal)));
        Assert.Contains("No car of the catalog", new PageInHand().Press("seek", ("sought", "zzzz")).Html, StringComparison.Ordinal);
    }

    [Fact]
    public void A_car_that_nothing_is_called_like_can_still_take_over_another()
    {
        var page = new PageInHand().Press("seek", ("sought", "zzzz"));

        Assert.DoesNotContain(page.Buttons, b => b.StartsWith("vehicle:", StringComparison.Ordinal));
        Assert.Contains("instead:tansy-hatch", page.Buttons);
    }

    [Fact]
    public void A_reading_that_is_typed_settles_what_waits_for_it_and_a_wrong_one_is_told_beside_its_field()
    {
        var page = Opened("alder-missing-data").Press("side:measure");
        var fields = Regex.Matches(page.Html, "<input id=\"[^\"]*\" name=\"(read\\.[^\"]*)\"").Select(m => m.Groups[1].Value).ToList();
        var depth = fields.First(f => f.EndsWith("mounting.depth", StringComparison.Ordinal));

        page.Press("read", (depth, "deep"));
        Assert.Contains("aria-invalid=\"true\"", page.Html, StringComparison.Ordinal);
        Assert.Contains("expected a length", page.Html, StringComparison.Ordinal);
        Assert.DoesNotContain("value: deep", page.Text, StringComparison.Ordinal);

        page.Press("read", (depth, "2 9/16 in"));
        Assert.DoesNotContain($"name=\"{depth}\"", page.Html, StringComparison.Ordinal);
        Assert.Contains("2 9/16 in", page.Text, StringComparison.Ordinal);
        Assert.DoesNotContain("2 9/16 in", page.Press("undo").Text, StringComparison.Ordinal);
    }

    [Fact]
    public void A_way_out_is_taken_by_one_press_and_taken_back_by_one()
    {
        var page = Opened("tansy-bare-tweeter");
        var before = page.Text;
        page.Ask("ways", "ways", [], []);
        page.Press(page.Buttons.First(b => b.StartsWith("step:", StringComparison.Ordinal)));

        Assert.NotEqual("fail", page.Verdict);
        Assert.Equal(before, page.Press("undo").Text);
        Assert.Equal("fail", page.Verdict);
    }

    [Fact]
    public void A_sellers_list_becomes_the_build_and_what_is_unsure_is_asked()
    {
        var list = Encoding.UTF8.GetBytes("article;quantity\npellworth-p165;1\nSpacer 18 mm for the Tansy;1\nSome unheard thing;2\n");
        var page = new PageInHand().Press("vehicle:tansy-hatch").Give("quote", "quote", "till.csv", list);
        for (var i = 0; i < 8 && page.Html.Contains("what is meant?", StringComparison.Ordinal); i++)
        {
            var asked = Regex.Matches(page.Html, "<input type=\"radio\" name=\"([^\"]*)\" value=\"([^\"]*)\"")
                .GroupBy(m => m.Groups[1].Value)
                .Select(g => (g.Key, g.First().Groups[2].Value)).ToArray();
            Assert.NotEmpty(asked);
            page.Press("quote", asked);
        }

        Assert.Contains("pellworth-p165", page.Text, StringComparison.Ordinal);
        Assert.Contains("quote:", page.Text, StringComparison.Ordinal);
        Assert.NotNull(OpenCheckers.OfRepository.Check([BuildSource.Text("b", page.Text)]).Result);
    }

    [Fact]
    public void What_is_typed_into_the_text_is_not_lost_by_another_button()
    {
        var page = Opened("tansy-bare-tweeter");
        var typed = page.Text.Replace("name:", "notes: seen on the counter\nname:", StringComparison.Ordinal);
        page.Press("side:text").Press("side:buy", ("typed", typed.ReplaceLineEndings("\r\n")));

        Assert.Equal(typed, page.Text);
    }

    [Fact]
    public void A_broken_text_is_told_with_its_lines_and_mended_by_undo()
    {
        var page = Opened("tansy-bare-tweeter");
        var good = page.Text;
        page.Press("typed", ("typed", good.Replace("vehicle: tansy-hatch", "vehicle: tansy-hach", StringComparison.Ordinal)));

        Assert.Contains("tansy-bare-tweeter.yaml:", page.Html, StringComparison.Ordinal);
        Assert.Contains("tansy-hatch", Regex.Match(page.Html, "<ul class=\"problems\">.*?</ul>", RegexOptions.Singleline).Value,
            StringComparison.Ordinal);
        Assert.Equal(good, page.Press("undo").Text);
    }

    [Fact]
    public void Another_build_is_held_beside_and_both_can_be_worked_on()
    {
        var page = Opened("tansy-bare-tweeter").Press("hold");
        var held = page.Text;
        page.Ask("ways", "ways", [], []);
        page.Press(page.Buttons.First(b => b.StartsWith("step:", StringComparison.Ordinal)));
        var mended = page.Text;
        page.Press("side:beside");

        Assert.Contains("Side by side", page.Html, StringComparison.Ordinal);
        Assert.Equal(held, page.Press("swap").Text);
        Assert.Equal(mended, page.Press("swap").Text);
    }

    [Fact]
    public void The_text_shows_what_is_about_the_place_and_what_changed()
    {
        var page = new PageInHand().Press("vehicle:tansy-hatch").Press("slot:driver@front-door-left+front-door-right");
        page.Press(page.Buttons.First(b => b.StartsWith("step:", StringComparison.Ordinal))).Press("side:text");

        Assert.Matches("<li class=\"new[^\"]*\"><code>fit:", page.Html);
        Assert.Matches("<li class=\"[^\"]*lit\"><code>[^<]*front-door-left", page.Html);
        Assert.DoesNotMatch("<li class=\"[^\"]*lit\"><code>vehicle:", page.Html);
    }

    [Fact]
    public void A_car_that_is_not_here_passes_nothing_before_it_is_measured()
    {
        var page = new PageInHand().Press("instead:tansy-hatch", ("car", "the neighbour's van"));
        page.Press("slot:driver@front-door-left+front-door-right");
        page.Press(page.Buttons.First(
            b => b.StartsWith("take:", StringComparison.Ordinal) || b.StartsWith("step:", StringComparison.Ordinal)));

        Assert.Contains("the neighbour's van", page.Text, StringComparison.Ordinal);
        Assert.True(page.Verdict is "measure" or "fail", page.Sentence);
    }

    [Theory]
    [InlineData("report")]
    [InlineData("sheet")]
    [InlineData("list")]
    public void Papers_hold_no_style_and_no_script_of_their_own(string what)
    {
        var page = Opened("front-rear-two-amps");
        page.Ask("print", "", [("what", what)], []);

        Assert.Contains("<h1", page.Html, StringComparison.Ordinal);
        Assert.Contains(".css\">", page.Html, StringComparison.Ordinal);
        Strict(page.Html);
    }

    [Theory]
    [MemberData(nameof(HostileTexts.All), MemberType = typeof(HostileTexts))]
    public void What_strangers_name_stays_text_on_every_side(string name)
    {
        var page = Opened("tansy-bare-tweeter");
        var text = Regex.Replace(page.Text, "(?m)^name: .*$", _ => $"name: {FitCheck.Yaml.YamlText.Quoted(Whole(name))}");
        page.Press("typed", ("typed", text));
        foreach (var side in FitCheck.Page.State.PageState.Sides)
        {
            Strict(page.Press($"side:{side}").Html);
            Assert.DoesNotContain("<script>alert", page.Html, StringComparison.Ordinal);
            Assert.DoesNotContain("<img src=x", page.Html, StringComparison.Ordinal);
        }
        Strict(page.Press("seek", ("sought", name), ("car", name)).Html);
        Strict(page.Give("quote", "quote", name + ".csv",
            Encoding.UTF8.GetBytes($"name;n\n\"{Whole(name).Replace("\"", "\"\"", StringComparison.Ordinal)}\";1\n")).Html);
        Strict(page.Press(name).Html);
    }

    [Fact]
    public void Fields_that_mean_nothing_get_a_page_all_the_same()
    {
        var engine = new PageEngine(OpenCheckers.OfRepository, new PageOptions { TemplatesDirectory = RepositoryRoot.Of("reports") });
        string[] odd = ["", "x", "-1", "999999999999999999999", "::", "step:", "take:", "slot:@", "\0", new string('a', 100_000), "[[[[",
            "{"];
        foreach (var request in from name in PageEngine.Names
                                from value in odd
                                from isPart in new[] { true, false }
                                select new PageRequest
                                {
                                    Name = name,
                                    IsPart = isPart,
                                    Fields = [.. new[] { "text", "past", "future", "place", "slot", "side", "other", "file", "do", "upto",
                                        "prefer", "what", "typed", "read.x/y", "line.x", "goes.", "quote-bytes" }
                                        .Select(f => KeyValuePair.Create(f, value))],
                                })
        {
            var answer = engine.Answer(request);
            Assert.InRange(answer.Status, 200, 499);
            if (answer.ContentType.StartsWith("text/html", StringComparison.Ordinal))
                Strict(answer.Text);
        }
    }

    [Fact]
    public void A_file_keeps_the_ends_of_its_lines()
    {
        var unix = File.ReadAllText(OpenCheckers.Build("tansy-door-swap"));
        var windows = unix.Replace("\n", "\r\n", StringComparison.Ordinal);
        Assert.DoesNotContain("\r", Saved(Given("unix.yaml", unix)), StringComparison.Ordinal);
        var page = Given("windows.yaml", windows);
        Assert.Equal(windows, Saved(page));

        page.Press("side:text");
        var changed = Saved(page.Press("typed", ("typed", page.Text + "# more\n")));
        Assert.Equal(windows + "# more\r\n", changed);
    }

    [Fact]
    public void A_file_that_is_taken_back_takes_its_name_along()
    {
        var page = Given("one.yaml", "kind: build\nname: one\nvehicle: tansy-hatch\n");
        page.Give("open", "build", "two.yaml", "kind: build\r\nname: two\r\nvehicle: tansy-hatch\r\n"u8.ToArray());
        Assert.Equal(("two.yaml", "kind: build\r\nname: two\r\nvehicle: tansy-hatch\r\n"), SavedAs(page));

        page.Press("undo");
        Assert.Equal(("one.yaml", "kind: build\nname: one\nvehicle: tansy-hatch\n"), SavedAs(page));
        page.Press("redo");
        Assert.Equal(("two.yaml", "kind: build\r\nname: two\r\nvehicle: tansy-hatch\r\n"), SavedAs(page));
    }

    private static PageInHand Given(string name, string text) => new PageInHand().Give("open", "build", name, Encoding.UTF8.GetBytes(text));

    private static string Saved(PageInHand page) => SavedAs(page).Text;

    private static (string? Name, string Text) SavedAs(PageInHand page)
    {
        var answer = page.Answer("save");
        return (answer.SaveAs, answer.Text);
    }

    private static PageInHand Opened(string build) =>
        new PageInHand().Give("open", "build", build + ".yaml", File.ReadAllBytes(OpenCheckers.Build(build)));

    // Half a character is no text that a form could hold.
    private static string Whole(string text) => Encoding.UTF8.GetString(Encoding.UTF8.GetBytes(text));

    // What a strict content policy refuses must not be there.
    private static void Strict(string html)
    {
        Assert.DoesNotMatch("<style|<script(?! src=\"[a-z.]+\" defer></script>)|javascript:", html);
        Assert.DoesNotMatch("<[a-z][^>\"]*(\"[^\"]*\"[^>\"]*)*\\s(style|on[a-z]+)=", html);
    }
}
