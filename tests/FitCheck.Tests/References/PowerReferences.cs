using FitCheck.Physics.Electrical.Cables;
using FitCheck.Physics.Electrical.Loads;
using FitCheck.Physics.Electrical.Programme;
using Xunit;

namespace FitCheck.Tests.References;

public class PowerReferences
{
    [Theory]
    [InlineData("prog.sum", "S: IEC 60268-1:1985 Table II", 12.558)]
    public void Sum_of_the_programme_noise_bands(string id, string source, double db) =>
        Reference.Close(id, source, db, 10 * Math.Log10(ProgrammeNoise.BandDb.Sum(b => Math.Pow(10, b / 10))), 0.001);

    [Theory]
    [InlineData("prog.above.80", "derived from IEC 60268-1:1985 Table II", 6, 0.9079, -0.4196)]
    [InlineData("prog.above.125", "derived from IEC 60268-1:1985 Table II", 8, 0.8226, -0.8482)]
    [InlineData("prog.above.3150", "derived from IEC 60268-1:1985 Table II", 22, 0.09612, -10.17)]
    public void Programme_noise_above_a_band_edge(string id, string source, int band, double share, double db)
    {
        var above = ProgrammeNoise.ShareAbove(ProgrammeNoise.CentreHz(band) * Math.Pow(10, -0.05));
        Reference.Near(id, source, share, above, 1e-4);
        Reference.Close(id, source, db, 10 * Math.Log10(above), 0.005);
    }

    [Theory]
    [InlineData("btl.12.6.8", "derived from the formula, from memory", 12.6, 8.0, 9.9225)]
    [InlineData("btl.13.8.2", "derived from the formula, from memory", 13.8, 2.0, 47.61)]
    [InlineData("btl.14.4.2", "derived from the formula, from memory", 14.4, 2.0, 51.84)]
    [InlineData("btl.14.4.4", "derived from the formula, from memory", 14.4, 4.0, 25.92)]
    [InlineData("btl.14.4.8", "derived from the formula, from memory", 14.4, 8.0, 12.96)]
    public void Sine_ceiling_of_a_bridged_output(string id, string source, double volts, double ohm, double watts) =>
        Reference.Near(id, source, watts, AmplifierOutput.SineCeiling(volts, 0, ohm), 1e-9);

    [Theory]
    [InlineData("se.pub", "S: Wikipedia, Audio power", 12.0, 8.0, 2.25)]
    public void Sine_ceiling_of_a_single_ended_output(string id, string source, double volts, double ohm, double watts) =>
        Reference.Near(id, source, watts, AmplifierOutput.SingleEndedCeiling(volts, 0, ohm), 1e-9);

    [Theory]
    [InlineData("i.pub", "S: Wikipedia, Audio power", 5.0, 14.4, 0.6, 43.2)]
    public void Output_of_a_supply_current(string id, string source, double amperes, double volts, double efficiency, double watts)
    {
        Reference.Near(id, source, watts, SupplyDrop.OutputPower(amperes, volts, efficiency), 1e-9);
        Reference.Near(id, source, amperes, SupplyDrop.Current(watts, efficiency, volts), 1e-9);
    }

    [Theory]
    [InlineData("bridge.2", "derived from Wikipedia, Bridge-tied load", 2.0, 1.0)]
    [InlineData("bridge.8", "S: Wikipedia, Bridge-tied load", 8.0, 4.0)]
    public void Bridged_half_sees(string id, string source, double load, double seen) =>
        Reference.Near(id, source, seen, CombinedLoad.SeenByBridgedHalf(load), 1e-12);

    [Theory]
    [InlineData("bridge.min", "derived from Wikipedia, Bridge-tied load", 2.0, 4.0)]
    public void Lowest_bridged_load(string id, string source, double half, double lowest) =>
        Reference.Near(id, source, lowest, CombinedLoad.LowestBridged(half), 1e-12);

    [Theory]
    [InlineData("load.4||4", "derived from the formula, from memory", new double[] { 4, 4 }, 2.0)]
    [InlineData("load.4||4||4||4", "derived from the formula, from memory", new double[] { 4, 4, 4, 4 }, 1.0)]
    [InlineData("load.8||8||8", "derived from the formula, from memory", new double[] { 8, 8, 8 }, 2.66667)]
    public void Loads_in_parallel(string id, string source, double[] loads, double together) =>
        Reference.Near(id, source, together, CombinedLoad.Parallel(loads), 2e-6);

    [Theory]
    [InlineData("epdr.15", "derived from J. Oclee-Brown, EPDR spreadsheet", 15.0, 0.662424)]
    [InlineData("epdr.45", "derived from J. Oclee-Brown, EPDR spreadsheet", 45.0, 0.353553)]
    [InlineData("epdr.60", "derived from J. Oclee-Brown, EPDR spreadsheet", 60.0, 0.278066)]
    public void Equivalent_peak_dissipation_resistance(string id, string source, double degrees, double ratio)
    {
        Reference.Near(id, source, ratio, Epdr.Of(1, degrees), 2e-6);
        Reference.Near(id, source, ratio, Epdr.Of(1, -degrees), 2e-6);
    }
}
