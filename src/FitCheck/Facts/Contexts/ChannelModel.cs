using FitCheck.Builds;
using FitCheck.Builds.Readable;
using FitCheck.Catalog;
using FitCheck.Facts.Values;
using FitCheck.Physics.Acoustics;
using FitCheck.Physics.Electrical.Loads;
using FitCheck.Physics.Electrical.Networks;
using FitCheck.Physics.Quantities;

namespace FitCheck.Facts.Contexts;

/// <summary>Turns a channel of the build into a network: wire, crossover, parts in the line, drivers.</summary>
internal static class ChannelModel
{
    // Terminals at which nothing hangs, ohm.
    private const double Open = 1e6;

    /// <summary>
    /// A channel solved; with a share, where nobody measured a driver's DC resistance it is this much of its rated impedance; with a
    /// corner, where no sheet gives a driver's resonance and Q they are those.
    /// </summary>
    public static ChannelContext Solve(Build build, Channel channel, Practice practice, SolvedLoads solved, double? share = null,
        ResonanceCorner? corner = null)
    {
        var highPass = FilterCheck.Of(build, channel, high: true);
        var made = Made(channel, highPass, new Guesses(practice) { Share = share, Corner = corner }, solved);
        return new ChannelContext(build, channel, made.Load, made.Branches, [.. made.Unsure, .. made.Unwritten],
            OutputRating.Of(channel, practice), practice)
        {
            Corner = corner,
            Solved = solved,
            HighPassSet = highPass,
            LowPassSet = FilterCheck.Of(build, channel, high: false),
            Unwritten = made.Unwritten,
            WiresUnsure = [.. channel.Feeds.Where(p => p.Driver is not null)
                .Concat(channel.Leftover.Select(l => new FittedPosition(l, l.At))).SelectMany(ChannelQuestions.Wire)
                .Select(u => u with { Estimated = true }).Distinct()],
            PassiveParts = made.PassiveParts,
            ResistancesUnsure = made.Resistances,
            InductancesUnsure = [.. channel.Feeds.Where(p => p.Driver is { } d && InductanceIsMissing(d.Part))
                .Select(p => ChannelQuestions.Inductance(p.Driver!.Part)).Distinct()],
            FeedsUnsure = [.. channel.Feeds.Where(p => p is { Driver: not null, NewWire: null }).Select(p => p.Position)
                .Concat(channel.Leftover).Where(IsUntraced).Select(ChannelQuestions.Feed)],
        };
    }

    /// <summary>The network of a channel with the crossover's jumper elsewhere; null when a driver's impedance is not known.</summary>
    public static ChannelNetwork? WithSetting(Channel channel, CrossoverSetting setting, Practice practice) =>
        Made(channel with { Setting = setting.Name }, null, new Guesses(practice), new SolvedLoads()).Load?.Assemble();

    /// <summary>
    /// The load with this inductance, in henry, wherever no sheet gives one, and this capacitance, in farad, in every factory wire that
    /// nobody traced; null leaves either as it is.
    /// </summary>
    public static ChannelLoad? LoadWith(Channel channel, Practice practice, double? inductance, double? capacitance) =>
        Made(channel, null, new Guesses(practice) { Inductance = inductance, Capacitance = capacitance }, new SolvedLoads()).Load;

    // Whether a capacitor stands in a tweeter's wire decides what it is as a load.
    private static bool IsUntraced(Position position) => position is { Role: "tweeter", FeedType.Value: "unknown" };

    // Of a tweeter it is next to nothing, and so is what it changes.
    private static bool InductanceIsMissing(Driver driver) => driver is { IsTweeter: false, Parameters: null or { Le: null } };

    private static MadeChannel Made(Channel channel, FilterCheck? highPass, Guesses guesses, SolvedLoads solved)
    {
        var made = new MadeChannel();
        made.PassiveParts.AddRange(Parts(channel.InLine));
        IReadOnlyList<LadderElement> shared = [.. made.PassiveParts.SelectMany(p => p.Rungs)];
        foreach (var placed in channel.Feeds)
        {
            if (placed.Driver is null || DriverOf(placed, guesses, made) is not { } model)
                continue;
            var branch = BranchOf(channel, placed, model, highPass, guesses.Capacitance, made.PassiveParts, solved);
            made.Branches.Add(branch);
            if (branch.Unrecorded is { } unread)
                made.Unwritten.Add(unread with { Estimated = true });
        }
        foreach (var position in channel.Leftover)
        {
            if (FactoryBranch(position, guesses, made) is { } branch)
                made.Branches.Add(branch);
        }
        if (channel.Crossover?.Part is { } crossover && (!crossover.IsLowPassRecorded || !crossover.IsHighPassRecorded)
            && made.Branches.TrueForAll(b => b.Unrecorded is null))
            made.Unwritten.Add(ChannelQuestions.Network(crossover));
        made.Unwritten.AddRange(channel.PerhapsLeft.Select(p => ChannelQuestions.Perhaps(p, estimated: true)));
        var drivers = channel.Feeds.Count(p => p.Driver is not null);
        if (made.Branches.Count > 0 && made.Branches.Count == drivers + channel.Leftover.Count)
            made.Load = new ChannelLoad([.. made.Branches.Select(b => b.Physics), .. OpenSections(channel)])
            {
                SharedElements = shared,
                InSeries = channel.InSeries ? drivers : 0,
            };
        return made;
    }

    // A section of a crossover at which nothing hangs is no load only where no part lies across it: coil and capacitor in series with each
    // other are next to a short where they resonate.
    private static IEnumerable<ChannelBranch> OpenSections(Channel channel)
    {
        if (channel.Crossover?.Part is not { } crossover)
            return [];
        var drivers = channel.Feeds.Where(p => p.Driver is not null).ToList();
        return new[] { (Ladder: crossover.HighPass, IsUsed: drivers.Exists(IsTweeter)),
            (Ladder: crossover.LowPass, IsUsed: drivers.Exists(p => !IsTweeter(p))) }
            .Where(s => !s.IsUsed && s.Ladder.Any(e => e.Shunt))
            .Select(s => new ChannelBranch(new DriverModel(Open), Elements(s.Ladder)));
    }

    private static bool IsTweeter(FittedPosition placed) => placed.Position.Role == "tweeter" || placed.Driver!.Part.IsTweeter;

    private static DriverModel? DriverOf(FittedPosition placed, Guesses guesses, MadeChannel made)
    {
        var driver = placed.Driver!.Part;
        if (driver is { Coils: 2 } && placed.CoilsInSeries is null)
        {
            made.Unsure.Add(ChannelQuestions.WiringOfCoils(driver));
            return null;
        }
        if (driver is { Coils: null, Type: "subwoofer" })
            made.Unsure.Add(ChannelQuestions.Coils(driver));
        var p = driver.Parameters;
        var re = p?.Re;
        if (re is null || re.IsEstimated)
        {
            var unmeasured = ChannelQuestions.Resistance(driver.Name, placed.Position.Name, re is not null || driver.Impedance is not null,
                DatumKey.In(driver, "parameters.re"));
            made.Unsure.Add(unmeasured);
            made.Resistances.Add(unmeasured);
        }
        // IEC 60268-5: |Z| is nowhere below 80 % of the rated impedance; without Re that is all there is to go by.
        var guess = re is { IsEstimated: false } ? null : guesses.Share * driver.Impedance?.Si;
        if ((guess ?? re?.Si ?? 0.8 * driver.Impedance?.Si) is not { } resistance)
            return null;
        var inductance = !InductanceIsMissing(driver) ? p?.Le?.Si
            : guesses.Inductance ?? (guesses.Practice.LeastInductance * (driver.Impedance?.Si ?? resistance));
        var model = guesses.Corner is { } corner ? corner.Model(driver, resistance, inductance, guesses.Practice)
            : new DriverModel(resistance, inductance, p?.Fs?.Si, p?.Qms, p?.Qes);
        if (placed.Box is { Si: > 0 } box && p?.Vas is { Si: > 0 } vas)
            model = model.InClosedBox(vas.Si, box.Si);
        // What is rated is a coaxial with its tweeter: where its inductance is not known, the tweeter is within what is assumed of it.
        return driver.BuiltInCapacitor is { } c && !InductanceIsMissing(driver)
            ? model with
            {
                Tweeter = new CoaxialTweeter(c.Si,
            guesses.Practice.CoaxialTweeterShare * (driver.BuiltInImpedance?.Si ?? driver.Impedance?.Si ?? resistance))
            }
            : model;
    }

    private static Branch BranchOf(Channel channel, FittedPosition placed, DriverModel model, FilterCheck? highPass,
        double? capacitance, List<PassivePart> parts, SolvedLoads solved)
    {
        var elements = new List<LadderElement>();
        var passes = new List<HighPassStage>();
        var load = placed.Driver!.Part.Impedance?.Si ?? model.Re;
        var active = highPass is not null && !IsForBass(highPass.Setting, placed.Driver!.Part) ? highPass : null;
        if (active is { Exists: true })
            passes.Add(new HighPassStage($"the electronic high-pass at {active.Setting.Corner}", active.Setting.Corner.Si));
        passes.AddRange(HighPassStage.Capacitors(channel.InLine, load));
        if (channel.Crossover?.Part is { } crossover)
        {
            var tweeter = IsTweeter(placed);
            var ladder = tweeter ? crossover.HighPass : crossover.LowPass;
            elements.AddRange(Elements(ladder));
            if (tweeter && Setting(channel, crossover) is { } setting)
                elements.AddRange(Elements(setting.Network));
            IReadOnlyList<LadderElement> alone = [.. elements];
            if (tweeter && Capacitive(ladder))
                passes.Add(HighPassStage.Of(crossover, model, alone, solved));
        }
        var own = Parts(placed.Sundries);
        parts.AddRange(own);
        elements.AddRange(own.SelectMany(p => p.Rungs));
        passes.AddRange(HighPassStage.Capacitors(placed.Sundries, load));
        var usesFactoryWire = placed.NewWire is null;
        if (usesFactoryWire)
        {
            elements.AddRange(Elements(placed.Position.FeedNetwork));
            if (Capacitive(placed.Position.FeedNetwork))
                passes.Add(HighPassStage.InFactoryWire(placed.Position, load));
            if (capacitance is { } guess && IsUntraced(placed.Position))
                elements.Add(LadderElement.InLine(capacitance: guess));
        }
        if (placed.Driver!.Part.OwnCapacitor is { } fixedOn)
        {
            elements.Add(LadderElement.InLine(capacitance: fixedOn.Si));
            passes.Add(HighPassStage.Of($"the capacitor on {placed.Driver.Part.Name}", fixedOn.Si, load));
        }
        var unknown = usesFactoryWire
            && (IsUntraced(placed.Position) || (placed.Position.Role == "tweeter" && IsFeedUnknown(placed.Position)));
        return new Branch(placed.Position, placed, new ChannelBranch(model, elements, WireOf(placed)), passes,
            unknown)
        {
            Unrecorded = Unread(channel, placed),
            Doubted = active is { Exists: not true } && placed.Driver.Part.IsTweeter ? active : null,
        };
    }

    // A wire that is said to be filtered has parts that somebody has to write down.
    private static bool IsFeedUnknown(Position position) =>
        position.FeedType.Value == "unknown" || (position.FeedType.Value == "filtered" && position.FeedNetwork.Count == 0);

    // What stands before a driver in its crossover, or before a woofer in the factory wire, where nobody wrote it.
    private static Unsure? Unread(Channel channel, FittedPosition placed) => InCrossover(channel, placed)
        ?? (placed is { NewWire: null, Position.Role: not "tweeter" } && IsFeedUnknown(placed.Position)
            ? ChannelQuestions.Carried(placed.Position) : null);

    private static Unsure? InCrossover(Channel channel, FittedPosition placed)
    {
        if (channel.Crossover?.Part is { } crossover)
        {
            var tweeter = IsTweeter(placed);
            return (tweeter ? crossover.IsHighPassRecorded : crossover.IsLowPassRecorded) ? null
                : ChannelQuestions.Section(crossover, tweeter);
        }
        return placed.Set is { Part: { HasCrossover: null } set } && !channel.NamesCrossover ? ChannelQuestions.CrossoverOf(set) : null;
    }

    // A filter an octave or more below the tweeter's resonance keeps deep bass from a woofer; it does not protect the tweeter beside it.
    private static bool IsForBass(FilterSetting filter, Driver driver) =>
        driver.IsTweeter && filter.Corner.Si < (driver.Parameters?.Fs?.Si / 2 ?? 500);

    private static Branch? FactoryBranch(Position position, Guesses guesses, MadeChannel made)
    {
        if ((position.FactoryImpedance?.Si ?? position.FactoryResistance?.Si / 0.8) is not { } rated)
        {
            made.Unsure.Add(ChannelQuestions.FactoryDriver(position, estimated: false));
            return null;
        }
        made.Unsure.AddRange(ChannelQuestions.GuessedFactoryDriver(position));
        // IEC 60268-5: |Z| is nowhere below 80 % of the rated impedance.
        var resistance = position.FactoryResistance?.Si ?? (0.8 * rated);
        double? inductance = position.Role == "tweeter" ? null : guesses.Practice.LeastInductance * rated;
        if (IsFeedUnknown(position) && !IsUntraced(position))
            made.Unwritten.Add(ChannelQuestions.Carried(position));
        var elements = Elements(position.FeedNetwork);
        if (guesses.Capacitance is { } guess && IsUntraced(position))
            elements.Add(LadderElement.InLine(capacitance: guess));
        List<HighPassStage> passes = Capacitive(position.FeedNetwork) ? [HighPassStage.InFactoryWire(position, rated)] : [];
        if (position.OwnCapacitor is { } own)
        {
            elements.Add(LadderElement.InLine(capacitance: own.Si));
            passes.Add(HighPassStage.Of("the factory tweeter's own capacitor", own.Si, rated));
        }
        else if (position is { Role: "tweeter", HasOwnCapacitor: not false })
        {
            made.Unsure.Add(ChannelQuestions.FactoryCapacitor(position));
        }
        return new Branch(position, null,
            new ChannelBranch(new DriverModel(resistance, inductance), elements, WireResistance(position.WireGauge, position.WireLength)),
            passes, false);
    }

    /// <summary>Resistance of both conductors; nothing where gauge or length is not recorded.</summary>
    public static double WireOf(FittedPosition placed) => placed.NewWire is { Part.Gauge: { } gauge } && placed.NewWireLength is { } length
        ? WireGauge.Resistance(2 * length.Si, gauge.Si, placed.NewWire.Part.Resistivity)
        : WireResistance(placed.Position.WireGauge, placed.Position.WireLength);

    private static double WireResistance(Figure? gauge, Figure? length) =>
        gauge is null || length is null ? 0 : WireGauge.Resistance(2 * length.Si, gauge.Si);

    /// <summary>The jumper's position that the build names, else the crossover's default, else the first.</summary>
    public static CrossoverSetting? Setting(Channel channel, Crossover crossover) =>
        crossover.Settings.FirstOrDefault(s => s.Name == (channel.Setting ?? crossover.DefaultSetting))
            ?? (crossover.Settings.Count > 0 ? crossover.Settings[0] : null);

    private static bool Capacitive(IReadOnlyList<LadderPart> ladder) => ladder.Any(e => !e.Shunt && e.Capacitance is not null);

    private static List<LadderElement> Elements(IReadOnlyList<LadderPart> ladder) =>
        [.. ladder.Select(e => new LadderElement(e.Shunt, e.Resistance?.Si, e.Inductance?.Si, e.Capacitance?.Si))];

    private static List<PassivePart> Parts(IEnumerable<Chosen<Sundry>> sundries) =>
        [.. sundries.Select(s => new PassivePart(s.Part, Rungs(s.Part))).Where(p => p.Rungs.Count > 0)];

    private static IReadOnlyList<LadderElement> Rungs(Sundry sundry) => sundry switch
    {
        { Type: "capacitor", Capacitance: { } c } => [LadderElement.InLine(capacitance: c.Si)],
        { Type: "resistor", Resistance: { } r } => [LadderElement.InLine(resistance: r.Si)],
        { Type: "l-pad", SeriesResistance: { } a, ShuntResistance: { } b } =>
            [LadderElement.InLine(resistance: a.Si), LadderElement.Across(resistance: b.Si)],
        _ => [],
    };

    // What takes the place of data that nobody recorded; null leaves each as it usually is.
    private readonly record struct Guesses(Practice Practice)
    {
        public double? Inductance { get; init; }
        public double? Capacitance { get; init; }
        public double? Share { get; init; }
        public ResonanceCorner? Corner { get; init; }
    }

    // A channel while its network is put together.
    private sealed class MadeChannel
    {
        public ChannelLoad? Load { get; set; }
        public List<Branch> Branches { get; } = [];
        public List<PassivePart> PassiveParts { get; } = [];
        public List<Unsure> Unsure { get; } = [];
        public List<Unsure> Resistances { get; } = [];
        public List<Unsure> Unwritten { get; } = [];
    }
}
