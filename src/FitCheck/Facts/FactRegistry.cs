using FitCheck.Builds;
using FitCheck.Catalog;
using FitCheck.Findings;

namespace FitCheck.Facts;

/// <summary>The visible list of everything that rules may be about. A new fact is declared in its class and shows up here.</summary>
public static class FactRegistry
{
    /// <summary>Every declared fact, by subject and name.</summary>
    public static IReadOnlyList<FactDeclaration> Declarations { get; } =
    [
        .. PlaceFacts.Declarations, .. MountingFacts.Declarations, .. HoleFacts.Declarations, .. ScrewFacts.Declarations, .. GasketFacts.Declarations,
        .. CupFacts.Declarations, .. TweeterFacts.Declarations, .. PowerFacts.Declarations, .. AimFacts.Declarations, .. LevelFacts.Declarations,
        .. TravelFacts.Declarations, .. LoudnessFacts.Declarations, .. WiringFacts.Declarations, .. LeadFacts.Declarations, .. LoadFacts.Declarations, .. BuildFacts.Declarations,
        .. DriverFacts.Declarations, .. EntryFacts.Declarations, .. FigureFacts.Declarations, .. RatingFacts.Declarations, .. MirrorFacts.Declarations,
        .. ReferenceFacts.Declarations,
        .. GainFacts.Declarations, .. SignalFacts.Declarations, .. SupplyFacts.Declarations,
    ];

    /// <summary>All facts of a build: a table for each position, each output, each device, each driver used, and the build itself.</summary>
    internal static (IReadOnlyList<FactTable> Tables, IReadOnlyList<PositionContext> Positions, IReadOnlyList<ChannelContext> Channels, DeviceFacts Devices) Of(Build build, IReadOnlyList<ListLine> list)
    {
        var channels = build.Channels.Select(c => ChannelModel.Solve(build, c)).ToList();
        var positions = build.Placed.Select(p => new PositionContext(build, p, channels.Find(c => c.Channel.Feeds.Contains(p)))).ToList();
        var tables = new List<FactTable>();
        foreach (var position in positions)
            tables.Add(TableOf(position, positions));
        tables.AddRange(channels.Select(TableOf));
        var devices = new DeviceFacts(build, channels);
        tables.Add(BuildFacts.Compute(build, list, tables, devices));
        tables.AddRange(devices.Tables());
        tables.AddRange(build.Placed.Select(p => p.Driver).OfType<Chosen<Driver>>().DistinctBy(d => d.Part.Id)
            .OrderBy(d => d.Part.Id, StringComparer.Ordinal).Select(d => DriverFacts.Compute(d.Part)));
        return (tables, positions, channels, devices);
    }

    /// <summary>The facts of one driver of the catalog, for the plausibility rules.</summary>
    public static FactTable Of(Driver driver) => DriverFacts.Compute(driver);

    /// <summary>The facts of one position on its own.</summary>
    internal static FactTable Of(PositionContext position) => TableOf(position, [position]);

    private static FactTable TableOf(PositionContext c, IReadOnlyList<PositionContext> all)
    {
        var sheet = new FactSheet();
        PlaceFacts.Compute(c, sheet);
        MountingFacts.Compute(c, sheet);
        HoleFacts.Compute(c, sheet);
        ScrewFacts.Compute(c, sheet);
        GasketFacts.Compute(c, sheet);
        CupFacts.Compute(c, sheet);
        TweeterFacts.Compute(c, sheet);
        PowerFacts.Compute(c, sheet);
        WiringFacts.Compute(c, sheet);
        LeadFacts.Compute(c, sheet);
        AimFacts.Compute(c, sheet);
        LevelFacts.Compute(c, all, sheet);
        TravelFacts.Compute(c, sheet);
        var choices = new Dictionary<string, Choice>(StringComparer.Ordinal) { ["vehicle"] = new(c.Build.Vehicle.Id, c.Build.VehicleAt) };
        Add("driver", c.Placed.Driver?.Part, c.Placed.Driver?.At);
        Add("adapter", c.Placed.Adapter?.Part, c.Placed.Adapter?.At);
        Add("cup", c.Placed.Cup?.Part, c.Placed.Cup?.At);
        Add("harness", c.Placed.Harness?.Part, c.Placed.Harness?.At);
        Add("module", c.Placed.Module?.Part, c.Placed.Module?.At);
        Add("cable", c.Placed.NewWire?.Part, c.Placed.NewWire?.At);
        Add("crossover", c.Channel?.Channel.Crossover?.Part, c.Channel?.Channel.Crossover?.At);
        Add("output", c.Channel?.Channel.Device.Part, c.Channel?.Channel.At);
        return new FactTable(Subject.Position, c.Position.Id, c.Position.Name, sheet.Values) { At = c.Placed.At, Choices = choices };

        void Add(string word, Part? part, Yaml.Location? at)
        {
            if (part is not null && at is { } place)
                choices[word] = new Choice(part.Id, place);
        }
    }

    private static FactTable TableOf(ChannelContext c)
    {
        var sheet = new FactSheet();
        LoadFacts.Compute(c, sheet);
        GainFacts.Compute(c, sheet);
        var choices = new Dictionary<string, Choice>(StringComparer.Ordinal) { ["output"] = new(c.Channel.Device.Part.Id, c.Channel.At) };
        if (c.Channel.Crossover is { } crossover)
            choices["crossover"] = new Choice(crossover.Part.Id, crossover.At);
        if (c.Channel.Feeds.FirstOrDefault(p => p.Driver is not null)?.Driver is { } driver)
            choices["driver"] = new Choice(driver.Part.Id, driver.At);
        return new FactTable(Subject.Channel, c.Channel.Id, $"Output {c.Channel.Id} of {c.Output.Name}", sheet.Values) { At = c.Channel.At, Choices = choices };
    }
}
