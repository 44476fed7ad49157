using FitCheck.Catalog;
using FitCheck.Facts.Values;
using FitCheck.Physics.Acoustics;
using FitCheck.Physics.Quantities;

namespace FitCheck.Facts.Entries;

/// <summary>Whether a driver's figures agree with each other: what a wrong entry looks like.</summary>
internal static class DriverFacts
{
    public static readonly IReadOnlyList<FactDeclaration> Declarations =
    [
        Declare.Word(Subject.Driver, "driver_name", "Name of the driver."),
        Declare.Truth(Subject.Driver, "is_tweeter", "The driver is a tweeter."),
        Declare.Truth(Subject.Driver, "has_lowest_crossover", "The sheet gives a lowest crossover."),
        Number("qts", Dimension.One, "Qts as stated."),
        Number("qts_computed", Dimension.One, "Qts that Qes and Qms give."),
        Number("q_mismatch", Dimension.One, "How far Qts is from Qes and Qms taken together: |1/Qts − 1/Qes − 1/Qms| · Qts."),
        Number("qes", Dimension.One, "Qes as stated."),
        Number("qes_computed", Dimension.One, "Qes that fs, Mms, Re and Bl give."),
        Number("force_factor_mismatch", Dimension.One, "How far Qes is from fs, Mms, Re and Bl: |Qes / (2π·fs·Mms·Re/Bl²) − 1|."),
        Number("re", Dimension.Ohm, "DC resistance as stated."),
        Number("rated_impedance", Dimension.Ohm, "Rated impedance."),
        Number("re_ratio", Dimension.One, "DC resistance over rated impedance."),
        Number("one_watt_level", Dimension.Decibel, "Stated sensitivity at 1 W into the rated impedance, at 1 m."),
        Number("computed_level", Dimension.Decibel, "Sensitivity at 1 W that fs, Vas and Qes give."),
        Number("sensitivity_gap", Dimension.Decibel, "Stated sensitivity at 1 W against the one from fs, Vas and Qes, without sign."),
        Number("fs", Dimension.Hertz, "Resonance frequency as stated."),
        Number("fs_computed", Dimension.Hertz, "Resonance frequency that Mms and Cms give."),
        Number("resonance_mismatch", Dimension.One, "How far fs is from Mms and Cms: |fs / (1/2π√(Mms·Cms)) − 1|."),
        Number("vas", Dimension.CubicMetre, "Equivalent volume as stated."),
        Number("vas_computed", Dimension.CubicMetre, "Equivalent volume that Sd and Cms give."),
        Number("volume_mismatch", Dimension.One, "How far Vas is from Sd and Cms: |Vas / (ρc²·Sd²·Cms) − 1|."),
        Number("peak_power", Dimension.Watt, "Peak power as stated."),
        Number("continuous_power", Dimension.Watt, "Continuous power as stated."),
        Number("peak_to_continuous", Dimension.One, "Peak power over continuous power."),
        .. DriverSizeFacts.Declarations,
    ];

    public static FactTable Compute(Driver driver)
    {
        var sheet = new FactSheet();
        sheet.Set("driver_name", driver.Name);
        sheet.Set("is_tweeter", driver.IsTweeter);
        sheet.Set("has_lowest_crossover", FactValue.Of(driver.LowestCrossover is not null) with { Data = [Datum("a tweeter", driver.TypeAt)] });
        if (driver.Parameters is { } p)
        {
            Damping(p, sheet);
            Resonance(p, sheet);
        }
        Efficiency(driver, sheet);
        Against(sheet, "re_ratio", Dimension.One, ("re", "DC resistance", driver.Parameters?.Re), ("rated_impedance", "rated impedance", driver.Impedance), (re, rated) => re / rated);
        Against(sheet, "peak_to_continuous", Dimension.One, ("peak_power", "peak power", driver.PeakPower), ("continuous_power", "continuous power", driver.ContinuousPower), (peak, steady) => peak / steady);
        DriverSizeFacts.Compute(driver, sheet);
        return new FactTable(Subject.Driver, driver.Id, driver.Name, sheet.Values)
        {
            At = driver.At,
            Choices = new Dictionary<string, Choice>(StringComparer.Ordinal) { ["driver"] = new(driver.Id, driver.At) },
        };
    }

    /// <summary>Two figures as facts of their own, and what comes of them: the first is the one that is doubted.</summary>
    internal static void Against(FactSheet sheet, string name, Dimension dimension, (string Fact, string What, Figure? Figure) doubted, (string Fact, string What, Figure? Figure) other, Func<double, double, double> f)
    {
        foreach (var (fact, _, figure) in new[] { doubted, other })
        {
            if (figure is not null && !sheet.Values.ContainsKey(fact))
                sheet.Set(fact, FactValue.Of(figure.Quantity.Dimension, figure.Si));
        }
        if (doubted.Figure is { } a && other.Figure is { } b)
            sheet.Set(name, FactValue.Of(dimension, f(a.Si, b.Si)) with { Data = [Datum(doubted.What, a), Datum(other.What, b)] });
    }

    private static void Damping(DriverParameters p, FactSheet sheet)
    {
        if (p.Qts is { } stated)
            sheet.Set("qts", Dimension.One, stated);
        if (p.Qes is { } electrical)
            sheet.Set("qes", Dimension.One, electrical);
        if (p is { Qts: { } qts, Qes: { } qes, Qms: { } qms })
        {
            sheet.Set("qts_computed", Dimension.One, ThieleSmall.TotalQ(qes, qms));
            sheet.Set("q_mismatch", FactValue.Of(Dimension.One, Math.Abs((1 / qts) - (1 / qes) - (1 / qms)) * qts) with
            {
                Data = [Q(p, "qts"), Q(p, "qes"), Q(p, "qms")],
            });
        }
        if (p is { Qes: { } q, Fs: { } fs, Mms: { } mms, Re: { } re, Bl: { } bl })
        {
            var computed = ThieleSmall.ElectricalQ(fs.Si, mms.Si, re.Si, bl.Si);
            sheet.Set("qes_computed", Dimension.One, computed);
            sheet.Set("force_factor_mismatch", FactValue.Of(Dimension.One, Math.Abs((q / computed) - 1)) with
            {
                Data = [Datum("force factor", bl), Q(p, "qes"), Datum("resonance frequency", fs), Datum("moving mass", mms), Datum("DC resistance", re)],
            });
        }
    }

    private static void Resonance(DriverParameters p, FactSheet sheet)
    {
        sheet.Set("fs", Dimension.Hertz, p.Fs?.Si);
        sheet.Set("vas", Dimension.CubicMetre, p.Vas?.Si);
        if (p is { Fs: { } fs, Mms: { } mms, Cms: { } cms })
        {
            var computed = ThieleSmall.Resonance(mms.Si, cms.Si);
            sheet.Set("fs_computed", Dimension.Hertz, computed);
            sheet.Set("resonance_mismatch", FactValue.Of(Dimension.One, Math.Abs((fs.Si / computed) - 1)) with
            {
                Data = [Datum("resonance frequency", fs), Datum("moving mass", mms), Datum("compliance", cms)],
            });
        }
        if (p is { Vas: { } vas, Sd: { } sd, Cms: { } compliance })
        {
            var computed = ThieleSmall.EquivalentVolume(sd.Si, compliance.Si);
            sheet.Set("vas_computed", Dimension.CubicMetre, computed);
            sheet.Set("volume_mismatch", FactValue.Of(Dimension.One, Math.Abs((vas.Si / computed) - 1)) with
            {
                Data = [Datum("equivalent volume", vas), Datum("piston area", sd), Datum("compliance", compliance)],
            });
        }
    }

    private static void Efficiency(Driver driver, FactSheet sheet)
    {
        if (driver.OneWattLevel is not { } oneWatt || driver.Sensitivity is not { } stated)
            return;
        sheet.Set("one_watt_level", Dimension.Decibel, oneWatt);
        // Above its resonance a subwoofer's stated level is taken in a box, which the reference efficiency knows nothing of.
        if (driver.Parameters is not { Fs: { } fs, Vas: { } vas, Qes: { } qes } || driver.Type == "subwoofer")
            return;
        var computed = Sensitivity.OfEfficiency(Sensitivity.ReferenceEfficiency(fs.Si, vas.Si, qes));
        sheet.Set("computed_level", Dimension.Decibel, computed);
        sheet.Set("sensitivity_gap", FactValue.Of(Dimension.Decibel, Math.Abs(oneWatt - computed)) with
        {
            Data = [Datum("sensitivity", stated), Datum("resonance frequency", fs), Datum("equivalent volume", vas), Q(driver.Parameters, "qes")],
        });
    }

    private static Datum Q(DriverParameters p, string key) => new($"{char.ToUpperInvariant(key[0])}{key[1..]}: {p.Fields.Word(key)}", p.Fields.Text(key)!.At);

    private static Datum Datum(string what, Foundation.Problems.Location at) => new(what, at);

    private static Datum Datum(string what, Figure figure) => new(what, figure);

    private static FactDeclaration Number(string name, Dimension dimension, string meaning) => Declare.Number(Subject.Driver, name, dimension, meaning);
}
