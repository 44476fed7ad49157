using FitCheck.Physics.Electrical.Cables;
using FitCheck.Physics.Quantities;
using Xunit;

namespace FitCheck.Tests.References;

public class SupplyReferences
{
    [Theory]
    [InlineData("ampacity.33cfr.18", "S: 33 CFR 183.425 table 5", 18, 60, 10)]
    [InlineData("ampacity.33cfr.12", "S: 33 CFR 183.425 table 5", 12, 105, 45)]
    [InlineData("ampacity.33cfr.8", "S: 33 CFR 183.425 table 5", 8, 60, 55)]
    [InlineData("ampacity.33cfr.8", "S: 33 CFR 183.425 table 5", 8, 105, 80)]
    [InlineData("ampacity.33cfr.4", "S: 33 CFR 183.425 table 5", 4, 90, 135)]
    [InlineData("ampacity.33cfr.1/0", "S: 33 CFR 183.425 table 5", 0, 125, 305)]
    [InlineData("ampacity.33cfr.3", "S: 33 CFR 183.425 table 5", 3, 105, 180)]
    [InlineData("ampacity.33cfr.3", "S: 33 CFR 183.425 table 5", 3, 60, 120)]
    [InlineData("ampacity.33cfr.3/0", "S: 33 CFR 183.425 table 5", -2, 105, 385)]
    [InlineData("ampacity.33cfr.4/0", "S: 33 CFR 183.425 table 5", -3, 200, 510)]
    public void A_cable_carries_what_the_table_says(string id, string source, int gauge, double insulation, double amperes) =>
        Reference.Near(id, source, amperes, Ampacity.Of(WireGauge.AreaOf(gauge), insulation)!.Value, 1e-9);

    [Theory]
    [InlineData(10e-6, 105, 80)] // between 8 AWG (8.37 mm2) and 6 AWG (13.3 mm2): the thinner one of 33 CFR 183.425 table 5
    [InlineData(21.2e-6, 100, 135)] // 4 AWG, between the columns of 90 and 105 °C of 33 CFR 183.425 table 5
    public void Between_two_lines_of_the_table_the_lower_one_counts(double area, double insulation, double amperes) =>
        Assert.Equal(amperes, Ampacity.Of(area, insulation)!.Value, 9);

    [Theory]
    [InlineData(0.5e-6, 105)] // thinner than the table's 18 AWG
    [InlineData(21.2e-6, 50)] // below the table's 60 °C
    public void Outside_the_table_nothing_is_said(double area, double insulation) => Assert.Null(Ampacity.Of(area, insulation));

    [Fact]
    public void Copper_clad_aluminium_carries_less() =>
        // equal heat: √0.629 = 0.7931, 62.9 % IACS by ASTM B566
        Assert.Equal(160 * 0.7931, Ampacity.Of(WireGauge.AreaOf(4), 105, WireGauge.CopperCladAluminium)!.Value, 1);

    [Fact]
    public void Aluminium_carries_less() =>
        // equal heat: √0.61 = 0.7810, 61 % IACS by ASTM B230 (from memory)
        Assert.Equal(160 * 0.7810, Ampacity.Of(WireGauge.AreaOf(4), 105, WireGauge.Aluminium)!.Value, 1);

    [Theory]
    [InlineData(8, 105, 68)] // 80 A x 0.85: 33 CFR 183.425 table 5, note 1
    [InlineData(3, 105, 153)] // 180 A x 0.85, the same
    [InlineData(8, 60, 31.9)] // 55 A x 0.58, the same (the factor from memory)
    public void In_an_engine_space_a_cable_carries_less(int gauge, double insulation, double amperes) =>
        Assert.Equal(amperes, Ampacity.Of(WireGauge.AreaOf(gauge), insulation, engineSpace: true)!.Value, 9);

    [Theory]
    [InlineData("blade", 40)] // ISO 8820-3 (from memory)
    [InlineData("mega", 500)] // ISO 8820-5 (from memory)
    public void A_pattern_of_fuses_ends_somewhere(string pattern, double amperes) =>
        Assert.Equal(amperes, StandardFuse.Largest(pattern));

    [Theory]
    [InlineData("fuse.std.ato", "from memory of ISO 8820-3 and SAE J1284", "blade", 31, 40, 35)]
    [InlineData("fuse.std.mini", "from memory of SAE J2077", "mini", 7, 40, 7.5)]
    [InlineData("fuse.color.maxi.50", "S: maxi colours by rating", "maxi", 41, 60, 50)]
    [InlineData("fuse.std.midi", "from memory of ISO 8820-5", "midi", 101, 150, 125)]
    [InlineData("fuse.std.mega", "from memory of ISO 8820-5", "mega", 301, 400, 350)]
    [InlineData("fuse.std.anl", "common practice, no source", "anl", 126, 200, 130)]
    public void The_next_standard_fuse_is_taken(string id, string source, string pattern, double atLeast, double atMost, double rating) =>
        Reference.Near(id, source, rating, StandardFuse.Between(pattern, atLeast, atMost)!.Value, 1e-9);

    [Theory]
    [InlineData("midi", 41, 45)] // midi fuses come as 40 and 50 A (ISO 8820-5, from memory)
    [InlineData("blade", 41, 60)] // blade fuses end at 40 A (ISO 8820-3, from memory)
    [InlineData("glass", 1, 60)] // no pattern of ISO 8820
    public void No_fuse_is_named_where_none_suits(string pattern, double atLeast, double atMost) =>
        Assert.Null(StandardFuse.Between(pattern, atLeast, atMost));

    [Theory]
    [InlineData(21.15e-6, "4 AWG")] // ASTM B258: 4 AWG is 0.2043 in, 21.15 mm2
    [InlineData(53.5e-6, "1/0 AWG")] // ASTM B258: 1/0 AWG is 0.3249 in, 53.5 mm2
    [InlineData(107.2e-6, "4/0 AWG")] // ASTM B258: 4/0 AWG is 0.46 in, 107.2 mm2
    [InlineData(0.01267e-6, "36 AWG")] // ASTM B258: 36 AWG is 0.005 in, 0.01267 mm2
    [InlineData(2.5e-6, null)] // a metric size of IEC 60228
    public void A_gauge_is_known_by_its_area(double area, string? name) => Assert.Equal(name, WireGauge.NameOf(area));
}
