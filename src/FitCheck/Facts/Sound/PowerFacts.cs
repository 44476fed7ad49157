using FitCheck.Builds.Readable;
using FitCheck.Facts.Contexts;
using FitCheck.Facts.Values;
using FitCheck.Physics.Electrical.Loads;
using FitCheck.Physics.Quantities;

namespace FitCheck.Facts.Sound;

/// <summary>Continuous power available at a driver against its rated noise power.</summary>
internal static class PowerFacts
{
    public static readonly FactGroup Declarations = new(Subject.Position);

    public static readonly NumberFact PowerAvailable = Declarations.Number(
        "power_available", Dimension.Watt, "Continuous power that the output can deliver into this driver.",
        Reads.Network.Itself, Reads.Amplification.Itself, Reads.Box.Itself);
    public static readonly NumberFact RatedPower = Declarations.Number(
        "rated_power", Dimension.Watt, "Rated noise power of the driver.",
        Reads.Driver["power.continuous"]);
    public static readonly NumberFact Headroom = Declarations.Number(
        "headroom", Dimension.One, "Continuous power available over rated noise power.",
        Reads.Network.Itself, Reads.Amplification.Itself, Reads.Box.Itself);
    public static readonly NumberFact PowerLimit = Declarations.Number(
        "power_limit", Dimension.Watt, "Power to which the build limits this output.",
        Reads.Feed.Itself, Reads.Limit.Itself);
    public static readonly TruthFact HasPowerLimit = Declarations.Truth(
        "has_power_limit", "The build sets a power limit for this output.",
        Reads.Feed.Itself, Reads.Limit.Itself)
        .Saying("no power limit", "power limit set");
    public static readonly TruthFact OnlyPeakPower = Declarations.Truth(
        "only_peak_power", "The driver's data sheet gives a peak power and no continuous one.",
        Reads.Driver["power.continuous", "power.peak"]);
    public static readonly TruthFact IsFed = Declarations.Truth(
        "is_fed", "An output feeds this driver.",
        Reads.Feed.Itself, Reads.Driver.Itself, Reads.Place["factory_channel"])
        .Saying("no output feeds it");
    public static readonly WordFact OutputName = Declarations.Word(
        "output_name", "Name of the source unit or amplifier that feeds the driver.",
        Reads.Feed.Itself, Reads.Output["amplifier", "source-unit"], Reads.Place["factory_channel"]);
    public static readonly NumberFact FactoryImpedance = Declarations.Number(
        "factory_impedance", Dimension.Ohm, "Impedance of the factory driver at this position.",
        Reads.Driver.Itself, Reads.Inline.Itself, Reads.Wire.Itself, Reads.Feed.Itself, Reads.Place["factory_driver.impedance"]);
    public static readonly TruthFact HadFactoryDriver = Declarations.Truth(
        "had_factory_driver", "The maker fitted a driver at this position.",
        Reads.Driver.Itself, Reads.Place["factory_driver"])
        .Saying("no factory driver");
    public static readonly NumberFact DriverImpedance = Declarations.Number(
        "driver_impedance", Dimension.Ohm, "Rated impedance of the new driver.",
        Reads.Driver["impedance"]);
    public static readonly NumberFact ImpedanceLoss = Declarations.Number(
        "impedance_loss", Dimension.Decibel,
        "Level lost because the new driver takes less current than the factory one from the same voltage.",
        Reads.Driver["impedance"], Reads.Inline.Itself, Reads.Wire.Itself, Reads.Feed.Itself, Reads.Place["factory_driver.impedance"]);
    public static readonly TruthFact BehindCrossover = Declarations.Truth(
        "behind_crossover", "A passive crossover feeds the driver.",
        Reads.Network.Itself, Reads.DriverThere.Itself);
    public static readonly NumberFact CrossoverLoad = Declarations.Number(
        "crossover_load", Dimension.Ohm, "Rated impedance of the drivers that the crossover was made for.",
        Reads.Network["crossover.nominal_load"], Reads.Network.Itself);
    public static readonly NumberFact CrossoverLoadRatio = Declarations.Number(
        "crossover_load_ratio", Dimension.One,
        "Rated impedance of the driver over that for which the crossover was made, or the other way round: 1 or more.",
        Reads.Network["crossover.nominal_load"], Reads.Network.Itself, Reads.Driver["impedance"]);
    public static readonly NumberFact WireLoss = Declarations.Number(
        "wire_loss", Dimension.Decibel, "Level lost in the speaker wire.",
        Reads.Driver["impedance"], Reads.Inline.Itself, Reads.Wire.Itself, Reads.Feed.Itself,
        Reads.Place["factory_channel", "wire.gauge", "wire.length"]);

    public static void Compute(PositionContext c, FactSheet sheet)
    {
        if (c.Driver is not { } driver)
            return;
        sheet.Set(IsFed, c.IsFed, c.FedBy);
        sheet.Set(OnlyPeakPower, driver.ContinuousPower is not null ? false : driver.PeakPower is not null ? true : null,
            RatedPowerOf(driver, estimated: false));
        sheet.Set(HasPowerLimit, c.Channel?.Channel.Limit is not null);
        sheet.Set(PowerLimit, c.Channel?.Channel.Limit?.Si);
        sheet.Set(OutputName, c.Channel?.Output.Name);
        Impedances(c, driver, sheet);
        sheet.Set(BehindCrossover, c.Channel?.Channel.Crossover is not null);
        if (c.Channel?.Channel.Crossover?.Part is { } crossover)
            ForLoad(crossover, driver, sheet);
        if (driver.IsTweeter)
            return;
        var rated = FactValue.Of(Dimension.Watt, driver.ContinuousPower, $"rated noise power of {driver.Name}",
            RatedPowerOf(driver, estimated: false));
        sheet.Set(RatedPower, rated);
        var available = Available(c, driver);
        sheet.Set(PowerAvailable, available);
        sheet.Set(Headroom, Ratio(available, rated));
    }

    /// <summary>Continuous voltage of the output into its load, within the build's limit, and what is unsure about it.</summary>
    public static (Uncertain Volts, IReadOnlyList<Unsure> Unsure)? Volts(ChannelContext channel, ChannelSweep sweep)
    {
        // |Z| / 0.8 is the rated impedance to which the load corresponds (IEC 60268-5); ratings are stated into such loads.
        var load = (channel.LowestOfDrivers ?? sweep.MinOhm) / 0.8;
        if (channel.Output.VoltsInto(load) is not ({ } volts, var estimated, var beyond))
            return channel.Channel.Limit is { } only
                ? (Uncertain.Exact(Math.Sqrt(only.Si * load)),
                channel.Output.HasConverter is null ? [OutputPower(channel, estimated: true)] : [])
                : null;
        if (channel.Channel.Limit is { } limit)
            volts = Uncertain.Min(volts, Uncertain.Exact(Math.Sqrt(limit.Si * load)));
        return (volts, volts.High <= volts.Low ? []
            : [.. estimated ? [OutputPower(channel, estimated: true)] : beyond ? [PowerInto(channel, load)] : Array.Empty<Unsure>(),
                .. channel.Output.LeftOut]);
    }

    /// <summary>
    /// Continuous power that the output can send into all that hangs on it, stated as ratings are: into the rated impedance to which the
    /// load corresponds; null where the load or the output's voltage is not known.
    /// </summary>
    public static (Uncertain Watts, IReadOnlyList<Unsure> Unsure)? IntoLoad(ChannelContext channel) =>
        channel.Sweep is { } sweep && Volts(channel, sweep) is ({ } volts, var unsure)
            ? (volts * volts * Uncertain.Exact(0.8 / sweep.MinOhm), unsure) : null;

    public static Unsure OutputPower(ChannelContext channel, bool estimated) => new(
        $"continuous power of {channel.Output.Name}",
        "Look for a power stated as continuous, RMS or sine at 14.4 V and at most 1 % distortion; a peak or maximum figure does not "
            + "count.", estimated)
    { Key = DatumKey.In(channel.Channel.Device.Part, "ratings") };

    private static Unsure PowerInto(ChannelContext channel, double load) =>
        new($"continuous power of {channel.Output.Name} into {QuantityText.Format(load, Dimension.Ohm)}",
            "Its data sheet states none for such a load: ask the maker, or measure the voltage there with a test tone at the limit.",
            Estimated: true)
        { IsBounded = true };

    private static FactValue Available(PositionContext c, Catalog.Driver driver)
    {
        var unknown = FactType.Number(Dimension.Watt);
        if (c.Channel is not { } channel)
            return FactValue.Unknown(unknown,
                c.IsFed is null ? c.FedBy
                    : new Unsure(c.AtPosition("which output feeds the driver"), "Name the output in the build's `channels`.",
                        Estimated: false));
        if (channel.Sweep is not { } sweep || channel.Of(c.Position.Id) is not (_, var index))
            return FactValue.Unknown(unknown, [.. channel.Unsure]);
        if (Volts(channel, sweep) is not ({ } volts, var more))
            return FactValue.Unknown(unknown, OutputPower(channel, estimated: false));
        if (driver.Impedance is not { } impedance)
            return FactValue.Unknown(unknown,
                new Unsure($"rated impedance of {driver.Name}", "Read it from the driver's label.", Estimated: false)
                { Key = DatumKey.In(driver, "impedance") });
        // At the frequency where most of the output's voltage reaches it, into its rated impedance: the way rated power is stated. Where a
        // crossover resonates with the voice coil the voltage rises above the output's, but there the coil's impedance is high too: that is
        // no power.
        // That a narrow electronic band takes a little off at its middle too is turned up again.
        var power = volts * volts * channel.WithinResonances(c.Placed, Share(channel)!.Value, Share);
        if (channel.WiresUnsure.Count > 0)
        {
            var least = power.Low * channel.Practice.FactoryWireShare;
            power = new Uncertain(power.Value, least, power.High, (power.High - least) / 2);
        }
        return FactValue.Of(Dimension.Watt, power) with
        {
            Unsure = [.. more, .. channel.Unwritten, .. channel.WiresUnsure.Select(u => u with { IsBounded = true }),
                .. channel.ResonancesUnsure(c.Placed)]
        };

        Uncertain? Share(ChannelContext of) => of.Sweep is { } solved && MostGain(of, solved, index) is var gain
            ? Uncertain.Exact(gain * gain / impedance.Si) : null;
    }

    private static double MostGain(ChannelContext channel, ChannelSweep sweep, int index)
    {
        double gain = 0, active = 0;
        foreach (var state in sweep.States)
        {
            active = Math.Max(active, channel.ActiveGain(state.Hz));
            gain = Math.Max(gain, Decibel.ToAmplitude(state.Drivers[index].Db) * channel.ActiveGain(state.Hz));
        }
        return active > 0 ? Math.Min(1, gain / active) : 0;
    }

    private static FactValue Ratio(FactValue available, FactValue rated)
    {
        IReadOnlyList<Unsure> unsure = [.. available.Unsure, .. rated.Unsure];
        return available.Number is { } a && rated.Number is { } r && Uncertain.Divide(a, r) is { } ratio
            ? FactValue.Of(Dimension.One, ratio) with { Unsure = unsure, Data = rated.Data }
            : FactValue.Unknown(FactType.Number(Dimension.One), [.. unsure]);
    }

    private static void Impedances(PositionContext c, Catalog.Driver driver, FactSheet sheet)
    {
        sheet.Set(HadFactoryDriver, c.Position.HasFactoryDriver, ChannelQuestions.FactoryDriver(c.Position, estimated: false));
        sheet.Set(FactoryImpedance, c.Position.FactoryImpedance?.Si);
        sheet.Set(DriverImpedance, driver.Impedance?.Si);
        var rated = new Unsure($"rated impedance of {driver.Name}", "Read it from the driver's label.", Estimated: false)
        { Key = DatumKey.In(driver, "impedance") };
        var (old, now) = (c.Position.FactoryImpedance, driver.Impedance);
        sheet.Set(ImpedanceLoss, old is not null && now is not null
            ? FactValue.Of(Dimension.Decibel, Decibel.OfPower(now.Si / old.Si)) with
            {
                Unsure = [.. old.IsEstimated ? [ChannelQuestions.FactoryImpedance(c.Position)] : Array.Empty<Unsure>(),
                    .. now.IsEstimated ? [rated with { Estimated = true }] : Array.Empty<Unsure>()],
            }
            : FactValue.Unknown(FactType.Number(Dimension.Decibel),
                [.. old is null ? [ChannelQuestions.FactoryDriver(c.Position, estimated: false)] : Array.Empty<Unsure>(),
                    .. now is null ? [rated] : Array.Empty<Unsure>()]));
        if (c.Channel is null)
            return;
        Unsure[] missing = [.. now is null ? [rated] : Array.Empty<Unsure>(), .. ChannelQuestions.Wire(c.Placed)];
        sheet.Set(WireLoss, missing.Length == 0
            ? FactValue.Of(Dimension.Decibel, Physics.Electrical.Cables.WireLoss.Db(now!.Si, ChannelModel.WireOf(c.Placed)))
            : FactValue.Unknown(FactType.Number(Dimension.Decibel), missing));
    }

    private static void ForLoad(Catalog.Crossover crossover, Catalog.Driver driver, FactSheet sheet)
    {
        var made = new Unsure($"load that {crossover.Name} was made for",
            "Ask its maker, or look which set it belongs to; then write it into its entry as `nominal_load`.", Estimated: false)
        { Key = DatumKey.In(crossover, "nominal_load") };
        var own = new Unsure($"rated impedance of {driver.Name}", "Read it from the driver's label.", Estimated: false)
        { Key = DatumKey.In(driver, "impedance") };
        sheet.Set(CrossoverLoad, crossover.NominalLoad is { } load ? FactValue.Of(Dimension.Ohm, load.Si)
            : FactValue.Unknown(FactType.Number(Dimension.Ohm), made));
        if (crossover.NominalLoad is not { Si: > 0 } nominal || driver.Impedance is not { Si: > 0 } rated)
        {
            sheet.Set(CrossoverLoadRatio, FactValue.Unknown(FactType.Number(Dimension.One),
                [.. crossover.NominalLoad is null ? new[] { made } : [], .. driver.Impedance is null ? new[] { own } : []]));
            return;
        }
        sheet.Set(CrossoverLoadRatio, FactValue.Of(Dimension.One, Math.Max(rated.Si / nominal.Si, nominal.Si / rated.Si)) with
        {
            Unsure = [.. nominal.IsEstimated ? new[] { made with { Estimated = true } } : [],
                .. rated.IsEstimated ? new[] { own with { Estimated = true } } : []],
            Data = [new Datum($"load of {crossover.Name}: {nominal}", nominal.At)],
        });
    }

    public static Unsure RatedPowerOf(Catalog.Driver driver, bool estimated) =>
        new($"rated noise power of {driver.Name}",
            "Ask the maker for the continuous (noise) power; a peak figure does not count.", estimated)
        { Key = DatumKey.In(driver, "power.continuous") };
}
