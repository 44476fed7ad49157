using System.Xml.Linq;
using FitCheck.Catalog;
using FitCheck.Findings;
using FitCheck.Reports.Svg.Plan;
using FitCheck.Tests.Snapshots;
using Xunit;

namespace FitCheck.Tests.Reports.Plan;

public class CarPlanTests
{
    private static readonly string[] Fittings = ["Kestow W165 woofer", "Brannoch coaxial 6x9 on a ring of 12 mm, tilted towards the ears",
        "a very-long-word-without-any-break-at-all-in-it", "x"];

    public static TheoryData<string> Vehicles => [.. DrawnPlan.Vehicles.Select(v => v.Id)];

    [Fact]
    public void The_catalog_has_its_nine_vehicles() => Assert.Equal(9, DrawnPlan.Vehicles.Count);

    [Fact]
    public void A_vehicle_is_laid_out_as_before()
    {
        var vehicle = DrawnPlan.Named("larkspur-wagon");
        Status?[] statuses = [Status.Fail, Status.Pass, Status.Measure, Status.Warn, null, null, Status.Pass, null];
        var places = vehicle.Positions.Select((p, i) => PlanPlace.Of(p) with
        {
            Status = statuses[i],
            Fitted = i is 5 ? null : Fittings[i % 2],
            Changed = i == 2,
        }).ToList();

        var svg = new DrawnPlan(vehicle, places, "front-tweeter-left").Markup;

        Snapshot.Match(svg.Replace("><", ">\n<", StringComparison.Ordinal) + "\n", "larkspur-plan", "svg");
    }

    // Every status, fitting and change drawn by lot, from a seed, so that a failure can be looked at again.
    [Theory]
    [MemberData(nameof(Vehicles))]
    public void Nothing_touches_whatever_the_places_are(string id)
    {
        var vehicle = DrawnPlan.Named(id);
        for (var seed = 0; seed < 60; seed++)
            AssertClear(new DrawnPlan(vehicle, ByLot(vehicle.Positions, seed)), $"{id}, seed {seed}");
    }

    [Theory]
    [MemberData(nameof(Vehicles))]
    public void Left_is_left_and_the_front_is_up(string id)
    {
        var vehicle = DrawnPlan.Named(id);
        var plan = new DrawnPlan(vehicle, ByLot(vehicle.Positions, 1));

        foreach (var position in vehicle.Positions.Where(p => p.Side != "centre"))
        {
            Assert.Equal(position.Side == "left", plan.MarkOf(position.Id).X < plan.Width / 2);
            Assert.Equal(position.Side == "left", plan.LabelMiddleOf(position.Id) < plan.Width / 2);
        }
        foreach (var one in vehicle.Positions.Where(p => p.Location.Count == 3))
        {
            foreach (var other in vehicle.Positions.Where(p => p.Location.Count == 3 && p.Side == one.Side))
            {
                if (one.Location[0].Si > other.Location[0].Si)
                    Assert.True(plan.MarkOf(one.Id).Y < plan.MarkOf(other.Id).Y, $"{one.Id} is in front of {other.Id}");
            }
        }
    }

    [Theory]
    [MemberData(nameof(Vehicles))]
    public void Every_position_is_there_once_as_a_link_that_says_what_it_is(string id)
    {
        var vehicle = DrawnPlan.Named(id);
        var places = ByLot(vehicle.Positions, 3);
        var plan = new DrawnPlan(vehicle, places, places[0].Id);

        Assert.Equal(vehicle.Positions.Select(p => p.Id), plan.Links.Select(DrawnPlan.Place));
        foreach (var (place, link) in places.Zip(plan.Links))
        {
            Assert.Equal($"#place-{place.Id}", link.Attribute("href")!.Value);
            Assert.StartsWith($"{place.Name} {place.Word}", string.Join(' ', link.Elements("text").Select(t => t.Value)),
                StringComparison.Ordinal);
            Assert.Contains(link.Elements("text"), t => t.Value == place.Word);
            Assert.Equal(place.Id == places[0].Id, link.Attribute("aria-current") is not null);
        }
    }

    // What a screen reader may reach inside must not lie in a picture: WAI-ARIA 1.2, children of `img` are presentational.
    [Fact]
    public void It_is_a_group_of_links_with_a_name_and_one_sentence_and_has_no_style_of_its_own()
    {
        var vehicle = DrawnPlan.Named("gannet-coupe");
        var plan = new DrawnPlan(vehicle, ByLot(vehicle.Positions, 5));

        Assert.Equal("group", plan.Root.Attribute("role")!.Value);
        Assert.Equal($"{vehicle.Name}, seen from above", plan.Root.Element("title")!.Value);
        Assert.Contains("the steering wheel is on the right", plan.Root.Element("desc")!.Value, StringComparison.Ordinal);
        Assert.DoesNotContain(plan.Root.DescendantsAndSelf(),
            e => e.Attribute("style") is not null || e.Name.LocalName is "style" or "script");
    }

    [Fact]
    public void The_steering_wheel_is_on_its_side()
    {
        Assert.True(Wheel("gannet-coupe") > 172); // its entry says right
        Assert.True(Wheel("tansy-hatch") < 172);

        static double Wheel(string id)
        {
            var lines = new DrawnPlan(DrawnPlan.Named(id), []).Root.Elements("line");
            var wheel = lines.Single(l => l.Attribute("class")!.Value == "wheel");
            return ((double)wheel.Attribute("x1")! + (double)wheel.Attribute("x2")!) / 2;
        }
    }

    [Fact]
    public void Each_state_has_a_shape_of_its_own()
    {
        var vehicle = DrawnPlan.Named("larkspur-wagon");
        Status?[] statuses = [Status.Fail, Status.Pass, Status.Measure, Status.Warn, null, null];
        var places = vehicle.Positions.Take(6)
            .Select((p, i) => PlanPlace.Of(p) with { Status = statuses[i], Fitted = i == 5 ? null : "something" }).ToList();
        var plan = new DrawnPlan(vehicle, places);

        string[] words = ["fail", "pass", "measure", "warn", "not judged", "empty"];
        Assert.Equal(words, places.Select(p => p.Word));
        Assert.Equal(6, plan.Links.Select(a => string.Concat(a.Elements("g").First().Elements())).Distinct().Count());
    }

    [Fact]
    public void Forty_positions_still_have_their_room_on_a_higher_paper()
    {
        var vehicle = DrawnPlan.Named("tansy-hatch");
        var lot = new Random(40);
        string[] sides = ["left", "right", "centre"], kinds = ["door", "dash", "sail", "pillar", "rear-panel", "shelf", "cargo", ""];
        var places = Enumerable.Range(0, 40).Select(i =>
        {
            var side = sides[lot.Next(3)];
            var left = side switch { "left" => 1, "right" => -1, _ => 0 } * lot.Next(100, 900) / 1000.0;
            double[] location = lot.Next(3) == 0 ? [] : [lot.Next(-2000, 1000) / 1000.0, left, -0.5];
            return new PlanPlace($"place-{i}", $"Place number {i}, {side}", side, kinds[lot.Next(8)], location)
            { Fitted = Fittings[i % 4] };
        }).ToList();

        var plan = new DrawnPlan(vehicle, places);

        AssertClear(plan, "forty places");
        Assert.Equal(40, plan.Links.Count);
        Assert.True(plan.Height > new DrawnPlan(vehicle, ByLot(vehicle.Positions, 1)).Height * 2);
    }

    [Theory]
    [MemberData(nameof(HostileTexts.All), MemberType = typeof(HostileTexts))]
    public void Hostile_names_stay_text(string text)
    {
        var vehicle = DrawnPlan.Named("tansy-hatch");
        var places = vehicle.Positions.Select(p => PlanPlace.Of(p) with { Name = text, Fitted = text, Status = Status.Warn }).ToList();
        places[0] = places[0] with { Id = text };

        var plan = new DrawnPlan(vehicle, places, text);

        string[] known = ["svg", "title", "desc", "a", "g", "path", "circle", "rect", "line", "text", "polygon", "polyline"];
        Assert.Empty(plan.Root.DescendantsAndSelf().Select(e => e.Name.LocalName).Except(known));
        Assert.Equal(6, plan.Links.Count);
        AssertClear(plan, text);
    }

    [Theory]
    [InlineData(double.NaN)]
    [InlineData(double.NegativeInfinity)]
    [InlineData(1e12)]
    public void Absurd_locations_still_give_a_drawing(double number)
    {
        var vehicle = DrawnPlan.Named("corvid-sedan");
        var places = vehicle.Positions.Select(p => PlanPlace.Of(p) with { Location = [number, number, number] }).ToList();

        var plan = new DrawnPlan(vehicle, places);

        AssertClear(plan, "absurd");
        Assert.DoesNotContain("NaN", plan.Markup, StringComparison.Ordinal);
    }

    private static List<PlanPlace> ByLot(IEnumerable<Position> positions, int seed)
    {
        var lot = new Random(seed);
        Status?[] statuses = [Status.Pass, Status.Warn, Status.Measure, Status.Fail, null];
        return [.. positions.Select(p => PlanPlace.Of(p) with
        {
            Status = statuses[lot.Next(5)],
            Fitted = lot.Next(4) == 0 ? null : Fittings[lot.Next(Fittings.Length)],
            Changed = lot.Next(3) == 0,
        })];
    }

    private static void AssertClear(DrawnPlan plan, string of)
    {
        foreach (var area in plan.Words.Concat(plan.Marks))
        {
            Assert.True(area.Left >= 0 && area.Top >= 0 && area.Right <= plan.Width && area.Bottom <= plan.Height, $"{of}: {area}");
        }
        var words = plan.Words;
        var marks = plan.Marks;
        for (var i = 0; i < words.Count; i++)
        {
            Assert.DoesNotContain(marks, m => m.Meets(words[i]));
            Assert.DoesNotContain(words.Skip(i + 1), w => w.Of != words[i].Of && w.Meets(words[i]));
        }
        for (var i = 0; i < marks.Count; i++)
            Assert.DoesNotContain(marks.Skip(i + 1), m => m.Meets(marks[i]));
    }
}
