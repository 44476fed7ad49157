using FitCheck.Drawings;
using FitCheck.Evaluation;
using FitCheck.Findings;
using FitCheck.Foundation.Problems;
using FitCheck.Reports.Wording;
using Xunit;

namespace FitCheck.Tests.Reports;

public class TellingTests
{
    private static readonly Finding Left = SampleResult.Build.Findings.First(f => f.Status == Status.Fail) with
    {
        Position = "door-left",
        PositionName = "Front door, left"
    };
    private static readonly Finding Right = Left with { Position = "door-right", PositionName = "Front door, right" };

    // Two doors that mirror each other, the spacers of two hands.
    private static BuildResult Mirrored
    {
        get
        {
            var door = SampleDrawings.LeftDoor;
            return SampleResult.Build with
            {
                Findings = [Left with { Message = "The left spacer is too thin." },
                    Right with { Message = "The right spacer is too thin." }, Left with { Rule = "mount/other" },
                    Right with { Rule = "mount/other" }],
                Facts = [],
                Loads = [],
                Drawings =
                [
                    door with { Position = "door-left", Name = "Front door, left", AdapterName = "Angled spacer, left" },
                    door with { Position = "door-right", Name = "Front door, right", AdapterName = "Angled spacer, right" },
                ],
            };
        }
    }

    [Theory]
    [InlineData("Front door, left", "Front door, left")]
    [InlineData("Front door, left and right", "Front door, left", "Front door, right", "Front door, left")]
    [InlineData("Left and right front door", "Left front door", "Right front door")]
    [InlineData("Door left and right, front", "Door left, front", "Door right, front")]
    [InlineData("Output front-left and front-right of Amp", "Output front-left of Amp", "Output front-right of Amp")]
    [InlineData("gap at Front door, left and right: 54 mm", "gap at Front door, left: 54 mm", "gap at Front door, right: 54 mm")]
    [InlineData("Seat 1, 2 and 3", "Seat 1", "Seat 2", "Seat 3")]
    [InlineData("Front door, left and right; Rear door, left and right", "Front door, left", "Front door, right", "Rear door, left",
        "Rear door, right")]
    [InlineData("Build; Rear shelf", "Build", "Rear shelf")]
    [InlineData("")]
    public void Names_that_differ_in_one_word_share_the_rest(string joined, params string[] names) =>
        Assert.Equal(joined, Names.Joined(names));

    [Fact]
    public void Findings_with_the_same_words_are_told_once()
    {
        var told = Assert.Single(Told.Of([Left, Right]));
        Assert.Equal("Front door, left and right", told.Where);
        Assert.Equal(2, told.Findings.Count);
    }

    [Fact]
    public void Findings_that_differ_in_a_word_or_a_number_are_told_apart()
    {
        Assert.Equal(2, Told.Of([Left, Right with { Message = "Else." }]).Count);
        Assert.Equal(2, Told.Of([Left, Right with { Limit = 4 }]).Count);
        Assert.Equal(2, Told.Of([Left, Right with { Waived = "because" }]).Count);
    }

    [Fact]
    public void What_is_told_follows_the_order_of_the_vehicle()
    {
        var build = Mirrored with { Findings = [Right, Left with { Message = "Else.", At = new Location("z", 9, 9) }] };
        Assert.Equal("Front door, left|Front door, right", string.Join('|', Told.Of(build, Status.Fail).Select(t => t.Where)));
    }

    [Fact]
    public void A_verdict_counts_what_is_told_and_the_tally_every_check()
    {
        var findings = Mirrored.Findings;
        Assert.Equal("This build does not go together as planned: 3 points have to change.", Sentences.Verdict(Tally.OfPoints(findings)));
        Assert.Equal("3 fail", Tally.OfPoints(findings).ToString());
    }

    [Fact]
    public void Mirrored_positions_share_a_card_that_names_both_spacers()
    {
        var html = Html(Mirrored);
        Assert.Contains(">Front door, left and right</h3>", html, StringComparison.Ordinal);
        Assert.Contains("Angled spacer, left · Angled spacer, right<", html, StringComparison.Ordinal);
        Assert.Single(html.Split("class=\"drawing\"").Skip(1));
        // What is said of one side names it.
        Assert.Contains("Front door, right: The magnet meets the glass", html, StringComparison.Ordinal);
    }

    [Fact]
    public void Positions_that_differ_in_a_measure_or_a_finding_have_cards_of_their_own()
    {
        Assert.Contains(">Front door, left</h3>", Html(Mirrored with { Findings = [Left] }), StringComparison.Ordinal);
        Assert.Contains(">Front door, left</h3>",
            Html(Mirrored with { Drawings = [Mirrored.Drawings[0], Mirrored.Drawings[1] with { HoleRadius = 70 }] }),
            StringComparison.Ordinal);
    }

    [Fact]
    public void What_passes_at_one_side_alone_does_not_part_the_card()
    {
        var passing = Left with { Status = Status.Pass, Rule = "sides/alike", Message = "Both sides are alike." };
        var html = Html(Mirrored with { Findings = [.. Mirrored.Findings, passing] });
        Assert.Contains(">Front door, left and right</h3>", html, StringComparison.Ordinal);
        Assert.Contains("Front door, left: Both sides are alike.", html, StringComparison.Ordinal);
    }

    // A clock seen in a mirror: ten o'clock is two o'clock, and what runs clockwise from nine to four runs from eight to three.
    [Theory]
    [InlineData(10, 2, 9, 4, 8, 3, true)]
    [InlineData(0, 0, 11, 1, 11, 1, true)]
    [InlineData(10, 10, 9, 4, 8, 3, false)]
    [InlineData(10, 2, 9, 4, 9, 4, false)]
    public void A_place_and_its_mirror_image_share_a_card(double aim, double otherAim, double from, double to, double otherFrom,
        double otherTo, bool shared)
    {
        PositionDrawing Turned(PositionDrawing door, double hour, double begin, double end) => door with
        {
            TiltDeg = 6,
            AimHour = hour,
            Obstructions = [.. door.Obstructions.Select(o => o with { Hours = (begin, end) })],
        };
        Assert.NotEmpty(Mirrored.Drawings[0].Obstructions);
        var html = Html(Mirrored with
        {
            Drawings = [Turned(Mirrored.Drawings[0], aim, from, to), Turned(Mirrored.Drawings[1], otherAim, otherFrom, otherTo)],
        });
        Assert.Equal(shared, html.Contains(">Front door, left and right</h3>", StringComparison.Ordinal));
        // Twelve to twelve is as it is on both sides.
        Assert.Equal(shared && aim != 0,
            html.Contains("drawn: Front door, left; the other side is its mirror image", StringComparison.Ordinal));
    }

    [Fact]
    public void A_place_at_which_nothing_new_is_put_is_printed_only_where_something_is_to_be_said()
    {
        string Door(string? driver, Status status) => Html(Mirrored with
        {
            Findings = [Left with { Status = status }],
            Drawings = [Mirrored.Drawings[0] with { DriverName = driver, AdapterName = null, CupName = null }],
        });
        const string Unprinted = "unprinted\" id=\"b1-p1\"";
        Assert.Contains(Unprinted, Door(null, Status.Pass), StringComparison.Ordinal);
        Assert.DoesNotContain(Unprinted, Door(null, Status.Warn), StringComparison.Ordinal);
        Assert.DoesNotContain(Unprinted, Door("Heron", Status.Pass), StringComparison.Ordinal);
    }

    [Fact]
    public void What_fails_is_told_before_what_waits_and_shown_before_what_stays()
    {
        var last = Right with { Position = "rear", PositionName = "Rear shelf" };
        var html = Html(Mirrored with
        {
            Findings =
            [
                Left with { Status = Status.Warn }, last,
                last with { Rule = "mount/other", Status = Status.Measure, ToMeasure = [new ToMeasure("depth", "With a gauge.", null)] },
            ],
            Drawings = [Mirrored.Drawings[0], Mirrored.Drawings[1] with { Position = "rear", Name = "Rear shelf", HoleRadius = 70 }],
        });
        string[] order = [">What to change</h2>", ">What to measure first</h2>", ">What to look at</h2>", ">Rear shelf</h3>",
            ">Front door, left</h3>"];
        Assert.Equal(order, order.OrderBy(o => html.IndexOf(o, StringComparison.Ordinal)));
        Assert.All(order, o => Assert.Contains(o, html, StringComparison.Ordinal));
    }

    [Fact]
    public void Outputs_of_an_amplifier_are_told_apart_where_one_drawing_stands_for_both()
    {
        var curve = SampleDrawings.LeftChannel;
        LoadCurve Named(string side) => curve with { Channel = side, Name = $"Output {side} of Amp", Tweeters = [] };
        WiringDiagram Wired(string side, string terminal) =>
            new(side, $"Output {side} of Amp", "Amp", [terminal], [], null, [new($"Door, {side}", "Heron", "tabs", false, false)]);
        string Drawn(params string[] terminals) => Words(Html(Mirrored with
        {
            Loads = [Named("left"), Named("right")],
            Wirings = [Wired("left", terminals[0]), Wired("right", terminals[1])],
        }));
        Assert.Contains("output 1 left, 2 right", Drawn("1", "2"), StringComparison.Ordinal);
        Assert.Contains("output left and right", Drawn("left", "right"), StringComparison.Ordinal);
    }

    [Fact]
    public void Outputs_with_equal_curves_share_a_card()
    {
        var curve = SampleDrawings.LeftChannel;
        LoadCurve Named(string side) =>
            curve with { Channel = side, Name = $"Output {side} of Amp", Tweeters = [curve.Tweeters[0] with { Name = $"Sail, {side}" }] };
        var html = Html(Mirrored with { Loads = [Named("left"), Named("right")] });
        Assert.Contains(">Output left and right of Amp</h3>", html, StringComparison.Ordinal);
        Assert.Contains(">Sail, left and right<", html, StringComparison.Ordinal);
    }

    [Fact]
    public void A_datum_of_both_sides_is_one_task()
    {
        ToMeasure Depth(string side) => new($"depth at Front door, {side}", "With a gauge.", "66 mm or more");
        var build = Mirrored
            with
        {
            Findings = [Left with { Status = Status.Measure, ToMeasure = [Depth("left")] },
                Right with { Status = Status.Measure, ToMeasure = [Depth("right")] }]
        };
        var task = Assert.Single(MeasureFirst.Of(build));
        Assert.Equal("depth at Front door, left and right", task.What);
        Assert.Equal("Front door, left and right", Assert.Single(task.Outcomes).Told.Where);
    }

    [Theory]
    [InlineData("low_count", "", false)]
    [InlineData("high_passes", "", false)]
    [InlineData("headroom", "", true)]
    [InlineData("gap", "mm", true)]
    public void Counts_tell_nothing_beside_their_message(string fact, string unit, bool tells) =>
        Assert.Equal(tells, Figures.Tell(Left with { Fact = fact, Unit = unit }));

    [Fact]
    public void Truths_and_words_tell_nothing_beside_their_message() =>
        Assert.Equal("", Figures.Row(Left with { Value = null, Limit = null, Margin = null, Unit = "", ValueText = "no" }));

    [Theory]
    [InlineData(0.000928, "", "0.0009")]
    [InlineData(0.0471, "", "0.047")]
    [InlineData(0.32, "", "0.32")]
    [InlineData(0, "", "0")]
    [InlineData(0.04, "mm", "0")]
    public void A_small_ratio_does_not_read_as_nothing(double value, string unit, string shown) =>
        Assert.Equal(shown, Figures.Bare(value, unit));

    [Theory]
    [InlineData("builds/a.yaml", "builds/a.yaml")]
    [InlineData("/opt/x/catalog/drivers/a.yaml", "catalog/drivers/a.yaml")]
    [InlineData("/opt/x/rules/mount/a.yaml", "rules/mount/a.yaml")]
    [InlineData("/home/me/a.yaml", "a.yaml")]
    public void A_page_names_no_folder_of_the_machine(string file, string shown) => Assert.Equal(shown, Figures.ShortFile(file));

    // What stands in one drawing's lines, one behind the other.
    private static string Words(string html) =>
        string.Join(' ', System.Text.RegularExpressions.Regex.Matches(html, "<text[^>]*>([^<]*)</text>").Select(m => m.Groups[1].Value));

    private static string Html(BuildResult build) =>
        ReportSnapshotTests.Written("html", new CheckResult("fitcheck 0.1.0", "sha256:0", [build]));
}
