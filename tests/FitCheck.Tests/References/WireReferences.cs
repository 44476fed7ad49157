using FitCheck.Physics.Electrical.Cables;
using FitCheck.Physics.Quantities;
using Xunit;

namespace FitCheck.Tests.References;

public class WireReferences
{
    private const double Inch = 0.0254;

    [Theory]
    [InlineData("awg.anchor36", "S: ASTM B258 via Wikipedia, American Wire Gauge", 36, 0.005)]
    [InlineData("awg.anchor4/0", "S: ASTM B258 via Wikipedia, American Wire Gauge", -3, 0.46)]
    public void Diameter_follows_the_gauge(string id, string source, int gauge, double inches) =>
        Reference.Near(id, source, inches, WireGauge.DiameterOf(gauge) / Inch, 1e-9);

    [Theory]
    [InlineData("awg.step", "S: ASTM B258 via Wikipedia, American Wire Gauge", 1.1229322)]
    public void Each_gauge_is_a_fixed_ratio_thicker(string id, string source, double ratio) =>
        Reference.Near(id, source, ratio, WireGauge.DiameterOf(10) / WireGauge.DiameterOf(11), 1e-7);

    [Theory]
    [InlineData("crc.awg0", "S: CRC Handbook of Chemistry and Physics, Wire Tables", 0, 0.000495, 0.000314)]
    [InlineData("crc.awg2", "S: CRC Handbook of Chemistry and Physics, Wire Tables", 2, 0.000788, 0.000499)]
    [InlineData("crc.awg4", "S: CRC Handbook of Chemistry and Physics, Wire Tables", 4, 0.00125, 0.000793)]
    public void Resistance_of_pure_metal_wire(string id, string source, int gauge, double aluminium, double copper)
    {
        // The handbook's resistivities of the pure metals, not annealed commercial copper; three digits are printed.
        Reference.Near(id, source, aluminium, WireGauge.Resistance(1, WireGauge.AreaOf(gauge), 2.650e-8), 4e-3);
        Reference.Near(id, source, copper, WireGauge.Resistance(1, WireGauge.AreaOf(gauge), 1.678e-8), 2e-3);
    }

    [Theory]
    [InlineData("iec60228.0.5", "S: IEC 60228 via mycableengineering.com", 0.5, 34.482, 36.0, 39.0)]
    [InlineData("iec60228.0.75", "S: IEC 60228 via mycableengineering.com", 0.75, 22.988, 24.5, 26.0)]
    [InlineData("iec60228.1", "S: IEC 60228 via mycableengineering.com", 1.0, 17.241, 18.1, 19.5)]
    [InlineData("iec60228.1.5", "S: IEC 60228 via mycableengineering.com", 1.5, 11.494, 12.1, 13.3)]
    [InlineData("iec60228.2.5", "S: IEC 60228 via mycableengineering.com", 2.5, 6.896, 7.41, 7.98)]
    [InlineData("iec60228.4", "S: IEC 60228 via mycableengineering.com", 4.0, 4.31, 4.61, 4.95)]
    [InlineData("iec60228.6", "S: IEC 60228 via mycableengineering.com", 6.0, 2.873, 3.08, 3.3)]
    [InlineData("iec60228.10", "S: IEC 60228 via mycableengineering.com", 10.0, 1.724, 1.83, 1.91)]
    [InlineData("iec60228.16", "S: IEC 60228 via mycableengineering.com", 16.0, 1.078, 1.15, 1.21)]
    [InlineData("iec60228.25", "S: IEC 60228 via mycableengineering.com", 25.0, 0.69, 0.727, 0.78)]
    [InlineData("iec60228.35", "S: IEC 60228 via mycableengineering.com", 35.0, 0.493, 0.524, 0.554)]
    public void Copper_of_its_nominal_area_stays_below_the_standards_maximum(string id, string source, double squareMillimetres,
        double ideal, double solid, double stranded)
    {
        var perKilometre = WireGauge.Resistance(1000, squareMillimetres * 1e-6);
        Reference.Near(id, source, ideal, perKilometre, 2e-3);
        Assert.InRange(perKilometre, 0.8 * solid, solid);
        Assert.InRange(perKilometre, 0.8 * stranded, stranded);
    }

    [Theory]
    [InlineData("iso6722.0.35", "from memory", 0.35, 54.4)]
    [InlineData("iso6722.0.5", "from memory", 0.5, 37.1)]
    [InlineData("iso6722.0.75", "from memory", 0.75, 24.7)]
    [InlineData("iso6722.1", "from memory", 1.0, 18.5)]
    [InlineData("iso6722.1.5", "from memory", 1.5, 12.7)]
    [InlineData("iso6722.2.5", "from memory", 2.5, 7.6)]
    [InlineData("iso6722.4", "from memory", 4.0, 4.71)]
    [InlineData("iso6722.6", "from memory", 6.0, 3.14)]
    [InlineData("iso6722.10", "from memory", 10.0, 1.82)]
    [InlineData("iso6722.16", "from memory", 16.0, 1.16)]
    [InlineData("iso6722.25", "from memory", 25.0, 0.743)]
    [InlineData("iso6722.35", "from memory", 35.0, 0.527)]
    [InlineData("iso6722.50", "from memory", 50.0, 0.368)]
    public void Vehicle_cable_allows_a_little_more_than_copper_needs(string id, string source, double squareMillimetres, double maximum)
    {
        var perKilometre = WireGauge.Resistance(1000, squareMillimetres * 1e-6);
        Assert.True(perKilometre < maximum && perKilometre > 0.85 * maximum,
            $"{id} ({source}): {perKilometre} against at most {maximum} mohm/m");
    }

    [Theory]
    [InlineData("cu.R60", "derived from Industrial Power Engineering and Applications Handbook p. 970", 60.0, 1.1572)]
    [InlineData("cu.R60faa", "derived from FAA AC 43.13-1B p. 11-22", 60.0, 1.15717)]
    [InlineData("cu.R80", "derived from Industrial Power Engineering and Applications Handbook p. 970", 80.0, 1.2358)]
    public void Copper_grows_in_resistance_with_temperature(string id, string source, double celsius, double ratio) =>
        Reference.Near(id, source, ratio, WireGauge.AtTemperature(1, celsius), 5e-5);

    [Theory]
    [InlineData("cca10.Rratio", "derived from ASTM B566 class 10A via a maker's table", 1.5898)]
    public void Copper_clad_aluminium_against_copper(string id, string source, double ratio) =>
        Reference.Near(id, source, ratio, WireGauge.CopperCladAluminium / WireGauge.Copper, 5e-5);

    [Theory]
    [InlineData("faa.11-7.1", "S: FAA AC 43.13-1B p. 11-22", 0.00044, 107.0, 20.0, 0.942, 0.004)]
    [InlineData("faa.11-7.2", "S: FAA AC 43.13-1B p. 11-22", 0.00028, 90.0, 20.0, 0.504, 0.004)]
    [InlineData("faa.11-7.3", "S: FAA AC 43.13-1B p. 11-22", 0.00202, 88.0, 20.0, 3.6, 0.015)]
    [InlineData("faa.11-7.4", "S: FAA AC 43.13-1B p. 11-22", 0.00306, 100.0, 20.0, 6.12, 0.004)]
    [InlineData("faa.11-8.1", "S: FAA AC 43.13-1B p. 11-22", 0.00126, 39.0, 20.0, 0.98, 0.004)]
    [InlineData("faa.11-8.3", "S: FAA AC 43.13-1B p. 11-22", 0.00126, 156.0, 20.0, 3.93, 0.004)]
    [InlineData("faa.11-8.4", "S: FAA AC 43.13-1B p. 11-22", 0.00126, 273.0, 20.0, 6.88, 0.004)]
    public void Drop_of_a_published_resistance(string id, string source, double ohmPerFoot, double feet, double amperes, double volts,
        double relative) =>
        Reference.Near(id, source, volts, SupplyDrop.Volts(amperes, feet, area: 1, resistivity: ohmPerFoot), relative);

    [Theory]
    [InlineData("drop.awg8.40A", "derived from ASTM B258 via Wikipedia, American Wire Gauge", 8, 10.0, 40.0, 0.82438)]
    [InlineData("drop.awg4.80A", "derived from ASTM B258 via Wikipedia, American Wire Gauge", 4, 10.0, 80.0, 0.65212)]
    [InlineData("drop.awg18.5A", "derived from ASTM B258 via Wikipedia, American Wire Gauge", 18, 8.0, 5.0, 0.83791)]
    public void Drop_of_a_supply_cable(string id, string source, int gauge, double loopMetres, double amperes, double volts) =>
        Reference.Near(id, source, volts, SupplyDrop.Volts(amperes, loopMetres, WireGauge.AreaOf(gauge)), 5e-5);

    [Theory]
    [InlineData("drop.cca.awg4", "derived from ASTM B566 class 10A via a maker's table", 4, 10.0, 80.0, 1.0368)]
    public void Drop_of_a_copper_clad_cable(string id, string source, int gauge, double loopMetres, double amperes, double volts) =>
        Reference.Near(id, source, volts, SupplyDrop.Volts(amperes, loopMetres, WireGauge.AreaOf(gauge), WireGauge.CopperCladAluminium),
            5e-5);

    [Theory]
    [InlineData("spk.loss", "derived from ASTM B258 via Wikipedia, American Wire Gauge", 18, 8.0, 4.0, -0.3565)]
    [InlineData("spk.loss16", "derived from ASTM B258 via Wikipedia, American Wire Gauge", 16, 8.0, 4.0, -0.2259)]
    public void Loss_of_a_speaker_run(string id, string source, int gauge, double loopMetres, double load, double db) =>
        Reference.Near(id, source, db, WireLoss.LevelChange(load, WireGauge.Resistance(loopMetres, WireGauge.AreaOf(gauge))), 5e-4);

    [Theory]
    [InlineData("rs.only", "derived from the formula, from memory", 4.0, 2.2, -3.8066)]
    public void Loss_of_a_series_resistor(string id, string source, double load, double series, double db) =>
        Reference.Near(id, source, db, WireLoss.LevelChange(load, series), 5e-5);
}
