using FitCheck.Catalog;
using FitCheck.Physics.Acoustics;
using FitCheck.Physics.Quantities;

namespace FitCheck.Facts;

/// <summary>Whether a driver's figures agree with each other: what a wrong entry looks like.</summary>
internal static class DriverFacts
{
    public static readonly IReadOnlyList<FactDeclaration> Declarations =
    [
        Declare.Word(Subject.Driver, "driver_name", "Name of the driver."),
        Declare.Truth(Subject.Driver, "is_tweeter", "The driver is a tweeter."),
        Declare.Truth(Subject.Driver, "has_lowest_crossover", "The sheet gives a lowest crossover."),
        Number("q_mismatch", Dimension.One, "How far Qts is from Qes and Qms taken together: |1/Qts − 1/Qes − 1/Qms| · Qts."),
        Number("re_ratio", Dimension.One, "DC resistance over rated impedance."),
        Number("sensitivity_gap", Dimension.Decibel, "Stated sensitivity at 1 W against the one from fs, Vas and Qes, without sign."),
        Number("resonance_mismatch", Dimension.One, "How far fs is from Mms and Cms: |fs / (1/2π√(Mms·Cms)) − 1|."),
        Number("volume_mismatch", Dimension.One, "How far Vas is from Sd and Cms: |Vas / (ρc²·Sd²·Cms) − 1|."),
        Number("flange_over_cutout", Dimension.Metre, "Flange diameter less cutout diameter."),
        Number("depth_over_magnet", Dimension.Metre, "Mounting depth less magnet height."),
        Number("cutout_to_size", Dimension.One, "Cutout diameter over the driver's size class."),
        Number("peak_to_continuous", Dimension.One, "Peak power over continuous power."),
        Number("price", Dimension.Currency, "Price of a pack."),
    ];

    public static FactTable Compute(Driver driver)
    {
        var sheet = new FactSheet();
        sheet.Set("driver_name", driver.Name);
        sheet.Set("is_tweeter", driver.IsTweeter);
        sheet.Set("has_lowest_crossover", driver.LowestCrossover is not null);
        var p = driver.Parameters;
        if (p is { Qts: { } qts, Qes: { } qes, Qms: { } qms })
            sheet.Set("q_mismatch", Dimension.One, Math.Abs((1 / qts) - (1 / qes) - (1 / qms)) * qts);
        if (p?.Re is { } re && driver.Impedance is { } rated)
            sheet.Set("re_ratio", At(Dimension.One, re.Si / rated.Si, $"DC resistance of {driver.Name}: {re}", re));
        Efficiency(driver, p, sheet);
        Resonance(p, sheet);
        Sizes(driver, sheet);
        if (driver.PeakPower is { } peak && driver.ContinuousPower is { } continuous)
            sheet.Set("peak_to_continuous", At(Dimension.One, peak.Si / continuous.Si, $"peak power of {driver.Name}: {peak}", peak));
        sheet.Set("price", FactValue.Of(Dimension.Currency, (double)driver.Price.Value.Amount) with { Shown = driver.Price.Value.ToString(), Data = [new Datum("price", driver.Price.At)] });
        return new FactTable(Subject.Driver, driver.Id, driver.Name, sheet.Values)
        {
            At = driver.At,
            Currency = driver.Price.Value.Currency,
            Choices = new Dictionary<string, Choice>(StringComparer.Ordinal) { ["driver"] = new(driver.Id, driver.At) },
        };
    }

    private static void Efficiency(Driver driver, DriverParameters? p, FactSheet sheet)
    {
        if (p is not { Fs: { } fs, Vas: { } vas, Qes: { } qes } || driver is not { Sensitivity: { } stated, Impedance: { } z } || driver.Type == "subwoofer")
            return;
        var oneWatt = driver.SensitivityAtVolts ? Sensitivity.ToOneWatt(stated.Si, z.Si) : stated.Si;
        var computed = Sensitivity.OfEfficiency(Sensitivity.ReferenceEfficiency(fs.Si, vas.Si, qes));
        sheet.Set("sensitivity_gap", At(Dimension.Decibel, Math.Abs(oneWatt - computed), $"sensitivity of {driver.Name}: {stated}", stated));
    }

    private static void Resonance(DriverParameters? p, FactSheet sheet)
    {
        if (p is { Fs: { } fs, Mms: { } mms, Cms: { } cms })
            sheet.Set("resonance_mismatch", At(Dimension.One, Math.Abs((fs.Si / ThieleSmall.Resonance(mms.Si, cms.Si)) - 1), $"resonance frequency: {fs}", fs));
        if (p is { Vas: { } vas, Sd: { } sd, Cms: { } compliance })
            sheet.Set("volume_mismatch", At(Dimension.One, Math.Abs((vas.Si / ThieleSmall.EquivalentVolume(sd.Si, compliance.Si)) - 1), $"equivalent volume: {vas}", vas));
    }

    private static void Sizes(Driver driver, FactSheet sheet)
    {
        var d = driver.Dimensions;
        if (d is { Flange: { } flange, Cutout: { } cutout })
            sheet.Set("flange_over_cutout", At(Dimension.Metre, flange.Si - cutout.Si, $"cutout of {driver.Name}: {cutout}", cutout));
        if (d is { Depth: { } depth, MagnetHeight: { } magnet })
            sheet.Set("depth_over_magnet", At(Dimension.Metre, depth.Si - magnet.Si, $"mounting depth of {driver.Name}: {depth}", depth));
        // The size of a tweeter is its dome; its body has no fixed relation to it.
        if (!driver.IsTweeter && driver.Size is { } size && d?.Cutout is { } hole)
            sheet.Set("cutout_to_size", At(Dimension.One, hole.Si / size.Si, $"cutout of {driver.Name}: {hole}", hole));
    }

    private static FactValue At(Dimension dimension, double si, string what, Figure figure) => FactValue.Of(dimension, si) with { Data = [new Datum(what, figure.At)] };

    private static FactDeclaration Number(string name, Dimension dimension, string meaning) => Declare.Number(Subject.Driver, name, dimension, meaning);
}
