using FitCheck.Builds;
using FitCheck.Catalog;
using FitCheck.Facts.Contexts;
using FitCheck.Facts.Devices;
using FitCheck.Facts.Entries;
using FitCheck.Facts.Fitting;
using FitCheck.Facts.Outputs;
using FitCheck.Facts.Sound;
using FitCheck.Facts.Values;
using FitCheck.Facts.Wiring;

namespace FitCheck.Facts;

/// <summary>The visible list of everything that rules may be about. A new fact is declared in its class and shows up here.</summary>
internal static class FactRegistry
{
    /// <summary>Every declared fact, by subject and name.</summary>
    public static IReadOnlyList<Fact> Declarations { get; } =
    [
        .. PlaceFacts.Declarations, .. MountingFacts.Declarations, .. HoleFacts.Declarations, .. ScrewFacts.Declarations,
        .. PanelScrewFacts.Declarations, .. GasketFacts.Declarations,
        .. CupFacts.Declarations, .. CupPlaceFacts.Declarations, .. MaterialFacts.Declarations,
        .. TweeterFacts.Declarations, .. PowerFacts.Declarations, .. AimFacts.Declarations,
        .. LevelFacts.Declarations,
        .. BandFacts.Declarations, .. EndFacts.Declarations, .. VentFacts.Declarations,
        .. PassivePartFacts.Declarations,
        .. TravelFacts.Declarations, .. LoudnessFacts.Declarations, .. WiringFacts.Declarations, .. LeadFacts.Declarations,
        .. SideFacts.Declarations, .. LoadFacts.Declarations, .. LoomFacts.Declarations,
        .. FilterFacts.Declarations, .. BuildFacts.Declarations,
        .. DriverFacts.Declarations, .. DriverSizeFacts.Declarations, .. ProfileFacts.Declarations, .. EntryFacts.Declarations,
        .. MagnitudeFacts.Declarations, .. RimFacts.Declarations, .. RoomFacts.Declarations, .. FigureFacts.Declarations,
        .. RatingFacts.Declarations, .. MirrorFacts.Declarations,
        .. ReferenceFacts.Declarations, .. NamedFacts.Declarations,
        .. GainFacts.Declarations, .. SignalFacts.Declarations, .. InputFacts.Declarations,
        .. SupplyFacts.Declarations, .. SupplyFacts.OfBuild, .. RollFacts.OfRun,
        .. WayFacts.OfRun, .. TerminalFacts.OfRun, .. DeviceSupplyFacts.Declarations, .. PassageFacts.OfBuild,
        .. RollFacts.OfWire, .. WireWayFacts.Declarations,
    ];

    // The facts of a position by the class that computes them.
    private static readonly (IReadOnlySet<string> Names,
        Action<PositionContext, IReadOnlyList<PositionContext>, FactSheet> Compute)[] OfPosition =
    [
        Named(PlaceFacts.Declarations, (c, _, s) => PlaceFacts.Compute(c, s)),
        .. MountingFacts.Parts.Select(p => Named(p.Declarations, (c, _, s) => p.Compute(c, s))),
        Named(HoleFacts.Declarations, (c, _, s) => HoleFacts.Compute(c, s)),
        Named(ScrewFacts.Declarations, (c, _, s) => ScrewFacts.Compute(c, s)),
        Named(PanelScrewFacts.Declarations, (c, _, s) => PanelScrewFacts.Compute(c, s)),
        Named(GasketFacts.Declarations, (c, _, s) => GasketFacts.Compute(c, s)),
        Named(CupFacts.Declarations, (c, _, s) => CupFacts.Compute(c, s)),
        Named(MaterialFacts.Declarations, (c, _, s) => MaterialFacts.Compute(c, s)),
        Named(CupPlaceFacts.Declarations, (c, _, s) => CupPlaceFacts.Compute(c, s)),
        Named(TweeterFacts.Declarations, (c, _, s) => TweeterFacts.Compute(c, s)),
        Named(PowerFacts.Declarations, (c, _, s) => PowerFacts.Compute(c, s)),
        Named(WiringFacts.Declarations, (c, _, s) => WiringFacts.Compute(c, s)),
        Named(LeadFacts.Declarations, (c, _, s) => LeadFacts.Compute(c, s)),
        Named(SideFacts.Declarations, (c, _, s) => SideFacts.Compute(c, s)),
        Named(RollFacts.OfWire, (c, _, s) => RollFacts.Compute(c, s)),
        Named(WireWayFacts.Declarations, (c, _, s) => WireWayFacts.Compute(c, s)),
        Named(AimFacts.Declarations, (c, _, s) => AimFacts.Compute(c, s)),
        Named(LevelFacts.Declarations, LevelFacts.Compute),
        Named(BandFacts.Declarations, BandFacts.Compute),
        Named(EndFacts.Declarations, EndFacts.Compute),
        Named(VentFacts.Declarations, (c, _, s) => VentFacts.Compute(c, s)),
        Named(TravelFacts.Declarations, (c, _, s) => TravelFacts.Compute(c, s)),
    ];

    private static readonly IReadOnlySet<string> LoadNames = FactSheet.Names(LoadFacts.Declarations), LoomNames =
        FactSheet.Names(LoomFacts.Declarations), FilterNames =
        FactSheet.Names(FilterFacts.Declarations), GainNames = FactSheet.Names(GainFacts.Declarations),
        PassiveNames = FactSheet.Names(PassivePartFacts.Declarations);

    /// <summary>
    /// All facts of a build: a table for each position, each output, each device, each driver used, and the build itself.
    /// </summary>
    /// <param name="build">The build.</param>
    /// <param name="list">Its list of parts.</param>
    /// <param name="practice">What is supposed of what nobody recorded.</param>
    /// <param name="solved">Loads that are known from builds like it.</param>
    internal static (IReadOnlyList<FactTable> Tables, IReadOnlyList<PositionContext> Positions, IReadOnlyList<ChannelContext> Channels,
        DeviceFacts Devices) Of(Build build, IReadOnlyList<ListLine> list, Practice practice, SolvedLoads? solved = null)
    {
        var channels = Channels(build, practice, solved);
        var positions = Positions(build, channels, practice);
        var tables = new List<FactTable>();
        foreach (var position in positions)
            tables.Add(TableOf(position, positions));
        tables.AddRange(channels.Select(TableOf));
        var devices = new DeviceFacts(build, channels, practice);
        tables.Add(BuildFacts.Compute(build, list, tables, devices));
        tables.AddRange(devices.Tables());
        tables.AddRange(build.Placed.Select(p => p.Driver).OfType<Chosen<Driver>>().DistinctBy(d => d.Part.Id)
            .OrderBy(d => d.Part.Id, StringComparer.Ordinal).Select(d => DriverFacts.Compute(d.Part)));
        return (tables, positions, channels, devices);
    }

    /// <summary>
    /// The facts of one position, output, device or driver of a build; null when it has none of that name, or for another subject.
    /// </summary>
    internal static FactTable? Of(Build build, Subject subject, string key, Practice practice, SolvedLoads? solved = null)
    {
        if (subject == Subject.Driver)
            return build.Placed.Select(p => p.Driver?.Part).FirstOrDefault(d => d?.Id == key) is { } driver
                ? DriverFacts.Compute(driver) : null;
        if (subject is not (Subject.Position or Subject.Channel or Subject.Device))
            return null;
        var channels = Channels(build, practice, solved);
        if (subject == Subject.Channel)
            return channels.Find(c => c.Channel.Id == key) is { } channel ? TableOf(channel) : null;
        if (subject == Subject.Device)
            return new DeviceFacts(build, channels, practice).Tables().FirstOrDefault(t => t.Key == key);
        var positions = Positions(build, channels, practice);
        return positions.Find(p => p.Position.Id == key) is { } position ? TableOf(position, positions) : null;
    }

    private static List<ChannelContext> Channels(Build build, Practice practice, SolvedLoads? solved)
    {
        solved ??= new SolvedLoads();
        return [.. build.Channels.Select(c => ChannelModel.Solve(build, c, practice, solved))];
    }

    private static List<PositionContext> Positions(Build build, List<ChannelContext> channels, Practice practice) =>
        [.. build.Placed.Select(p => new PositionContext(build, p, channels.Find(c => c.Channel.Feeds.Contains(p)), practice))];

    /// <summary>The facts of one entry of the catalog by itself, of the subjects that are asked for.</summary>
    internal static IEnumerable<FactTable> Of(Entry entry, Practice practice, Func<Subject, bool> isAsked)
    {
        FactTable[] driver = entry is Driver d && isAsked(Subject.Driver) ? [DriverFacts.Compute(d)] : [];
        FactTable[] any = isAsked(Subject.Entry)
            ? [EntryFacts.Of(entry, practice), .. MagnitudeFacts.Each(entry), .. RimFacts.Each(entry), .. RoomFacts.Each(entry)] : [];
        var ratings = isAsked(Subject.Rating) ? RatingFacts.Of(entry) : [];
        var mirrors = entry is Vehicle vehicle && isAsked(Subject.Mirror) ? MirrorFacts.Of(vehicle) : [];
        return driver.Concat(any).Concat(ratings).Concat(mirrors);
    }

    /// <summary>The facts of one position on its own.</summary>
    internal static FactTable Of(PositionContext position) => TableOf(position, [position]);

    private static (IReadOnlySet<string> Names, Action<PositionContext, IReadOnlyList<PositionContext>, FactSheet> Compute) Named(
        IReadOnlyList<Fact> declarations, Action<PositionContext, IReadOnlyList<PositionContext>, FactSheet> compute) =>
            (FactSheet.Names(declarations), compute);

    private static FactTable TableOf(PositionContext c, IReadOnlyList<PositionContext> all)
    {
        var sheet = new FactSheet();
        for (var i = 0; i < OfPosition.Length; i++)
        {
            var compute = OfPosition[i].Compute;
            sheet.Later(OfPosition[i].Names, s => compute(c, all, s));
        }
        var choices = new Dictionary<string, Choice>(StringComparer.Ordinal) { ["vehicle"] = new(c.Build.Vehicle.Id, c.Build.VehicleAt) };
        Add("driver", c.Placed.Driver?.Part, c.Placed.Driver?.At);
        Add("adapter", c.Placed.Adapter?.Part, c.Placed.Adapter?.At);
        Add("cup", c.Placed.Cup?.Part, c.Placed.Cup?.At);
        Add("harness", c.Placed.Harness?.Part, c.Placed.Harness?.At);
        Add("module", c.Placed.Module?.Part, c.Placed.Module?.At);
        Add("cable", c.Placed.NewWire?.Part, c.Placed.NewWire?.At);
        Add("crossover", c.Channel?.Channel.Crossover?.Part, c.Channel?.Channel.Crossover?.At);
        Add("output", c.Channel?.Channel.Device.Part, c.Channel?.Channel.At);
        return new FactTable(Subject.Position, c.Position.Id, c.Position.Name, sheet.Values)
        {
            At = c.Placed.At,
            Choices = choices,
            Lacking = f => RecordedEntries.Of(c.Build, c.Placed).Add(c.Build.Vehicle, c.Channel?.Channel.Device.Part).Lacking(f),
        };

        void Add(string word, Part? part, Foundation.Problems.Location? at)
        {
            if (part is not null && at is { } place)
                choices[word] = new Choice(part.Id, place);
        }
    }

    private static FactTable TableOf(ChannelContext c)
    {
        var sheet = new FactSheet();
        sheet.Later(LoadNames, s => LoadFacts.Compute(c, s));
        sheet.Later(LoomNames, s => LoomFacts.Compute(c, s));
        sheet.Later(FilterNames, s => FilterFacts.Compute(c, s));
        sheet.Later(GainNames, s => GainFacts.Compute(c, s));
        sheet.Later(PassiveNames, s => PassivePartFacts.Compute(c, s));
        var choices = new Dictionary<string, Choice>(StringComparer.Ordinal) { ["output"] = new(c.Channel.Device.Part.Id, c.Channel.At) };
        if (c.Channel.Crossover is { } crossover)
            choices["crossover"] = new Choice(crossover.Part.Id, crossover.At);
        if (c.Channel.Feeds.FirstOrDefault(p => p.Driver is not null)?.Driver is { } driver)
            choices["driver"] = new Choice(driver.Part.Id, driver.At);
        return new FactTable(Subject.Channel, c.Channel.Id, $"Output {c.Channel.Id} of {c.Output.Name}", sheet.Values)
        {
            At = c.Channel.At,
            Choices = choices,
            Lacking = f => c.Channel.Feeds.Aggregate(
                new RecordedEntries(c.Build).Add(c.Channel.Device.Part, c.Channel.Crossover?.Part), (all, p) => all.Add(p)).Lacking(f),
        };
    }
}
