using FitCheck.Catalog;
using FitCheck.Facts.Values;
using FitCheck.Physics.Acoustics;
using FitCheck.Physics.Quantities;

namespace FitCheck.Facts.Entries;

/// <summary>Whether a driver's figures agree with each other: what a wrong entry looks like.</summary>
internal static class DriverFacts
{
    public static readonly FactGroup Declarations = new(Subject.Driver);

    public static readonly WordFact DriverName = Declarations.Word("driver_name", "Name of the driver.", Reads.Driver.Itself);
    public static readonly TruthFact IsTweeter = Declarations.Truth("is_tweeter", "The driver is a tweeter.", Reads.Driver.Itself);
    public static readonly TruthFact HasLowestCrossover = Declarations.Truth(
        "has_lowest_crossover", "The data sheet gives a lowest crossover.",
        Reads.Driver["lowest_crossover"]);
    public static readonly NumberFact Qts = Declarations.Number("qts", Dimension.One, "Qts as stated.", Reads.Driver["parameters.qts"]);
    public static readonly NumberFact QtsComputed = Declarations.Number(
        "qts_computed", Dimension.One, "Qts that Qes and Qms give.",
        Reads.Driver["parameters.qes", "parameters.qms", "parameters.qts"]);
    public static readonly NumberFact QMismatch = Declarations.Number(
        "q_mismatch", Dimension.One, "How far Qts is from Qes and Qms taken together: |1/Qts − 1/Qes − 1/Qms| · Qts.",
        Reads.Driver["parameters.qes", "parameters.qms", "parameters.qts"]);
    public static readonly NumberFact Qes = Declarations.Number("qes", Dimension.One, "Qes as stated.", Reads.Driver["parameters.qes"]);
    public static readonly NumberFact QesComputed = Declarations.Number(
        "qes_computed", Dimension.One, "Qes that fs, Mms, Re and Bl give.",
        Reads.Driver["parameters"]);
    public static readonly NumberFact ForceFactorMismatch = Declarations.Number(
        "force_factor_mismatch", Dimension.One, "How far Qes is from fs, Mms, Re and Bl: |Qes / (2π·fs·Mms·Re/Bl²) − 1|.",
        Reads.Driver["parameters"]);
    public static readonly NumberFact Re = Declarations.Number(
        "re", Dimension.Ohm, "DC resistance as stated.",
        Reads.Driver["parameters.re"]);
    public static readonly NumberFact RatedImpedance = Declarations.Number(
        "rated_impedance", Dimension.Ohm, "Rated impedance.",
        Reads.Driver["impedance"]);
    public static readonly NumberFact ReRatio = Declarations.Number(
        "re_ratio", Dimension.One, "DC resistance over rated impedance.",
        Reads.Driver["impedance", "parameters.re"]);
    public static readonly NumberFact OneWattLevel = Declarations.Number(
        "one_watt_level", Dimension.Decibel, "Stated sensitivity at 1 W into the rated impedance, at 1 m.",
        Reads.Driver["impedance", "sensitivity"]);
    public static readonly NumberFact ComputedLevel = Declarations.Number(
        "computed_level", Dimension.Decibel, "Sensitivity at 1 W that fs, Vas and Qes give.",
        Reads.Driver["impedance", "parameters.fs", "parameters.qes", "parameters.vas", "sensitivity"]);
    public static readonly NumberFact SensitivityGap = Declarations.Number(
        "sensitivity_gap", Dimension.Decibel, "Stated sensitivity at 1 W against the one from fs, Vas and Qes, without sign.",
        Reads.Driver["impedance", "parameters.fs", "parameters.qes", "parameters.vas", "sensitivity"]);
    public static readonly NumberFact Fs = Declarations.Number(
        "fs", Dimension.Hertz, "Resonance frequency as stated.",
        Reads.Driver["parameters.fs"]);
    public static readonly NumberFact FsComputed = Declarations.Number(
        "fs_computed", Dimension.Hertz, "Resonance frequency that Mms and Cms give.",
        Reads.Driver["parameters.cms", "parameters.fs", "parameters.mms"]);
    public static readonly NumberFact ResonanceMismatch = Declarations.Number(
        "resonance_mismatch", Dimension.One, "How far fs is from Mms and Cms: |fs / (1/2π√(Mms·Cms)) − 1|.",
        Reads.Driver["parameters.cms", "parameters.fs", "parameters.mms"]);
    public static readonly NumberFact Vas = Declarations.Number(
        "vas", Dimension.CubicMetre, "Equivalent volume as stated.",
        Reads.Driver["parameters.vas"]);
    public static readonly NumberFact VasComputed = Declarations.Number(
        "vas_computed", Dimension.CubicMetre, "Equivalent volume that Sd and Cms give.",
        Reads.Driver["parameters.cms", "parameters.sd", "parameters.vas"]);
    public static readonly NumberFact VolumeMismatch = Declarations.Number(
        "volume_mismatch", Dimension.One, "How far Vas is from Sd and Cms: |Vas / (ρc²·Sd²·Cms) − 1|.",
        Reads.Driver["parameters.cms", "parameters.sd", "parameters.vas"]);
    public static readonly NumberFact PeakPower = Declarations.Number(
        "peak_power", Dimension.Watt, "Peak power as stated.",
        Reads.Driver["power.peak"]);
    public static readonly NumberFact ContinuousPower = Declarations.Number(
        "continuous_power", Dimension.Watt, "Continuous power as stated.",
        Reads.Driver["power.continuous"]);
    public static readonly NumberFact PeakToContinuous = Declarations.Number(
        "peak_to_continuous", Dimension.One, "Peak power over continuous power.",
        Reads.Driver["power.continuous", "power.peak"]);

    public static FactTable Compute(Driver driver)
    {
        // What is stated of each of two coils is of one motor: it is checked with both in use.
        if (driver is { Coils: 2, Parameters.Coils: null })
            driver = driver.Wired(inSeries: false);
        var sheet = new FactSheet();
        sheet.Set(DriverName, driver.Name);
        sheet.Set(IsTweeter, driver.IsTweeter);
        sheet.Set(HasLowestCrossover, FactValue.Of(driver.LowestCrossover is not null) with { Data = [Datum("a tweeter", driver.TypeAt)] });
        if (driver.Parameters is { } p)
        {
            Damping(p, sheet);
            Resonance(p, sheet);
        }
        Efficiency(driver, sheet);
        Against(sheet, ReRatio, (Re, "DC resistance", driver.Parameters?.Re), (RatedImpedance, "rated impedance", driver.Impedance),
            (re, rated) => re / rated);
        Against(sheet, PeakToContinuous, (PeakPower, "peak power", driver.PeakPower),
            (ContinuousPower, "continuous power", driver.ContinuousPower), (peak, steady) => peak / steady);
        DriverSizeFacts.Compute(driver, sheet);
        ProfileFacts.Compute(driver, sheet);
        return new FactTable(Subject.Driver, driver.Id, driver.Name, sheet.Values)
        {
            At = driver.At,
            Choices = new Dictionary<string, Choice>(StringComparer.Ordinal) { ["driver"] = new(driver.Id, driver.At) },
        };
    }

    /// <summary>Two figures as facts of their own, and what comes of them: the first is the one that is doubted.</summary>
    internal static void Against(FactSheet sheet, NumberFact outcome, (NumberFact Fact, string What, Figure? Figure) doubted,
        (NumberFact Fact, string What, Figure? Figure) other, Func<double, double, double> f)
    {
        foreach (var (fact, _, figure) in new[] { doubted, other })
        {
            if (figure is not null && sheet.Of(fact) is null)
                sheet.Set(fact, FactValue.Of(figure.Quantity.Dimension, figure.Si));
        }
        if (doubted.Figure is { } a && other.Figure is { } b)
            sheet.Set(outcome,
                FactValue.Of(outcome.Dimension, f(a.Si, b.Si)) with { Data = [Datum(doubted.What, a), Datum(other.What, b)] });
    }

    private static void Damping(DriverParameters p, FactSheet sheet)
    {
        if (p.Qts is { } stated)
            sheet.Set(Qts, stated);
        if (p.Qes is { } electrical)
            sheet.Set(Qes, electrical);
        if (p is { Qts: { } qts, Qes: { } qes, Qms: { } qms })
        {
            sheet.Set(QtsComputed, ThieleSmall.TotalQ(qes, qms));
            sheet.Set(QMismatch, FactValue.Of(Dimension.One, Math.Abs((1 / qts) - (1 / qes) - (1 / qms)) * qts) with
            {
                Data = [Q(p, "qts"), Q(p, "qes"), Q(p, "qms")],
            });
        }
        if (p is { Qes: { } q, Fs: { } fs, Mms: { } mms, Re: { } re, Bl: { } bl })
        {
            var computed = ThieleSmall.ElectricalQ(fs.Si, mms.Si, re.Si, bl.Si);
            sheet.Set(QesComputed, computed);
            sheet.Set(ForceFactorMismatch, FactValue.Of(Dimension.One, Math.Abs((q / computed) - 1)) with
            {
                Data = [Datum("force factor", bl), Q(p, "qes"), Datum("resonance frequency", fs), Datum("moving mass", mms),
                    Datum("DC resistance", re)],
            });
        }
    }

    private static void Resonance(DriverParameters p, FactSheet sheet)
    {
        sheet.Set(Fs, p.Fs?.Si);
        sheet.Set(Vas, p.Vas?.Si);
        if (p is { Fs: { } fs, Mms: { } mms, Cms: { } cms })
        {
            var computed = ThieleSmall.Resonance(mms.Si, cms.Si);
            sheet.Set(FsComputed, computed);
            sheet.Set(ResonanceMismatch, FactValue.Of(Dimension.One, Math.Abs((fs.Si / computed) - 1)) with
            {
                Data = [Datum("resonance frequency", fs), Datum("moving mass", mms), Datum("compliance", cms)],
            });
        }
        if (p is { Vas: { } vas, Sd: { } sd, Cms: { } compliance })
        {
            var computed = ThieleSmall.EquivalentVolume(sd.Si, compliance.Si);
            sheet.Set(VasComputed, computed);
            sheet.Set(VolumeMismatch, FactValue.Of(Dimension.One, Math.Abs((vas.Si / computed) - 1)) with
            {
                Data = [Datum("equivalent volume", vas), Datum("piston area", sd), Datum("compliance", compliance)],
            });
        }
    }

    private static void Efficiency(Driver driver, FactSheet sheet)
    {
        if (driver.OneWattLevel is not { } oneWatt || driver.Sensitivity is not { } stated)
            return;
        sheet.Set(OneWattLevel, oneWatt);
        // Above its resonance a subwoofer's stated level is taken in a box, which the reference efficiency knows nothing of.
        if (driver.Parameters is not { Fs: { } fs, Vas: { } vas, Qes: { } qes } || driver.Type == "subwoofer")
            return;
        var computed = Sensitivity.OfEfficiency(Sensitivity.ReferenceEfficiency(fs.Si, vas.Si, qes));
        sheet.Set(ComputedLevel, computed);
        sheet.Set(SensitivityGap, FactValue.Of(Dimension.Decibel, Math.Abs(oneWatt - computed)) with
        {
            Data = [Datum("sensitivity", stated), Datum("resonance frequency", fs), Datum("equivalent volume", vas),
                Q(driver.Parameters, "qes")],
        });
    }

    private static Datum Q(DriverParameters p, string key) =>
        new($"{char.ToUpperInvariant(key[0])}{key[1..]}: {p.Fields.Word(key)}", p.Fields.Text(key)!.At);

    private static Datum Datum(string what, Foundation.Problems.Location at) => new(what, at);

    private static Datum Datum(string what, Figure figure) => new(what, figure);
}
