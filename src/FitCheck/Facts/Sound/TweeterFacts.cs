using FitCheck.Builds.Readable;
using FitCheck.Catalog;
using FitCheck.Facts.Contexts;
using FitCheck.Facts.Values;
using FitCheck.Findings;
using FitCheck.Physics.Electrical.Filters;
using FitCheck.Physics.Electrical.Loads;
using FitCheck.Physics.Electrical.Programme;
using FitCheck.Physics.Numerics;
using FitCheck.Physics.Quantities;

namespace FitCheck.Facts.Sound;

/// <summary>
/// What reaches a tweeter: corner and slope of the real high-pass at its terminals, and the power of programme noise through it.
/// </summary>
internal static class TweeterFacts
{
    private const string LookAtFeed =
        "Take the factory tweeter out: a capacitor on it, or in its plug, means that the wire itself is full range; then follow the "
            + "wire back to see whether parts stay in it.";

    public static readonly FactGroup Declarations = new(Subject.Position);

    public static readonly TruthFact IsTweeter = Declarations.Truth("is_tweeter", "The driver is a tweeter.", Reads.DriverThere.Itself)
        .Saying("not a tweeter", "a tweeter");
    public static readonly TruthFact TweeterFullRange = Declarations.Truth(
        "tweeter_full_range", "Nothing in the way keeps low frequencies from the tweeter.",
        Reads.Network.Itself)
        .Saying("has a high-pass", "bare on a full-range wire");
    public static readonly WordFact NothingBefore = Declarations.Word(
        "nothing_before",
        "Why nothing keeps low frequencies from the tweeter: nothing stands before it, or the filter that the build sets is not there.",
        Reads.Network.Itself, Reads.Amplification.Itself);
    public static readonly NumberFact TweeterCorner = Declarations.Number(
        "tweeter_corner", Dimension.Hertz, "Frequency at which the level at the tweeter's terminals is 3 dB down.",
        Reads.Network.Itself);
    public static readonly NumberFact TweeterSlope = Declarations.Number(
        "tweeter_slope", Dimension.Slope, "Slope of the high-pass below its corner.",
        Reads.Network.Itself);
    public static readonly NumberFact TweeterPeak = Declarations.Number(
        "tweeter_peak", Dimension.Decibel, "Highest level at the tweeter's terminals above its passband.",
        Reads.Network.Itself);
    public static readonly NumberFact TweeterFs = Declarations.Number(
        "tweeter_fs", Dimension.Hertz, "Resonance frequency of the tweeter.",
        Reads.Driver["parameters.fs"]);
    public static readonly NumberFact LowestCrossover = Declarations.Number(
        "lowest_crossover", Dimension.Hertz, "Lowest crossover that the tweeter is rated for.",
        Reads.Driver["lowest_crossover"]);
    public static readonly NumberFact LowestCrossoverSlope = Declarations.Number(
        "lowest_crossover_slope", Dimension.Slope, "Slope at which the lowest crossover is rated.",
        Reads.Driver["lowest_crossover"]);
    public static readonly NumberFact HighPasses = Declarations.Number(
        "high_passes", Dimension.One, "High-passes in series in front of the tweeter.",
        Reads.Network.Itself);
    public static readonly WordFact HighPassNames = Declarations.Word(
        "high_pass_names", "The high-passes in series in front of the tweeter, from the source.",
        Reads.Network.Itself);
    public static readonly NumberFact HighPassRatio = Declarations.Number(
        "high_pass_ratio", Dimension.One,
        "Corner of the highest high-pass in front of the tweeter over that of the next one below it; 1000 where there is one alone.",
        Reads.Network.Itself);
    public static readonly NumberFact TweeterPower = Declarations.Number(
        "tweeter_power", Dimension.Watt, "Power of programme noise (IEC 60268-1) into the tweeter with the output at its continuous power.",
        Reads.Network.Itself, Reads.Amplification.Itself);
    public static readonly NumberFact TweeterPowerClipped = Declarations.Number(
        "tweeter_power_clipped", Dimension.Watt,
        "Power into the tweeter when the programme is turned up 6 dB beyond the output's continuous power and clips.",
        Reads.Network.Itself, Reads.Amplification.Itself);
    public static readonly NumberFact TweeterRatedPower = Declarations.Number(
        "tweeter_rated_power", Dimension.Watt, "Rated noise power of the tweeter.",
        Reads.Driver["power.continuous"], Reads.Network.Itself);
    public static readonly TruthFact FactoryTweeterCapacitor = Declarations.Truth(
        "factory_tweeter_capacitor", "The factory tweeter at this position has a capacitor of its own.",
        Reads.Driver.Itself, Reads.Place["factory_driver.has_own_capacitor"]);

    public static void Compute(PositionContext c, FactSheet sheet)
    {
        var tweeter = c.Driver is { IsTweeter: true };
        sheet.Set(IsTweeter, tweeter);
        if (!tweeter)
            return;
        var driver = c.Driver!;
        sheet.Set(TweeterFs, driver.Parameters?.Fs?.Si);
        if (driver.LowestCrossover is { } lowest)
        {
            sheet.Set(LowestCrossover, FactValue.Of(Dimension.Hertz, lowest.Si) with
            {
                Data = [new Datum($"lowest crossover of {driver.Name}: {lowest}", lowest.At)],
                Unsure = lowest.IsEstimated
                    ? [new Unsure($"lowest crossover of {driver.Name}",
                    "Ask the maker for the tweeter's lowest crossover and the slope it is meant for.", Estimated: true)
                    { Key = DatumKey.In(driver, "lowest_crossover") }] : [],
            });
        }
        sheet.Set(TweeterRatedPower, FactValue.Of(Dimension.Watt, driver.ContinuousPower, $"rated noise power of {driver.Name}",
            new Unsure($"rated noise power of {driver.Name}",
                "Ask the maker for the continuous (noise) power and the high-pass it is stated with; a peak figure does not count.",
                Estimated: false)
            { Key = DatumKey.In(driver, "power.continuous") }));
        var limit = new Unsure($"lowest crossover of {driver.Name}",
            "Ask the maker for the tweeter's lowest crossover and the slope it is meant for.", Estimated: false)
        { Key = DatumKey.In(driver, "lowest_crossover") };
        if (driver.LowestCrossover is null)
            sheet.Set(LowestCrossover, FactValue.Unknown(FactType.Number(Dimension.Hertz), limit));
        sheet.Set(LowestCrossoverSlope, driver.LowestCrossoverSlope is { } known ? FactValue.Of(Dimension.Slope, known)
            : FactValue.Unknown(FactType.Number(Dimension.Slope), limit));
        if (c.Position.HasOwnCapacitor is { } own)
            sheet.Set(FactoryTweeterCapacitor, own);
        if (c.Channel?.Of(c.Position.Id) is ({ } branch, var index))
            Reaching(c, c.Channel, branch, index, sheet);
        else if (c.Channel is { } channel)
            Untold(channel, sheet);
    }

    // Without its impedance nothing before it can be worked out.
    private static void Untold(ChannelContext channel, FactSheet sheet)
    {
        foreach (var fact in new Fact[] { TweeterFullRange, TweeterCorner, TweeterSlope, TweeterPeak, HighPasses, TweeterPower,
            TweeterPowerClipped })
            sheet.Set(fact, FactValue.Unknown(fact.Type, [.. channel.Unsure]));
    }

    private static void Reaching(PositionContext c, ChannelContext channel, Branch branch, int index, FactSheet sheet)
    {
        var feed = new Unsure($"what the factory wire carries to {c.Position.Name}", LookAtFeed, Estimated: false)
        { Key = c.Here("feed.type") };
        var passes = branch.HighPasses.Count;
        // A part that may or may not be in the factory wire can't take a known high-pass away, but it can stand in series with it.
        Unsure[] open = [.. branch.Unrecorded is { } unread ? new[] { unread } : [], .. branch.FeedUnknown ? new[] { feed } : [],
            .. channel.Channel.PerhapsLeft.Where(p => p.FactoryChannel is null).Select(p => ChannelQuestions.Perhaps(p, estimated: false)),
            .. branch.Doubted is { Exists: null } filter ? new[] { filter.Open } : []];
        sheet.Set(TweeterFullRange,
            passes > 0 ? FactValue.Of(false)
                : open.Length > 0 ? FactValue.Unknown(FactType.Truth, open)
                : FactValue.Of(true) with { Data = branch.Doubted?.LacksData ?? [] });
        sheet.Set(NothingBefore, branch.Doubted is { Exists: false } absent
            ? $"the high-pass of {absent.Setting.Text} that the build sets is not there ({absent.Lacks})"
            : "nothing stands in front of the tweeter");
        sheet.Set(HighPasses,
            open.Length > 0 ? FactValue.Unknown(FactType.Number(Dimension.One), open) : FactValue.Of(Dimension.One, passes));
        sheet.Set(HighPassNames, passes == 0 ? "none" : string.Join(", then ", branch.HighPasses.Select(h => SpokenName.Of(h.Name))));
        sheet.Set(HighPassRatio,
            open.Length > 0 ? FactValue.Unknown(FactType.Number(Dimension.One), open) : Ratio(branch.HighPasses, channel));
        if (channel.Sweep is not { } sweep || (open.Length > 0 && passes == 0))
        {
            foreach (var fact in new[] { TweeterCorner, TweeterSlope, TweeterPeak, TweeterPower, TweeterPowerClipped })
                sheet.Set(fact, FactValue.Unknown(fact.Type, open.Length > 0 ? open : [.. channel.Unsure]));
            return;
        }
        IReadOnlyList<Unsure> unsure = [.. channel.Unsure, .. channel.WiresUnsure, .. channel.ResonancesUnsure(c.Placed),
            .. open.Select(o => o with { Estimated = true })];
        if (passes > 0 && HighPassAt(channel, sweep, index) is { CornerHz: { } corner } pass)
        {
            Set(TweeterCorner, corner, p => p.CornerHz);
            if (pass.SlopeDbPerOctave is { } slope)
                Set(TweeterSlope, slope, p => p.SlopeDbPerOctave);
            Set(TweeterPeak, pass.PeakDb, p => p.PeakDb);
        }
        Power(c, channel, sweep, index, unsure, sheet);

        void Set(NumberFact fact, double nominal, Func<HighPass, double?> read) => sheet.Set(fact, FactValue.Of(fact.Dimension,
            channel.WithinResonances(c.Placed, Uncertain.Exact(nominal), other => other.Sweep is { } solved
                && read(HighPassAt(other, solved, index)) is { } number ? Uncertain.Exact(number) : null)) with
        { Unsure = unsure });
    }

    private static HighPass HighPassAt(ChannelContext channel, ChannelSweep sweep, int index)
    {
        var hz = new double[sweep.States.Count];
        var db = sweep.LevelDb(index);
        for (var i = 0; i < hz.Length; i++)
        {
            hz[i] = sweep.States[i].Hz;
            // A low-pass moves no high-pass: it would only shift the passband that the corner refers to.
            db[i] += Decibel.OfAmplitude(channel.HighPassGain(hz[i]));
        }
        return HighPass.Of(hz, db);
    }

    // As far apart as hearing reaches, from 20 Hz to 20 kHz, where nothing stands in series.
    private static FactValue Ratio(IReadOnlyList<HighPassStage> stages, ChannelContext channel)
    {
        if (stages.Count < 2)
            return FactValue.Of(Dimension.One, FrequencyGrid.Highest / FrequencyGrid.Lowest);
        var corners = stages.Select(s => s.Corner.Value).OfType<double>().OrderDescending().ToList();
        return corners.Count == stages.Count ? FactValue.Of(Dimension.One, corners[0] / corners[1])
            : FactValue.Unknown(FactType.Number(Dimension.One), [.. channel.Unsure]);
    }

    private static void Power(PositionContext c, ChannelContext channel, ChannelSweep sweep, int index, IReadOnlyList<Unsure> unsure,
        FactSheet sheet)
    {
        if (PowerFacts.Volts(channel, sweep) is not ({ } volts, var more))
        {
            var unknown = FactValue.Unknown(FactType.Number(Dimension.Watt), PowerFacts.OutputPower(channel, estimated: false));
            sheet.Set(TweeterPower, unknown);
            sheet.Set(TweeterPowerClipped, unknown);
            return;
        }
        sheet.Set(TweeterPower, Power(ProgrammeNoise.Mean));
        sheet.Set(TweeterPowerClipped, Power(ClippedProgramme.Sum));

        FactValue Power(Func<Func<double, double>, double> over) => FactValue.Of(Dimension.Watt, volts * volts
            * channel.WithinResonances(c.Placed, Of(over, channel, sweep), x => x.Sweep is { } solved ? Of(over, x, solved) : null)) with
        {
            Unsure = [.. unsure, .. more],
        };

        Uncertain Of(Func<Func<double, double>, double> over, ChannelContext of, ChannelSweep solved) => Uncertain.Exact(over(hz =>
        {
            var gain = of.ActiveGain(hz);
            return gain * gain * solved.Nearest(hz).Drivers[index].PowerPerVoltSquared;
        }));
    }
}
