using FitCheck.Catalog;
using FitCheck.Foundation.Problems;
using FitCheck.Physics.Quantities;
using FitCheck.Yaml;

namespace FitCheck.Builds;

/// <summary>
/// Reads the chain of source units, line converters and amplifiers. Without any, the vehicle's own radio is the only device.
/// </summary>
internal sealed class DeviceReader(PartsCatalog catalog, Vehicle vehicle, Readings readings, ProblemList problems)
{
    /// <summary>In `remote`: a feed of the vehicle that is live with the ignition.</summary>
    public const string Ignition = "ignition";

    /// <summary>The name under which the vehicle's own radio goes.</summary>
    public const string Factory = "factory";

    public IReadOnlyList<Device> Read(Fields build)
    {
        var devices = new List<Device>();
        foreach (var f in build.Each("devices"))
        {
            if (f.Text("id") is not { } id || f.Text("part") is not { } part)
                continue;
            if (devices.Find(d => d.Id == id.Value) is { } first)
                problems.Error(id.At, $"the device `{id.Value}` appears twice; the first is in line {first.At.Line}");
            else if (Part(part, id.Value, build) is { } found)
                devices.Add(new Device(id.Value, readings.OfDevice(id.Value, found), f.Text("from")?.Value, part.Value == Factory, part.At)
                {
                    Remote = f.Text("remote"),
                    Gain = f.Figure("gain", Dimension.Volt),
                    Takes = f.Texts("takes"),
                });
        }
        if (devices.Count == 0 && OwnRadio(build) is { } radio)
            devices.Add(new Device(Factory, radio, From: null, IsFactory: true, build.Text("vehicle")!.At));
        CheckLinks(build, devices);
        return devices;
    }

    // Of a car that the catalog does not have its radio is not known either; that it has one is what a build without devices says.
    private SourceUnit? OwnRadio(Fields build) => vehicle is { FactorySource: null, StandIn: not null } ? Unrecorded(Factory, build)
        : catalog.Resolve<SourceUnit>(vehicle.FactorySource, "source-unit", problems);

    private Part? Part(Located<string> id, string device, Fields build)
    {
        if (id.Value == Factory)
        {
            if (vehicle.FactorySource is null)
                return Unrecorded(device, build);
            return catalog.Resolve<SourceUnit>(vehicle.FactorySource, "source-unit", problems);
        }
        if (catalog.Find(id.Value) is Part part and (SourceUnit or LineConverter or Amplifier))
            return part;
        var candidates = catalog.IdsOf("source-unit").Concat(catalog.IdsOf("line-converter")).Concat(catalog.IdsOf("amplifier"));
        problems.Error(id.At, catalog.KindOf(id.Value) is { } other
            ? $"`{id.Value}` is of the kind {other}, expected a source-unit, line-converter or amplifier"
            : $"no source-unit, line-converter or amplifier `{id.Value}` in the catalog{Nearest.Hint(id.Value, candidates)}",
            ProblemKind.UnknownName);
        return null;
    }

    // Which radio the vehicle came with nobody wrote into its entry: that is no fault of the build. There is one, of which nothing is known
    // but the outputs that vehicle and build name, and what depends on it is asked for.
    private SourceUnit Unrecorded(string device, Fields build)
    {
        var outputs = vehicle.Positions.Select(p => p.FactoryChannel?.Value).OfType<string>()
            .Concat(build.Each("channels").Select(c => c.Word("output")).Where(o => o.StartsWith(device + ".", StringComparison.Ordinal))
                .SelectMany(o => o[(device.Length + 1)..].Split('+')))
            .Concat(build.Each("devices").SelectMany(d => d.Texts("takes")).Select(t => t.Value)).Distinct(StringComparer.Ordinal);
        return new SourceUnit(new Fields(new YamlMap(vehicle.At,
        [
            Key("id", Text($"{vehicle.Id}-radio")), Key("kind", Text("source-unit")), Key("factory", Text("true")),
            Key("name", Text($"the factory radio of {vehicle.Name} (`factory_source` is not recorded{InEntry})")),
            Key("channels", new YamlList(vehicle.At, [.. outputs.Select(Text)])),
        ]), Provenance.Estimated, problems))
        { UnrecordedOf = vehicle };

        YamlEntry Key(string key, YamlNode value) => new(key, vehicle.At, value);

        YamlNode Text(string text) => new YamlScalar(vehicle.At, text, Quoted: false);
    }

    private string InEntry => vehicle.StandIn is null ? $" in {vehicle.At.File}" : "";

    private void CheckLinks(Fields build, List<Device> devices)
    {
        foreach (var f in build.Each("devices"))
        {
            if (f.Text("remote") is { } remote && remote.Value != Ignition && !devices.Exists(d => d.Id == remote.Value))
                problems.Error(remote.At,
                    $"no device `{remote.Value}` in this build, nor is it the word `{Ignition}`"
                        + $"{Nearest.Hint(remote.Value, devices.Select(d => d.Id).Append(Ignition))}", ProblemKind.UnknownName);
            CheckSignals(f, devices);
            if (f.Text("from") is not { } from)
                continue;
            if (!devices.Exists(d => d.Id == from.Value))
                problems.Error(from.At, $"no device `{from.Value}` in this build{Nearest.Hint(from.Value, devices.Select(d => d.Id))}",
                    ProblemKind.UnknownName);
            else if (Chain(f.Word("id"), devices) is { } circle)
                problems.Error(from.At, $"the signal runs in a circle: {circle}");
        }
    }

    // What it takes must be an output of the source at the beginning of its chain.
    private void CheckSignals(Fields f, List<Device> devices)
    {
        var device = devices.Find(d => d.Id == f.Word("id"));
        for (var left = devices.Count; left > 0 && device?.From is { } from; left--)
            device = devices.Find(d => d.Id == from);
        if (device?.Part is not SourceUnit source)
            return;
        var known = source.Channels.Select(c => c.Value).ToList();
        foreach (var signal in f.Texts("takes").Where(t => !known.Contains(t.Value)))
            problems.Error(signal.At,
                $"{source.Name} has no output `{signal.Value}`; it has {string.Join(", ", known)}{Nearest.Hint(signal.Value, known)}",
                ProblemKind.UnknownName);
    }

    private static string? Chain(string start, List<Device> devices)
    {
        var path = new List<string> { start };
        for (var id = devices.Find(d => d.Id == start)?.From; id is not null; id = devices.Find(d => d.Id == id)?.From)
        {
            if (path.Contains(id))
                return path[0] == id ? string.Join(" from ", path.Append(id)) : null;
            path.Add(id);
        }
        return null;
    }
}
