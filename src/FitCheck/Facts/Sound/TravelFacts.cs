using System.Numerics;
using FitCheck.Builds.Readable;
using FitCheck.Catalog;
using FitCheck.Facts.Contexts;
using FitCheck.Facts.Values;
using FitCheck.Physics.Acoustics;
using FitCheck.Physics.Electrical.Filters;
using FitCheck.Physics.Quantities;

namespace FitCheck.Facts.Sound;

/// <summary>How far a cone travels where it works, the high-pass that keeps it in bounds, and what its box makes of it.</summary>
internal static class TravelFacts
{
    public static readonly FactGroup Declarations = new(Subject.Position);

    public static readonly TruthFact IsSubwoofer = Declarations.Truth("is_subwoofer", "The driver is a subwoofer.", Reads.Driver.Itself)
        .Saying("not a subwoofer", "a subwoofer");
    public static readonly TruthFact HasParameters = Declarations.Truth(
        "has_parameters", "The driver's data sheet prints parameters.", Reads.Driver["parameters"])
        .Saying("its maker prints no parameters");
    public static readonly TruthFact OnAmplifier = Declarations.Truth(
        "on_amplifier", "The driver is connected to an amplifier.",
        Reads.Feed.Itself, Reads.Output["amplifier", "source-unit"], Reads.Place["factory_channel"])
        .Saying("no amplifier");
    public static readonly TruthFact HasHighPass = Declarations.Truth(
        "has_high_pass", "A filter, or a capacitor in the wire, keeps deep bass from this driver.",
        Reads.Network.Itself, Reads.Amplification.Itself);
    public static readonly TruthFact HasLowPass = Declarations.Truth(
        "has_low_pass", "An electronic filter, or a coil in the wire, keeps treble from this driver.",
        Reads.Network.Itself, Reads.Amplification.Itself);
    public static readonly NumberFact HighPassSet = Declarations.Number(
        "high_pass_set", Dimension.Hertz, "Corner of the electronic high-pass that the build sets.",
        Reads.Network.Itself, Reads.Amplification.Itself);
    public static readonly NumberFact Xmax = Declarations.Number(
        "xmax", Dimension.Metre, "Peak linear excursion of the driver, to one side.",
        Reads.Driver["parameters.xmax"]);
    public static readonly NumberFact ExcursionPeak = Declarations.Number(
        "excursion_peak", Dimension.Metre,
        "Peak excursion with programme noise (IEC 60268-1, crest factor 2) whose peaks just fit the output before any filter; of a "
        + "subwoofer, its bass up to 80 Hz. In the box, or else as in an infinite baffle.",
        Reads.Network.Itself, Reads.Amplification.Itself, Reads.Box.Itself);
    public static readonly NumberFact ExcursionRatio = Declarations.Number(
        "excursion_ratio", Dimension.One, "Peak excursion at the power available over peak linear excursion.",
        Reads.Network.Itself, Reads.Amplification.Itself, Reads.Box.Itself);
    public static readonly NumberFact LowestSafeHighPass = Declarations.Number(
        "lowest_safe_high_pass", Dimension.Hertz,
        "Lowest corner of a high-pass that keeps the excursion within its linear part; 20 Hz when none is needed.",
        Reads.Network.Itself, Reads.Amplification.Itself, Reads.Box.Itself);
    public static readonly NumberFact SafeHighPassSlope = Declarations.Number(
        "safe_high_pass_slope", Dimension.Slope, "Slope of that high-pass: the build's own, else 12 dB/octave.",
        Reads.Network.Itself, Reads.Amplification.Itself, Reads.Box.Itself);
    public static readonly NumberFact BoxVolume = Declarations.Number(
        "box_volume", Dimension.CubicMetre, "Net volume of the box.",
        Reads.Network.Itself, Reads.Amplification.Itself, Reads.Box.Itself);
    public static readonly NumberFact BoxQ = Declarations.Number(
        "box_q", Dimension.One, "Total Q of the driver in its closed box.",
        Reads.Driver["parameters.fs", "parameters.qes", "parameters.qms", "parameters.vas"], Reads.Box.Itself);
    public static readonly NumberFact BoxResonance = Declarations.Number(
        "box_resonance", Dimension.Hertz, "Resonance of the driver in its closed box.",
        Reads.Network.Itself, Reads.Amplification.Itself, Reads.Box.Itself);
    public static readonly NumberFact BoxCorner = Declarations.Number(
        "box_corner", Dimension.Hertz, "Frequency at which the driver in its box is 3 dB down; a cabin raises what lies below.",
        Reads.Network.Itself, Reads.Amplification.Itself, Reads.Box.Itself);

    public static void Compute(PositionContext c, FactSheet sheet)
    {
        sheet.Set(IsSubwoofer, c.Driver is { Type: "subwoofer" });
        if (c.Driver is not { IsTweeter: false } driver)
            return;
        sheet.Set(HasParameters, driver.Parameters is not null);
        sheet.Set(Xmax, driver.Parameters?.Xmax, $"peak linear excursion of {driver.Name}");
        Box(c, driver, sheet);
        if (c.Channel is not { } channel)
            return;
        sheet.Set(OnAmplifier, channel.Channel.Device.Part is Amplifier);
        sheet.Set(HasHighPass,
            channel.Channel.InLine.Any(s => s.Part.Type == "capacitor") || c.Placed.Sundries.Exists(s => s.Part.Type == "capacitor")
            ? FactValue.Of(true) : IsThere(channel.HighPass));
        sheet.Set(HasLowPass, channel.Of(c.Position.Id) is ({ } way, _)
            && way.Physics.Elements is { } rungs && rungs.Any(r => !r.Shunt && r.Inductance is not null)
            ? FactValue.Of(true) : IsThere(channel.LowPass));
        sheet.Set(HighPassSet, channel.HighPass?.Setting.Corner, "high-pass");
        // What a port does to the travel is not worked out, and what holds of a closed box would mislead.
        if (c.Placed.Port is null)
            Travel(c, channel, driver, sheet);
    }

    private static FactValue IsThere(FilterCheck? filter) =>
        filter is { Exists: null } ? FactValue.Unknown(FactType.Truth, filter.Open) : FactValue.Of(filter is not null);

    private static void Travel(PositionContext c, ChannelContext channel, Driver driver, FactSheet sheet)
    {
        var missing = ResonanceCorner.IsMissing(driver);
        if (Unboxed(c, driver) || channel.Sweep is not { } sweep || driver.Parameters is not { Xmax: { Si: > 0 } xmax }
            || PowerFacts.Volts(channel, sweep) is not ({ } volts, var more)
            || Programmes(c, missing ? channel.AtResonances : [channel], driver) is not { Count: > 0 } travels)
        {
            sheet.Set(ExcursionRatio, FactValue.Unknown(FactType.Number(Dimension.One), [.. Untold(c, channel, driver)]));
            return;
        }
        IReadOnlyList<Unsure> unsure = [.. Resistance(driver), .. missing ? [ResonanceCorner.Ask(driver)] : Array.Empty<Unsure>(), .. more,
            .. channel.FiltersUnsure, .. channel.Unwritten,
            .. channel.FeedsUnsure.Select(f => f with { Estimated = true, IsBounded = false }),
            .. xmax.IsEstimated ? new[] { Excursion(driver) } : []];
        IReadOnlyList<Datum> data = [new Datum($"peak linear excursion of {driver.Name}: {xmax}", xmax.At)];
        var peaks = travels.ConvertAll(t => t.Peak(1, channel.ActiveGain));
        var (low, high) = (peaks.Min(), peaks.Max());
        var peak = volts * new Uncertain((low + high) / 2, low, high, (high - low) / 2);
        sheet.Set(ExcursionPeak, FactValue.Of(Dimension.Metre, peak) with
        {
            Unsure = unsure,
            Shown = missing ? $"{QuantityText.Format(peak.Low, Dimension.Metre)} to {QuantityText.Format(peak.High, Dimension.Metre)}"
                : null,
        });
        sheet.Set(ExcursionRatio, FactValue.Of(Dimension.One, peak * Uncertain.Exact(1 / xmax.Si)) with { Unsure = unsure, Data = data });
        var slope = channel.HighPass?.Setting.SlopePerOctave ?? channel.Practice.FilterSlope;
        sheet.Set(SafeHighPassSlope, slope);
        var corners = travels.ConvertAll(
            t => t.LowestHighPass(volts.High, xmax.Si, ActiveFilter.OrderOfSlope(slope), channel.LowPassGain));
        if (corners.Max() is { } corner && !corners.Contains(null))
            sheet.Set(LowestSafeHighPass, FactValue.Of(Dimension.Hertz, corner) with { Unsure = unsure, Data = data });
    }

    private static List<ProgrammeTravel> Programmes(PositionContext c, IReadOnlyList<ChannelContext> channels, Driver driver) =>
        [.. channels.Select(x => Programme(c, x, driver)).OfType<ProgrammeTravel>()];

    private static ProgrammeTravel? Programme(PositionContext c, ChannelContext channel, Driver driver) =>
        channel.Sweep is { } sweep && channel.Of(c.Position.Id) is ({ } branch, var index)
            && MovingMass(driver.Parameters, channel.Corner?.Fs(driver, channel.Practice) ?? driver.Parameters?.Fs?.Si) is { } mass
            ? ProgrammeTravel.Of(branch.Physics.Driver, mass, hz => Complex.Abs(sweep.Nearest(hz).Drivers[index].Transfer),
                IsForBass(c, driver)) : null;

    private static IEnumerable<Unsure> Untold(PositionContext c, ChannelContext channel, Driver driver)
    {
        if (Unboxed(c, driver))
            yield return BoxOf(c, driver);
        foreach (var unsure in channel.Sweep is null ? channel.Unsure : [])
            yield return unsure;
        if (channel.Sweep is { } sweep && PowerFacts.Volts(channel, sweep) is null)
            yield return PowerFacts.OutputPower(channel, estimated: false);
        var p = driver.Parameters;
        string[] missing =
        [
            .. p?.Xmax is null ? ["Xmax"] : Array.Empty<string>(),
            .. MovingMass(p, p?.Fs?.Si ?? 1) is null ? ["Mms (or Vas and Sd)"] : Array.Empty<string>(),
        ];
        if (missing.Length > 0)
            yield return new Unsure($"{string.Join(", ", missing)} of {driver.Name}",
                "Ask the maker for the parameters, and write them into its entry under `parameters`.", Estimated: false)
            { IsForMaker = true };
    }

    private static bool IsForBass(PositionContext c, Driver driver) => driver.Type == "subwoofer" || c.Position.Role == "subwoofer";

    // As given, else what the stiffness of the equivalent volume needs for the resonance (Small, JAES 1972).
    private static double? MovingMass(DriverParameters? p, double? fs)
    {
        if (p?.Mms is { Si: > 0 } mass)
            return mass.Si;
        if (p is not { Vas: { Si: > 0 } vas, Sd: { Si: > 0 } area } || fs is not > 0)
            return null;
        var compliance = vas.Si / ThieleSmall.EquivalentVolume(area.Si, 1);
        return 1 / (Math.Pow(2 * Math.PI * fs.Value, 2) * compliance);
    }

    private static bool Unboxed(PositionContext c, Driver driver) =>
        driver.Type == "subwoofer" && c.Position.Place is "cargo" or "" && c.Placed.Box is null;

    private static void Box(PositionContext c, Driver driver, FactSheet sheet)
    {
        if (Unboxed(c, driver))
        {
            sheet.Set(BoxQ, FactValue.Unknown(FactType.Number(Dimension.One), BoxOf(c, driver)));
            return;
        }
        if (c.Placed.Box is not { Si: > 0 } box)
            return;
        sheet.Set(BoxVolume, box, "net volume of the box");
        if (c.Placed.Port is not null)
            return;
        if (driver.Parameters is not { Vas: { Si: > 0 } vas } p)
        {
            sheet.Set(BoxQ,
                FactValue.Unknown(FactType.Number(Dimension.One),
                    new Unsure($"equivalent volume (Vas) of {driver.Name}", "Ask the maker for Vas, and write it into its entry.",
                        Estimated: false)
                    { Key = DatumKey.In(driver, "parameters.vas"), IsForMaker = true }));
            return;
        }
        var stiffening = ClosedBox.Stiffening(vas.Si, box.Si);
        var missing = p.Qes is null || p.Qms is null;
        var qs = ResonanceCorner.All.Select(k => k.Qs(driver, c.Practice)).Select(k => ThieleSmall.TotalQ(k.Qes, k.Qms) * stiffening)
            .ToList();
        var (low, high) = (qs.Min(), qs.Max());
        sheet.Set(BoxQ, FactValue.Of(Dimension.One, new Uncertain((low + high) / 2, low, high, (high - low) / 2)) with
        {
            Data = [new Datum("net volume of the box", box), new Datum($"equivalent volume of {driver.Name}: {vas}", vas.At)],
            Unsure =
            [
                .. missing ? [ResonanceCorner.Ask(driver)] : Array.Empty<Unsure>(),
                .. box.IsEstimated ? [new Unsure(c.AtPosition("net volume of the box"),
                    "Measure the box inside, and take off what the driver and the braces fill.", Estimated: true,
                    limit => Volume(driver, limit)) { Key = new DatumKey(c.Position.Id, DatumKey.Line, "box") }] : Array.Empty<Unsure>(),
            ],
            Shown = missing ? $"{QuantityText.Number(low, 2)} to {QuantityText.Number(high, 2)}" : null,
        });
        if (p.Fs is not { } fs)
            return;
        sheet.Set(BoxResonance, fs.Si * stiffening);
        if (!missing)
            sheet.Set(BoxCorner, fs.Si * stiffening * ClosedBox.HalfPowerRatio(low));
    }

    private static Unsure BoxOf(PositionContext c, Driver driver) => new(c.AtPosition("net volume of the box"),
        "Ask the maker of the box, or fill it with a measured amount of dry grain; then write it into the build as `box`.",
        Estimated: false, limit => Volume(driver, limit))
    { Key = new DatumKey(c.Position.Id, DatumKey.Line, "box") };

    // The volume at which the total Q just reaches a limit: a smaller box has a higher Q.
    private static string? Volume(Driver driver, PassLimit limit)
    {
        if (driver.Parameters is not { Vas: { Si: > 0 } vas, Qes: { } qes, Qms: { } qms } || limit.Limit <= ThieleSmall.TotalQ(qes, qms))
            return null;
        var ratio = limit.Limit / ThieleSmall.TotalQ(qes, qms);
        var volume = vas.Si / ((ratio * ratio) - 1);
        return $"{QuantityText.FormatLimit(volume, Dimension.CubicMetre, orMore: !limit.AtLeast)} or {(limit.AtLeast ? "less" : "more")}";
    }

    // What else hangs on the output changes next to nothing in the bass.
    private static Unsure[] Resistance(Driver driver) => driver.Parameters?.Re is { IsEstimated: false } ? []
        : [new Unsure($"DC resistance of {driver.Name}",
        "Unplug the driver and put a multimeter across its terminals, at room temperature.", driver.Parameters?.Re is not null)
        { Key = DatumKey.In(driver, "parameters.re") }];

    private static Unsure Excursion(Driver driver) =>
        new($"peak linear excursion of {driver.Name}", "Ask the maker for Xmax, one way.", Estimated: true);
}
