using FitCheck.Builds.Readable;
using FitCheck.Catalog;
using FitCheck.Facts.Contexts;
using FitCheck.Facts.Values;
using FitCheck.Physics.Acoustics;
using FitCheck.Physics.Numerics;
using FitCheck.Physics.Quantities;

namespace FitCheck.Facts.Sound;

/// <summary>Where a cone ends by itself, and what is left to the tweeter that sits before it.</summary>
internal static class EndFacts
{
    public static readonly FactGroup Declarations = new(Subject.Position);

    public static readonly TruthFact HasOwnTweeter = Declarations.Truth(
        "has_own_tweeter", "The driver is a coaxial: a tweeter of its own sits in front of its cone.",
        Reads.Driver["type"])
        .Saying("no coaxial");
    public static readonly NumberFact OwnTweeterCorner = Declarations.Number(
        "own_tweeter_corner", Dimension.Hertz, "Where the built-in tweeter begins: 1/(2π·R·C) of its capacitor.",
        Reads.Driver["built_in_tweeter.capacitor", "built_in_tweeter.impedance", "impedance"]);
    public static readonly TruthFact HasTweeterAbove = Declarations.Truth(
        "has_tweeter_above", "The driver is a woofer, and a tweeter of the build goes on above it at the same end and side.",
        Reads.DriverThere.Itself, Reads.Network.Itself, Reads.Amplification.Itself, Reads.Everywhere.Itself)
        .Saying("no woofer with a tweeter of the build above it");
    public static readonly NumberFact TakenOver = Declarations.Number(
        "taken_over", Dimension.Hertz,
        "Up to where the woofer has to play: where the tweeter begins, or where its own filter has taken 6 dB from it, whichever lies "
        + "lower. If no filter takes as much from it, where the tweeter is no more than 6 dB down.",
        Reads.Network.Itself, Reads.Amplification.Itself, Reads.Everywhere.Itself);
    public static readonly NumberFact TakenOverKa = Declarations.Number(
        "taken_over_ka", Dimension.One, "Circumference of the woofer's cone over the wavelength there.",
        Reads.Driver["parameters.sd", "size"], Reads.Network.Itself, Reads.Amplification.Itself, Reads.Everywhere.Itself);

    public static void Compute(PositionContext c, IReadOnlyList<PositionContext> all, FactSheet sheet)
    {
        sheet.Set(HasOwnTweeter, c.Driver is { Type: "coaxial" });
        sheet.Set(HasTweeterAbove, false);
        if (c.Driver is { Type: "coaxial" } coaxial)
            sheet.Set(OwnTweeterCorner, CornerOf(coaxial));
        else if (c.Driver is { Type: "woofer" } woofer && c.Position.Role is not ("tweeter" or "subwoofer") && c.Channel is not null)
            Woofer(c, woofer, all, sheet);
    }

    private static FactValue CornerOf(Driver coaxial)
    {
        var unsure = new Unsure($"capacitor of the built-in tweeter of {coaxial.Name}",
            "Read it from the small capacitor behind the cone or under the dome, and write it into its entry as `built_in_tweeter`.",
            Estimated: false);
        if (coaxial.BuiltInCapacitor is not { Si: > 0 } capacitor
            || (coaxial.BuiltInImpedance ?? coaxial.Impedance) is not { Si: > 0 } impedance)
            return FactValue.Unknown(FactType.Number(Dimension.Hertz), unsure);
        return FactValue.Of(Dimension.Hertz, 1 / (2 * Math.PI * impedance.Si * capacitor.Si)) with
        {
            Data = [new Datum($"capacitor of the built-in tweeter of {coaxial.Name}: {capacitor}", capacitor.At)],
            Unsure = capacitor.IsEstimated || coaxial.BuiltInImpedance is not { IsEstimated: false }
                ? [unsure with { Estimated = true }] : [],
        };
    }

    private static void Woofer(PositionContext c, Driver woofer, IReadOnlyList<PositionContext> all, FactSheet sheet)
    {
        var near = all.Where(o => IsFiltered(o) && (o.Channel == c.Channel || BandFacts.IsBeside(o, c) != false)).ToList();
        var sure = near.Where(o => o.Channel == c.Channel || BandFacts.IsBeside(o, c) == true).ToList();
        sheet.Set(HasTweeterAbove,
            sure.Count > 0 || near.Count == 0 ? FactValue.Of(sure.Count > 0) : BandFacts.NobodyWroteWhere(near.Append(c)));
        if (near.Count == 0)
            return;
        var own = BandFacts.Farthest([c], highest: true, b => Reach(b, up: true));
        // A woofer that no filter takes 6 dB from goes on, and a tweeter that comes in gently relieves it before its own corner.
        var isOpen = own.Number is { } end && end.High >= FrequencyGrid.Highest;
        var begins = BandFacts.Farthest(sure.Count > 0 ? sure : near, highest: false, b => isOpen ? Reach(b, up: false) : b.Band.LowHz);
        var taken = BandFacts.Pick(own, begins, highest: false);
        taken = taken with
        {
            Unsure = [.. taken.Unsure, .. near.Where(o => o.Channel!.Of(o.Position.Id)?.Branch.FeedUnknown == true)
                .Select(o => ChannelQuestions.Carried(o.Position))],
        };
        sheet.Set(TakenOver, taken);
        sheet.Set(TakenOverKa, Ka(taken, woofer, c.Practice.ConeRadiusShare));
    }

    // How far a band reaches beyond its corner until it is 6 dB down: to the end of the audible range where it never is.
    private static double Reach(DriverBand band, bool up)
    {
        var (hz, step) = (FrequencyGrid.Audio, up ? 1 : -1);
        var at = Enumerable.Range(0, hz.Count).MinBy(i => Math.Abs(Math.Log(hz[i] / (up ? band.Band.HighHz : band.Band.LowHz))));
        while (at + step >= 0 && at + step < hz.Count && band.LevelsDb[at + step] >= band.Band.PeakDb - 6)
            at += step;
        return hz[at];
    }

    // One that is bare for certain is told as that.
    private static bool IsFiltered(PositionContext c) => c.Driver is { IsTweeter: true }
        && c.Channel?.Of(c.Position.Id) is ({ } branch, _)
        && (branch.HighPasses.Count > 0 || branch.FeedUnknown || branch.Unrecorded is not null || branch.Doubted is { Exists: null });

    private static FactValue Ka(FactValue taken, Driver woofer, Between share)
    {
        var area = new Unsure($"piston area of {woofer.Name}",
            "Measure across the cone from the middle of the surround to the middle opposite, and write the area into its entry as `sd`.",
            Estimated: false)
        { Key = DatumKey.In(woofer, "parameters.sd") };
        Uncertain? radius = woofer.Parameters?.Sd is { Si: > 0 } sd ? Uncertain.Exact(Math.Sqrt(sd.Si / Math.PI))
            : woofer.Size is { Si: > 0 } size
                ? new Uncertain(size.Si * (share.Low + share.High) / 2, size.Si * share.Low, size.Si * share.High,
                    size.Si * (share.High - share.Low) / 2) : null;
        if (taken.Number is not { } hz || radius is not { } a)
            return FactValue.Unknown(FactType.Number(Dimension.One), [.. taken.Unsure, .. radius is null ? [area] : Array.Empty<Unsure>()]);
        Unsure[] guessed = woofer.Parameters?.Sd switch
        {
            null => [area with { IsBounded = true }],
            { IsEstimated: true } => [area with { Estimated = true }],
            _ => [],
        };
        return FactValue.Of(Dimension.One, hz * a * Uncertain.Exact(2 * Math.PI / Air.SoundSpeed)) with
        {
            Unsure = [.. taken.Unsure, .. guessed],
            Data = [.. taken.Data],
        };
    }
}
