using FitCheck.Catalog;
using FitCheck.Foundation.Problems;
using FitCheck.Physics.Quantities;

namespace FitCheck.Builds;

/// <summary>
/// Reads which output feeds which positions. Without `channels`, each position hangs on its factory channel of the only source.
/// </summary>
internal sealed class ChannelReader(
    PartsCatalog catalog, Vehicle vehicle, IReadOnlyList<FittedPosition> placed, IReadOnlyList<Device> devices, ProblemList problems)
{
    public IReadOnlyList<Channel> Read(Fields build) => build.Map["channels"] is null ? FromFactory() : FromBuild(build);

    private List<Channel> FromFactory()
    {
        if (devices.FirstOrDefault(d => d.Part is SourceUnit) is not { } source)
            return [];
        var unplaced = placed.Where(p => p.Driver is not null && p.Position is { FactoryChannel: null, HasFactoryDriver: not false })
            .Select(p => p.Position).ToList();
        return [.. placed.Where(p => p.Driver is not null && p.Position.FactoryChannel is not null)
            .GroupBy(p => p.Position.FactoryChannel!.Value, StringComparer.Ordinal)
            .Select(group => new Channel
            {
                Id = group.Key,
                Device = source,
                Outputs = [group.Key],
                At = group.First().At,
                Crossover = CrossoverOfSet([.. group], isSet: false),
                Feeds = [.. group],
                Leftover = Leftover([.. group], true),
                PerhapsLeft = [.. Leftover([.. group], null), .. unplaced],
            })];
    }

    private List<Channel> FromBuild(Fields build)
    {
        var channels = new List<Channel>();
        var fed = new Dictionary<string, Location>(StringComparer.Ordinal);
        var used = new Dictionary<(string, string), Location>();
        foreach (var f in build.Each("channels"))
        {
            if (f.Text("id") is not { } id || f.Text("output") is not { } output)
                continue;
            if (channels.Find(c => c.Id == id.Value) is { } first)
                problems.Error(id.At, $"the channel `{id.Value}` appears twice; the first is in line {first.At.Line}");
            var feeds = Feeds(f, fed);
            if (Output(output) is not ({ } device, var outputs) || feeds.Count == 0)
                continue;
            // What hangs on one output is one load.
            foreach (var one in outputs.Where(o => !used.TryAdd((device.Id, o), output.At)))
                problems.Error(output.At,
                    $"the output `{device.Id}.{one}` is used already, in line {used[(device.Id, one)].Line}; what shares an output "
                        + $"stands in one channel's `feeds`");
            channels.Add(new Channel
            {
                Id = id.Value,
                Device = device,
                Outputs = outputs,
                At = output.At,
                Crossover = ReadCrossover(f, feeds),
                NamesCrossover = f.Text("crossover") is not null,
                Setting = Setting(f),
                HighPass = FilterSetting.Read(f, "high_pass"),
                LowPass = FilterSetting.Read(f, "low_pass"),
                InLine = InLine(f),
                Feeds = feeds,
                Leftover = Leftover(feeds, true),
                PerhapsLeft = Leftover(feeds, null),
                Limit = f.Figure("limit", Dimension.Watt),
                InSeries = f.Word("joined") == "series",
                RadioConnected = f.Text("radio_end") is { } end ? end.Value == "connected" : null,
            });
        }
        return channels;

        string? Setting(Fields f)
        {
            if (f.Text("setting") is not { } setting)
                return null;
            var crossover = ReadCrossover(f, []) ?? CrossoverOfSet(FeedsOf(f), isSet: true);
            var names = (crossover?.Part.Settings ?? []).Select(s => s.Name).ToList();
            if (names.Count > 0 && !names.Contains(setting.Value))
                problems.Error(setting.At, $"the crossover has no setting `{setting.Value}`; it has {string.Join(", ", names)}",
                    ProblemKind.UnknownName);
            return setting.Value;
        }
    }

    private List<FittedPosition> FeedsOf(Fields f) =>
        [.. f.Texts("feeds").Select(t => placed.FirstOrDefault(p => p.Position.Id == t.Value)).OfType<FittedPosition>()];

    private List<FittedPosition> Feeds(Fields f, Dictionary<string, Location> fed)
    {
        foreach (var id in f.Texts("feeds"))
        {
            if (placed.All(p => p.Position.Id != id.Value))
                problems.Error(id.At,
                    vehicle.Find(id.Value) is null ? BuildReader.NoPosition(id.Value, vehicle)
                        : $"nothing is fitted at `{id.Value}`; `fit` must say what goes there", ProblemKind.UnknownName);
            else if (!fed.TryAdd(id.Value, id.At))
                problems.Error(id.At, $"`{id.Value}` is fed already, in line {fed[id.Value].Line}{OfCoils(id.Value)}");
        }
        return FeedsOf(f);
    }

    private string OfCoils(string position) =>
        placed.FirstOrDefault(p => p.Position.Id == position)?.Driver?.Part.Coils == 2
            ? "; both voice coils are connected to one output, in series or in parallel as `coils` says, not to one each" : "";

    private (Device, IReadOnlyList<string>)? Output(Located<string> output)
    {
        var dot = output.Value.IndexOf('.', StringComparison.Ordinal);
        if (dot < 0)
            return null;
        var (name, outputs) = (output.Value[..dot], output.Value[(dot + 1)..].Split('+'));
        if (devices.FirstOrDefault(d => d.Id == name) is not { } device)
        {
            problems.Error(output.At, $"no device `{name}` in this build{Nearest.Hint(name, devices.Select(d => d.Id))}",
                ProblemKind.UnknownName);
            return null;
        }
        string[] known = device.Part switch
        {
            SourceUnit source => [.. source.Channels.Select(c => c.Value)],
            Amplifier amplifier => Numbered(amplifier.Channels),
            _ => [],
        };
        foreach (var one in outputs.Where(o => !known.Contains(o, StringComparer.Ordinal)))
        {
            problems.Error(output.At, known.Length == 0
                ? $"{device.Part.Name} has no speaker outputs"
                : $"{device.Part.Name} has no output `{one}`; it has {string.Join(", ", known)}{Nearest.Hint(one, known)}",
                ProblemKind.UnknownName);
            return null;
        }
        return (device, outputs);
    }

    private static string[] Numbered(int count)
    {
        var names = new string[count];
        for (var i = 0; i < count; i++)
            names[i] = (i + 1).ToString(System.Globalization.CultureInfo.InvariantCulture);
        return names;
    }

    private List<Chosen<Sundry>> InLine(Fields f)
    {
        var parts = new List<Chosen<Sundry>>();
        foreach (var id in f.Texts("in_line"))
        {
            if (catalog.Resolve<Sundry>(id, "sundry", problems) is { } sundry)
                parts.Add(new Chosen<Sundry>(sundry, id.At));
        }
        return parts;
    }

    private Chosen<Crossover>? ReadCrossover(Fields f, List<FittedPosition> feeds)
    {
        if (f.Text("crossover") is not { } id)
            return CrossoverOfSet(feeds, f.Text("setting") is not null);
        return id.Value != "none" && catalog.Resolve<Crossover>(id, "crossover", problems) is { } crossover
            ? new Chosen<Crossover>(crossover, id.At) : null;
    }

    // A set's own crossover stands in the wire when woofer and tweeter of the set hang on one output, and wherever its jumper is set.
    private Chosen<Crossover>? CrossoverOfSet(IReadOnlyList<FittedPosition> feeds, bool isSet)
    {
        var set = feeds.Select(p => p.Set).OfType<Chosen<ComponentSet>>().FirstOrDefault(s => isSet
            || (feeds.Any(p => p.Set?.Part.Id == s.Part.Id && p.Position.Role == "tweeter")
                && feeds.Any(p => p.Set?.Part.Id == s.Part.Id && p.Position.Role != "tweeter")));
        return set?.Part.Crossover is { } id && catalog.Resolve<Crossover>(id, "crossover", problems) is { } crossover
            ? new Chosen<Crossover>(crossover, set.At) : null;
    }

    // A factory driver that nobody unplugs stays on the wire, in parallel with the new one.
    private List<Position> Leftover(IReadOnlyList<FittedPosition> feeds, bool? fitted)
    {
        var wires = feeds.Where(p => p.NewWire is null && p.Position.FactoryChannel is not null)
            .Select(p => p.Position.FactoryChannel!.Value).ToHashSet(StringComparer.Ordinal);
        return [.. vehicle.Positions.Where(
            v => (v.FactoryChannel is { } own ? wires.Contains(own.Value) && v.HasFactoryDriver == fitted
                : fitted is null && wires.Count > 0 && v.HasFactoryDriver != false)
            && placed.All(p => p.Position.Id != v.Id || (p.Driver is null && !p.Disconnected)))];
    }
}
