using FitCheck.Evaluation;
using FitCheck.Facts.Values;
using FitCheck.Findings;
using Xunit;

namespace FitCheck.Tests.Facts;

/// <summary>What reaches the listener, on builds of the catalog, against figures from outside the program.</summary>
public sealed class ListenerFactsTests
{
    private static BuildResult Build(string name, params (string From, string To)[] changes)
    {
        var text = Trial.Entry($"builds/{name}.yaml");
        foreach (var (from, to) in changes)
        {
            Assert.Contains(from, text, StringComparison.Ordinal);
            text = text.Replace(from, to, StringComparison.Ordinal);
        }
        return Trial.Of(text);
    }

    private static FactValue Fact(BuildResult build, string position, string fact) =>
        build.Facts.First(t => t.Key == position).Values[fact];

    private static double Number(BuildResult build, string position, string fact) => Fact(build, position, fact).Number!.Value.Value;

    private static double Degrees(BuildResult build, string position) => Number(build, position, "listener_angle") * 180 / Math.PI;

    [Fact]
    public void A_door_is_heard_off_its_axis() => // by hand: (650, 720, −750) mm, acos(720 / 1226) = 54.0°
        Assert.Equal(54.0, Degrees(Build("tansy-door-swap"), "front-door-left"), 0.1);

    [Fact]
    public void A_spacer_of_8_degrees_turns_the_door_towards_the_listener()
    {
        var build = Build("front-rear-two-amps");

        // by hand: cos 8° · 720/1226 + sin 8° · (650 + 750)/(√2 · 1226) = 0.5816 + 0.1124, 46.1°
        Assert.Equal(46.1, Degrees(build, "front-door-left"), 0.1);
        Assert.Equal("half past four", Fact(build, "front-door-left", "spacer_thick_side").Word); // six hours from the aim at half past ten
    }

    [Fact]
    public void The_other_side_is_its_mirror_image()
    {
        var build = Build("front-rear-two-amps");

        Assert.Equal(Degrees(build, "front-door-left"), Degrees(build, "front-door-right"), 1e-9);
        // half past ten mirrored is half past one
        Assert.Equal("half past seven", Fact(build, "front-door-right", "spacer_thick_side").Word);
    }

    [Fact]
    // by hand: head at y = 370 mm; √(650² + 350² + 750²) = 1053 mm, √(650² + 1090² + 750²) = 1475 mm
    public void The_near_side_arrives_earlier() =>
        Assert.Equal(0.422, Number(Build("tansy-door-swap"), "front-door-left", "side_path_difference"), 0.001);

    [Fact]
    // 25 mm dome at 50.7°: x = 2.288 · 0.774 = 1.771; 2·J1(1.771)/1.771 = 0.656 (Abramowitz and Stegun, table 9.1)
    public void A_dome_loses_treble_off_its_axis() =>
        Assert.Equal(3.66, Number(Build("front-rear-two-amps"), "front-tweeter-left", "off_axis_loss"), 0.03);

    [Fact]
    public void An_estimated_location_is_told()
    {
        var build = Build("alder-missing-data");
        var fact = build.Facts.First(
            t => t.Key.StartsWith("front-", StringComparison.Ordinal) && t.Values.ContainsKey("listener_angle")).Values["listener_angle"];

        Assert.True(fact.IsEstimated); // the Alder is estimated throughout
    }

    [Fact]
    public void Tweeter_and_woofer_differ_as_a_sum_by_hand_says() =>
        // Outside: a script with complex dividers for both branches, J1 by its series, nine frequencies each: 3.98 dB.
        Assert.Equal(3.98, Number(Build("tansy-dull-woofers"), "front-tweeter-left", "tweeter_level_difference"), 0.1);

    [Fact]
    public void A_pad_of_preferred_resistors_takes_the_difference_away()
    {
        var pad = Fact(Build("tansy-dull-woofers"), "front-tweeter-left", "l_pad").Word!;

        // by hand for 4.0 dB, K = 1.585: 4·(1 − 1/K) = 1.48 ohm, 4/(K − 1) = 6.84 ohm; E24: 1.5 and 6.8 (IEC 60063)
        Assert.StartsWith("1.5 ohm in series and 6.8 ohm across the tweeter", pad, StringComparison.Ordinal);
    }

    [Fact]
    public void The_nearest_setting_is_the_best() =>
        Assert.Equal("0 dB", Fact(Build("tansy-jumper-up"), "front-tweeter-left", "best_setting").Word);

    [Fact]
    // by hand: 10·lg(60/18) = 5.2 dB, 20·lg(1226/1065) = 1.2 dB, 0.29 against 0.14 ohm of wire −0.3 dB
    public void A_strong_rear_is_louder() =>
        Assert.Equal(6.1,
            Number(Build("tansy-rear-amplifier", ("driver: quillon-c165", "driver: orrin-c165")), "rear-door-left", "rear_over_front"),
            0.5);

    [Fact]
    public void A_box_raises_Q_and_resonance()
    {
        var build = Build("sedge-shallow-box");

        Assert.Equal(1.169, Number(build, "cargo", "box_q"), 0.002); // by hand: 0.5304 · √(1 + 38.6/10)
        Assert.Equal(70.5, Number(build, "cargo", "box_resonance"), 0.1); // by hand: 32 · 2.2045
    }

    [Fact]
    public void A_box_of_unknown_volume_is_to_be_measured()
    {
        var finding = Assert.Single(Build("sedge-shallow-box", ("    box: 10 L\n", "")).Findings, f => f.Rule == "box/volume-unsuited");

        Assert.Equal(Status.Measure, finding.Status);
        // By hand: 38.6 / ((1/0.5304)² − 1) = 15.11 L, told so that what is told passes.
        Assert.Contains("15.2 L or more", finding.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Loudness_is_a_caution_and_no_finding()
    {
        var build = Build("front-rear-two-amps");
        var level = Number(build, "build", "loudest_level");

        // NIOSH 98-126: 85 dBA 8 h, 3 dB exchange
        Assert.Equal(8 * 3600 / Math.Pow(2, (level - 85) / 3), Number(build, "build", "allowed_time"), 1e-6);
        Assert.Contains(build.Cautions, c => c.Contains("NIOSH", StringComparison.Ordinal));
        Assert.DoesNotContain(build.Findings, f => f.Fact.Contains("loudest_level", StringComparison.Ordinal));
    }

    [Fact]
    public void Both_sides_share_a_setting() => Assert.Contains(Build("tansy-jumper-up").Settings,
        s => s.Where.Count == 2 && s.Where[0] == "Mirror sail, left" && s.Value.StartsWith("0 dB", StringComparison.Ordinal));
}
