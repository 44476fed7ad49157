using System.Globalization;
using FitCheck.Evaluation;
using FitCheck.Facts.Values;
using FitCheck.Findings;
using FitCheck.Physics.Quantities;
using Xunit;

namespace FitCheck.Tests.Facts;

/// <summary>
/// What a power cable may carry, against 33 CFR 183.425, table 5 and its note 1 (copper, below 50 V), worked by hand beside each row. One
/// amplifier that draws 7.2 A (2 x 40 W / (0.81 x 13.8 V)) hangs on a cable and a fuse that each row describes.
/// </summary>
public sealed class CableLimitTests
{
    private const string Alone = SupplyFactsTests.Fit
        + "devices: [{id: radio, part: factory}, {id: amp, part: kestow-d4-60, from: radio, power_cable: tried-cable, power_length: 4 "
        + "m, fuse: tried-fuse}]";

    private const string Engine = "engine-space", Copper = "copper", Clad = "copper-clad-aluminium", None = "";

    [Theory]
    // What sellers claim above what the gauge carries.
    [InlineData("8 AWG", Copper, "600 A", "105 degC", Engine, 200, Status.Fail)] // 80 x 0.85 = 68 A
    [InlineData("8 AWG", Copper, "300 A", "105 degC", Engine, 150, Status.Fail)] // 68 A
    [InlineData("8 AWG", Copper, "300 A", "105 degC", "cargo", 150, Status.Fail)] // 80 A
    // a bold claim hurts nobody where the fuse suits the gauge: 68 A
    [InlineData("8 AWG", Copper, "300 A", "105 degC", Engine, 60, Status.Pass)]
    [InlineData("8 AWG", Copper, "300 A", None, Engine, 150, Status.Fail)] // 68 A at the very best
    // What a maker claims below it: he knows his cable.
    [InlineData("8 AWG", Copper, "60 A", "105 degC", Engine, 60, Status.Pass)] // 60 A of 68 A
    [InlineData("8 AWG", Copper, "60 A", "105 degC", "cargo", 70, Status.Fail)] // 60 A of 80 A
    [InlineData("8 AWG", Copper, "30 A", None, Engine, 30, Status.Pass)] // 30 A of 55 x 0.58 = 31.9 A at the very least
    // The battery's place.
    [InlineData("8 AWG", Copper, None, "105 degC", Engine, 70, Status.Fail)] // 68 A
    [InlineData("8 AWG", Copper, None, "105 degC", "cabin", 70, Status.Pass)] // 80 A
    [InlineData("8 AWG", Copper, None, "105 degC", "cargo", 80, Status.Pass)] // 80 A, on the limit
    [InlineData("8 AWG", Copper, None, "105 degC", None, 70, Status.Fail)] // nobody recorded it: 68 A
    // The insulation.
    [InlineData("4 AWG", Copper, None, "60 degC", Engine, 60, Status.Pass)] // 105 x 0.58 = 60.9 A
    [InlineData("4 AWG", Copper, None, "60 degC", Engine, 70, Status.Fail)]
    [InlineData("4 AWG", Copper, None, "75 degC", Engine, 80, Status.Pass)] // 125 x 0.75 = 93.8 A
    [InlineData("4 AWG", Copper, None, "75 degC", Engine, 100, Status.Fail)]
    [InlineData("4 AWG", Copper, None, "105 degC", Engine, 125, Status.Pass)] // 160 x 0.85 = 136 A
    [InlineData("4 AWG", Copper, None, "105 degC", Engine, 150, Status.Fail)]
    // Nobody recorded it: 60.9 A at 60 °C, 136 A at 105 °C.
    [InlineData("4 AWG", Copper, None, None, Engine, 60, Status.Pass)]
    [InlineData("4 AWG", Copper, None, None, Engine, 100, Status.Measure)]
    [InlineData("4 AWG", Copper, None, None, Engine, 150, Status.Fail)]
    [InlineData("4 AWG", Copper, "120 A", None, Engine, 125, Status.Fail)] // 120 A by its maker at the very best
    // Copper-clad aluminium: equal heat, √0.629 = 0.7931 of copper (derived here from 62.9 % IACS, ASTM B566 class 10A). 160 x 0.7931 x
    // 0.85 = 107.9 A
    [InlineData("4 AWG", Clad, None, "105 degC", Engine, 100, Status.Pass)]
    [InlineData("4 AWG", Clad, None, "105 degC", Engine, 125, Status.Fail)]
    [InlineData("4 AWG", Clad, "200 A", "105 degC", Engine, 125, Status.Fail)]
    // Thick cable, large fuse.
    [InlineData("1/0 AWG", Copper, "350 A", "105 degC", Engine, 225, Status.Pass)] // 285 x 0.85 = 242.3 A
    [InlineData("1/0 AWG", Copper, "350 A", "105 degC", Engine, 250, Status.Fail)]
    [InlineData("1/0 AWG", Copper, "350 A", "105 degC", "cargo", 250, Status.Pass)] // 285 A
    // No gauge: what a seller says can't be held against anything, and a fuse above it is too large in any case.
    [InlineData(None, Copper, "100 A", "105 degC", Engine, 60, Status.Measure)]
    [InlineData(None, Copper, "100 A", "105 degC", Engine, 150, Status.Fail)]
    [InlineData(None, Copper, None, "105 degC", Engine, 60, Status.Measure)]
    // Softer than the table's 60 °C, or thinner than its 18 AWG: at most what the table begins with, and how much less nobody tells.
    [InlineData("8 AWG", Copper, "60 A", "50 degC", Engine, 40, Status.Fail)] // 31.9 A at most
    [InlineData("8 AWG", Copper, "60 A", "50 degC", Engine, 30, Status.Measure)]
    [InlineData("20 AWG", Copper, None, "105 degC", "cargo", 25, Status.Fail)] // 20 A at most
    [InlineData("20 AWG", Copper, None, "105 degC", "cargo", 10, Status.Measure)]
    public void A_fuse_protects_a_cable_or_it_does_not(string gauge, string conductor, string claim, string insulation, string battery,
        int fuse, Status expected) =>
        Assert.Equal(expected, Judged(Cable(gauge, conductor, claim, insulation), battery, fuse).Status);

    // The rows of table 5 that cables for amplifiers come in, and its correction in engine spaces.
    [Theory]
    [InlineData("18 AWG", "60 degC", "cargo", 10)]
    [InlineData("10 AWG", "90 degC", "cargo", 55)]
    [InlineData("8 AWG", "75 degC", "cargo", 65)]
    [InlineData("6 AWG", "105 degC", "cargo", 120)]
    [InlineData("3 AWG", "60 degC", "cargo", 120)]
    [InlineData("3 AWG", "105 degC", "cargo", 180)]
    [InlineData("3 AWG", "200 degC", "cargo", 210)]
    [InlineData("2 AWG", "80 degC", "cargo", 175)]
    [InlineData("2/0 AWG", "125 degC", "cargo", 355)]
    [InlineData("3/0 AWG", "75 degC", "cargo", 310)]
    [InlineData("3/0 AWG", "105 degC", "cargo", 385)]
    [InlineData("4/0 AWG", "200 degC", "cargo", 510)]
    [InlineData("8 AWG", "60 degC", Engine, 55 * 0.58)]
    [InlineData("8 AWG", "75 degC", Engine, 65 * 0.75)]
    [InlineData("8 AWG", "80 degC", Engine, 70 * 0.78)]
    [InlineData("8 AWG", "90 degC", Engine, 70 * 0.82)]
    [InlineData("8 AWG", "105 degC", Engine, 80 * 0.85)]
    [InlineData("8 AWG", "125 degC", Engine, 90 * 0.89)]
    [InlineData("8 AWG", "200 degC", Engine, 100 * 1.0)]
    // between 4 and 3 AWG (21.15 and 26.67 mm2), and between 90 and 105 °C: the lower of each
    [InlineData("25 mm2", "100 degC", Engine, 135 * 0.82)]
    public void The_limit_is_that_of_the_table(string gauge, string insulation, string battery, double amperes) =>
        Assert.Equal(amperes, Limit(Cable(gauge, Copper, None, insulation), battery).Value, 6);

    [Theory]
    [InlineData("8 AWG", "105 degC", Engine, 80 * 0.7931 * 0.85)]
    [InlineData("1/0 AWG", "90 degC", "cargo", 245 * 0.7931)]
    // √0.629 = 0.7931, derived here
    public void Copper_clad_aluminium_carries_by_its_conductivity(string gauge, string insulation, string battery, double amperes) =>
        Assert.Equal(amperes, Limit(Cable(gauge, Clad, None, insulation), battery).Value, 0.01);

    [Fact]
    public void An_insulation_that_nobody_recorded_leaves_the_limit_between_60_and_105_degrees()
    {
        var limit = Limit(Cable("4 AWG", Copper, None, None), Engine);
        Assert.Equal((105 * 0.58, 160 * 0.85), (Math.Round(limit.Low, 6), Math.Round(limit.High, 6)));
    }

    [Fact]
    public void What_to_look_for_is_the_print_on_the_jacket_and_which_one_would_do()
    {
        var finding = Judged(Cable("4 AWG", Copper, None, None), Engine, 100);
        var measure = Assert.Single(finding.ToMeasure);
        // 75 °C: 125 x 0.75 = 93.8 A; 80 °C: 130 x 0.78 = 101.4 A
        Assert.Equal("insulation of Tried cable (80 degC or more)", measure.What);
        Assert.Contains("jacket", measure.How, StringComparison.Ordinal);
    }

    [Fact]
    public void A_battery_whose_place_nobody_recorded_is_told()
    {
        Assert.Contains("not recorded", Judged(Cable("8 AWG", Copper, None, "105 degC"), None, 70).Message, StringComparison.Ordinal);
        Assert.DoesNotContain("not recorded", Judged(Cable("8 AWG", Copper, None, "105 degC"), Engine, 70).Message,
            StringComparison.Ordinal);
    }

    [Fact]
    public void The_finding_tells_what_the_gauge_carries_beside_what_the_maker_claims()
    {
        var finding = Judged(Cable("8 AWG", Copper, "300 A", "105 degC"), Engine, 150);
        foreach (var told in new[] { "68 A", "8 AWG", "105 degC", "300 A" })
            Assert.Contains(told, finding.Message, StringComparison.Ordinal);
        Assert.Contains(finding.Related, r => r.What.StartsWith("gauge of Tried cable", StringComparison.Ordinal));
        Assert.Contains(finding.Related, r => r.What.StartsWith("battery of", StringComparison.Ordinal));
        Assert.Contains("183.425", finding.Source, StringComparison.Ordinal);
    }

    [Fact]
    public void A_guessed_gauge_is_never_a_pass() =>
        // a datum that is guessed never ends as pass
        Assert.Equal(Status.Measure, Judged(Cable("8 AWG (estimated)", Copper, None, "105 degC"), Engine, 30).Status);

    [Fact]
    public void A_guessed_rating_of_a_fuse_is_never_a_pass() =>
        // 30 A of 68 A, if it is 30 A
        Assert.Equal(Status.Measure, Judged(Cable("8 AWG", Copper, None, "105 degC"), Engine, "30 A (estimated)").Status);

    [Fact]
    public void A_kit_that_does_not_say_its_metal_may_be_copper_clad()
    {
        var kit = Part("tried-cable", "power-kit", ("name", "Tried kit"), ("gauge", "4 AWG"), ("insulation", "105 degC"));
        Assert.Equal(Status.Pass, Judged(kit, Engine, 100).Status); // 160 x 0.7931 x 0.85 = 107.9 A
        Assert.Equal(Status.Fail, Judged(kit, Engine, 150).Status); // 136 A of copper
        var finding = Judged(kit, Engine, 125);
        Assert.Equal((Status.Measure, "conductor of Tried kit"), (finding.Status, Assert.Single(finding.ToMeasure).What));
    }

    // Behind the block the cable lies beside the amplifiers, not in the engine space (common practice, no source).
    [Fact]
    public void Only_the_cable_that_starts_at_the_battery_lies_in_the_engine_space()
    {
        const string shared = SupplyFactsTests.Fit + """

            supply: {cable: power-cable-1-0awg-5m, length: 4 m, fuse: fuse-anl-150, distribution: distribution-4awg-2x8awg}
            devices:
              - {id: radio, part: factory}
              - {id: amp, part: kestow-d4-60, from: radio, power_cable: tried-cable, power_length: 4 m, fuse: tried-fuse}
            """;
        Assert.Equal(80, Limit(Cable("8 AWG", Copper, None, "105 degC"), Engine, shared).Value, 6);
    }

    [Theory]
    [InlineData("8 AWG", Copper, "60 degC", "midi", "a midi fuse of 30 A")] // 31.9 A; midi fuses begin at 30 A (ISO 8820-5, from memory)
    [InlineData("10 AWG", Copper, "60 degC", "midi", "none of this pattern")] // 40 x 0.58 = 23.2 A
    [InlineData("10 AWG", Copper, "60 degC", "maxi", "a maxi fuse of 20 A")] // maxi fuses begin at 20 A (ISO 8820-3)
    [InlineData("10 AWG", Copper, None, "midi", "none of this pattern")] // 23.2 A for certain, though 60 x 0.85 = 51 A at 105 °C
    [InlineData("8 AWG", Clad, "60 degC", "midi", "none of this pattern")] // 55 x 0.7931 x 0.58 = 25.3 A
    [InlineData("8 AWG", Clad, "60 degC", "maxi", "a maxi fuse of 20 A")]
    [InlineData("8 AWG", Clad, "75 degC", "midi", "a midi fuse of 30 A")] // 65 x 0.7931 x 0.75 = 38.7 A
    public void The_fuse_that_suits_is_sure_to_protect_the_cable(string gauge, string conductor, string insulation, string pattern,
        string expected) =>
        Assert.Equal(expected,
            Facts(Alone, Cable(gauge, conductor, "500 A", insulation), Engine, Amperes(30), pattern)["standard_fuse"].Word);

    private static Finding Judged(string cable, string battery, int fuse) => Judged(cable, battery, Amperes(fuse));

    private static Finding Judged(string cable, string battery, string fuse) =>
        Result(Alone, cable, battery, fuse, "anl").Findings.Single(f => f.Rule == "supply/fuse-above-cable-limit" && f.Position == "amp");

    private static Uncertain Limit(string cable, string battery, string build = Alone) =>
        Facts(build, cable, battery, Amperes(30), "anl")["cable_limit"].Number!.Value;

    private static IReadOnlyDictionary<string, FactValue> Facts(string build, string cable, string battery, string fuse, string pattern) =>
        Result(build, cable, battery, fuse, pattern).Facts.Single(t => t.Subject == Subject.Device && t.Key == "amp").Values;

    private static BuildResult Result(string build, string cable, string battery, string fuse, string pattern) => Trial.Of(build,
        ("wiring/tried-cable.yaml", cable),
        ("wiring/tried-fuse.yaml", Part("tried-fuse", "fuse", ("name", "Tried fuse"), ("current", fuse), ("fuse_standard", pattern))),
        ("vehicles/tansy-hatch.yaml", WithBattery(battery)));

    private static string Amperes(int amperes) => string.Create(CultureInfo.InvariantCulture, $"{amperes} A");

    private static string Cable(string gauge, string conductor, string claim, string insulation) =>
        Part("tried-cable", "power-cable", ("name", "Tried cable"), ("gauge", gauge), ("conductor", conductor), ("length", "5 m"),
            ("current", claim), ("insulation", insulation));

    private static string Part(string id, string type, params (string Key, string Value)[] more) => string.Join('\n',
        [$"id: {id}\nkind: wiring\ntype: {type}\nprovenance: datasheet\nsource: invented\npack: 1\nprice: 9.00 EUR\navailability: current",
            .. more.Where(m => m.Value.Length > 0).Select(m => $"{m.Key}: {m.Value}")]) + "\n";

    private static string WithBattery(string battery)
    {
        var lines = Trial.Entry("vehicles/tansy-hatch.yaml").Split('\n').Where(l => !l.StartsWith("  battery: ", StringComparison.Ordinal))
            .ToList();
        if (battery.Length > 0)
            lines.Insert(lines.IndexOf("supply:") + 1, $"  battery: {battery}");
        return string.Join('\n', lines);
    }
}
