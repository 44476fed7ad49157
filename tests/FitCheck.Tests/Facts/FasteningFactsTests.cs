using FitCheck.Facts.Values;
using Xunit;

namespace FitCheck.Tests.Facts;

/// <summary>Holes, screws and gasket of whole builds against figures worked by hand from the catalog's entries.</summary>
public sealed class FasteningFactsTests
{
    [Fact]
    public void An_angled_ring_of_no_hand_keeps_its_aim_and_tells_where_to_drill()
    {
        var left = Facts("tansy-hatch", "front-door-left", "halvard-m165-4", "spacer-165-tilt-6");

        // worked by hand: 45, 135, 225, 315 turned by 315 degrees are 0, 90, 180, 270
        Assert.Equal(0, left["panel_holes_meeting"].Number!.Value.Value);
        Assert.Equal("1:30, 4:30, 7:30, 10:30", left["panel_holes_missed_at"].Word); // worked by hand: 45 degrees are half past one
        // worked by hand: as drawn
        Assert.Contains("aimed at 12:00 instead, 4 would meet", left["panel_turn"].Word, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("front-door-left", "spacer-165-corvid-6", 3)] // worked by hand: 40, 150, 275 are among the ring's six
    [InlineData("front-door-right", "spacer-165-corvid-6", 3)] // worked by hand: so are 320, 210, 85
    [InlineData("front-door-left", "spacer-165-larkspur-12", 1)] // worked by hand: gaps of 110, 125, 125 degrees on thirds
    public void Both_sides_of_a_vehicle_are_mirror_images(string position, string adapter, double meeting) =>
        Assert.Equal(meeting, Facts("corvid-sedan", position, "pellworth-c165", adapter)["panel_holes_meeting"].Number!.Value.Value);

    [Theory]
    [InlineData("spacer-165-gannet-tilt-5-left", 4)] // worked by hand: 25, 120, 205, 310 are one of its two sets
    // worked by hand: 5, 50, 110, 155, 195, 240, 290, 335 has none of them, and it may not be turned
    [InlineData("spacer-165-gannet-tilt-5-right", 0)]
    public void A_handed_ring_is_tried_as_it_is_drawn(string adapter, double meeting) =>
        Assert.Equal(meeting, Facts("gannet-coupe", "front-door-left", "tamsin-c165s", adapter)["panel_holes_meeting"].Number!.Value.Value);

    [Fact]
    public void A_screw_holds_in_the_boss_and_ends_before_the_panel()
    {
        var facts = Facts("tansy-hatch", "front-door-left", "orrin-c165", "spacer-165-tansy-18", "screws-st39x16");

        Millimetres(12, facts["screw_hold"]); // worked by hand: 16 less a flange of 4
        Millimetres(6, facts["screw_tip_room"]); // worked by hand: 4 + 18 − 16
        Millimetres(22, facts["screw_longest"]); // worked by hand: 4 + 18
        Millimetres(20, facts["screw_whole_boss"]); // worked by hand: 4 and a boss of 16
        Millimetres(0.3, facts["screw_play"]); // worked by hand: 4.2 less 3.9
    }

    [Fact]
    public void A_gasket_has_a_wide_and_a_narrow_gap_on_an_angled_ring()
    {
        var facts = Facts("tansy-hatch", "front-door-left", "halvard-m165-4", "spacer-165-tilt-6", "ring-165-35");

        Millimetres(29.253, facts["gasket_gap_widest"]); // worked by hand: 40 − 15 − 4.5·cos 6° + 83.5·sin 6° = 20.5247 + 8.7281
        Millimetres(11.797, facts["gasket_gap_narrowest"]); // worked by hand: 20.5247 − 8.7281
        Millimetres(5.747, facts["gasket_reach"]); // worked by hand: 35 − 29.253
        Millimetres(6.797, facts["gasket_room"]); // worked by hand: 11.797 − 5
    }

    [Theory]
    [InlineData("ring-165-35", 11, 6.93)] // worked by hand: (166 − 144) / 2; 72 − √(13300 / π) = 72 − 65.07, flange 166 mm, Sd 133 cm²
    [InlineData("ring-100-20", 5, -17.07)] // worked by hand: (106 − 96) / 2; 48 − 65.07: it lies on the cone
    [InlineData("ring-200-20", -8, 25.93)] // worked by hand: (166 − 182) / 2: around the flange; 91 − 65.07
    public void A_gasket_stands_on_the_flange_and_outside_of_what_moves(string ring, double rest, double clearance)
    {
        var facts = Facts("tansy-hatch", "front-door-left", "tamsin-t165-mk1", "spacer-165-tansy-18", ring);

        Millimetres(rest, facts["gasket_rest"]);
        Millimetres(clearance, facts["gasket_cone_clearance"]);
    }

    private static void Millimetres(double expected, FactValue value) => Assert.Equal(expected, value.Number!.Value.Value * 1000, 2);

    private static IReadOnlyDictionary<string, FactValue> Facts(string vehicle, string position, string driver, string adapter,
        string with = "foam-tape-3x12") =>
        Trial.Of($"""
            kind: build
            name: a trial
            vehicle: {vehicle}
            fit:
              - at: [{position}]
                driver: {driver}
                adapter: {adapter}
                with: [{with}]
            """).Facts.First(f => f.Subject == Subject.Position).Values;
}
