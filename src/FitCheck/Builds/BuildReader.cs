using FitCheck.Builds.StandIns;
using FitCheck.Catalog;
using FitCheck.Foundation;
using FitCheck.Foundation.Problems;
using FitCheck.Physics.Quantities;
using FitCheck.Yaml;

namespace FitCheck.Builds;

/// <summary>Reads a build and follows its references into the catalog. All that is wrong is told at once.</summary>
internal sealed class BuildReader
{
    private PartsCatalog _catalog;
    private readonly ProblemList _problems;
    private readonly DateOnly _today;

    private BuildReader(PartsCatalog catalog, ProblemList problems, DateOnly today) =>
        (_catalog, _problems, _today) = (catalog, problems, today);

    /// <summary>
    /// The build, or null when it names no vehicle of the catalog; problems say what is wrong, also when a build is returned.
    /// </summary>
    /// <param name="root">The document.</param>
    /// <param name="catalog">What it may name.</param>
    /// <param name="problems">Where problems go.</param>
    /// <param name="today">The day by which the end of a waiver is judged; null for today, UTC.</param>
    public static Build? Read(YamlNode root, PartsCatalog catalog, ProblemList problems, DateOnly? today = null) =>
        root is YamlMap map ? new BuildReader(catalog, problems, today ?? Calendar.Today).Read(map) : null;

    private Build? Read(YamlMap map)
    {
        // What a person writes into a build they claim to know: as good as measured.
        var f = new Fields(map, Provenance.Measured, _problems);
        if (_catalog.Resolve<Vehicle>(f.Text("vehicle"), "vehicle", _problems) is not { } vehicle)
            return null;
        var readings = new ReadingReader(_catalog, _problems).Read(f, vehicle);
        var standIn = StandIn.Meant(f, vehicle) is { } meant && _catalog.Written(vehicle.Id) is YamlMap written
            ? StandIn.Of(written, meant) : null;
        if (standIn is not null)
            vehicle = readings.Put(vehicle, standIn) with { StandIn = vehicle.Name };
        if (!readings.IsEmpty)
        {
            vehicle = standIn is null ? readings.Put(vehicle) : vehicle;
            _catalog = readings.Put();
            f = new Fields(readings.Put(map), Provenance.Measured, _problems);
        }
        var placed = new PlacedReader(_catalog, vehicle, readings, _problems).Read(f);
        var devices = new DeviceReader(_catalog, vehicle, readings, _problems).Read(f);
        var channels = new ChannelReader(_catalog, vehicle, placed, devices, _problems).Read(f);
        var extras = Lines(f, "extras");
        foreach (var kept in f.Texts("keep"))
            CheckKept(kept, _catalog, vehicle, devices, channels, _problems);
        var (holding, ended) = new WaiverReader(_today, _problems).Read(f);
        // Each of its positions is looked for in it.
        var ofVehicle = new Lazy<YamlMap?>(() => standIn ?? _catalog.Written(vehicle.Id) as YamlMap);
        return new Build
        {
            File = map.At.File,
            Name = f.Text("name")?.Value ?? map.At.File,
            At = f.Text("name")?.At ?? map.At,
            Notes = f.Text("notes")?.Value,
            Vehicle = vehicle,
            VehicleAt = f.Text("vehicle")!.At,
            Units = f.Word("units") switch { "inch" => LengthUnits.Inch, "mm" => LengthUnits.Millimetre, _ => null },
            Budget = f.Money("budget"),
            Accepts = f.Texts("accepts").Select(t => t.Value).ToHashSet(StringComparer.Ordinal),
            Keep = f.Texts("keep"),
            Owned = [.. f.Texts("owned").Where(IsPart)],
            Placed = placed,
            Devices = devices,
            Channels = channels,
            AreChannelsGiven = map["channels"] is not null,
            Treated = [.. f.Each("treated")
                .Select(t => new Treatment([.. PositionIds(t, vehicle)], [.. t.Texts("with").Select(x => x.Value)]))],
            Quote = f.Map["quote"] is null ? null : Lines(f, "quote"),
            QuoteAt = f.Map["quote"]?.At,
            Extras = extras,
            Written = id => id == vehicle.Id ? ofVehicle.Value : _catalog.Written(id) as YamlMap,
            FactoryRadio = vehicle.FactorySource is { } radio ? _catalog.Find(radio.Value) as SourceUnit : null,
            Supply = new SupplyReader(_catalog, _problems).Read(f, devices, extras),
            Waivers = holding,
            EndedWaivers = ended,
            Expected = new ExpectationReader(_catalog, vehicle, devices, channels, _problems).Read(f),
            Today = _today,
        };
    }

    /// <summary>Tells a name to be kept that is no part, position, device or output.</summary>
    internal static void CheckKept(Located<string> kept, PartsCatalog catalog, Vehicle vehicle, IReadOnlyList<Device> devices,
        IReadOnlyList<Channel> channels, ProblemList problems)
    {
        string[] names = [.. vehicle.Positions.Select(p => p.Id), .. devices.Select(d => d.Id), .. channels.Select(c => c.Id)];
        if (!names.Contains(kept.Value) && catalog.KindOf(kept.Value) is null)
            problems.Error(kept.At,
                $"nothing is called `{kept.Value}`: no part of the catalog, no position of {vehicle.Id}, no device and no output of "
                    + $"this build{Nearest.Hint(kept.Value, names.Concat(catalog.Ids))}");
    }

    private IEnumerable<string> PositionIds(Fields f, Vehicle vehicle)
    {
        foreach (var id in f.Texts("at"))
        {
            if (vehicle.Find(id.Value) is null)
                _problems.Error(id.At, NoPosition(id.Value, vehicle), ProblemKind.UnknownName);
            yield return id.Value;
        }
    }

    private bool IsPart(Located<string> id)
    {
        if (_catalog.Find(id.Value) is Part)
            return true;
        _problems.Error(id.At, $"no part `{id.Value}` in the catalog{Nearest.Hint(id.Value, _catalog.Ids)}", ProblemKind.UnknownName);
        return false;
    }

    private List<QuoteLine> Lines(Fields f, string key)
    {
        var lines = new List<QuoteLine>();
        foreach (var line in f.Each(key))
        {
            if (line.Text("part") is not { } id)
                continue;
            if (IsPart(id) && _catalog.Find(id.Value) is Part part)
                lines.Add(new QuoteLine(part, line.Count("packs") ?? 1, id.At) { Price = line.Money("price")?.Value });
        }
        return lines;
    }

    internal static string NoPosition(string id, Vehicle vehicle) =>
        $"no position `{id}` in {vehicle.Id}; it has {string.Join(", ", vehicle.Positions.Select(p => p.Id))}"
            + $"{Nearest.Hint(id, vehicle.Positions.Select(p => p.Id))}";
}
