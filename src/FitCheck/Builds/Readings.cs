using FitCheck.Catalog;
using FitCheck.Foundation.Problems;
using FitCheck.Physics.Quantities;
using FitCheck.Yaml;

namespace FitCheck.Builds;

/// <summary>
/// What a build has measured, put where the catalog's figure would be: into the vehicle, into parts, and into what the build itself tells
/// of a device.
/// </summary>
internal sealed class Readings(PartsCatalog catalog, ProblemList problems)
{
    /// <summary>The word for the cable that amplifiers share, which has no name of its own.</summary>
    public const string Supply = "supply";

    private readonly List<(string Position, string? PartThere, IReadOnlyList<string> Path, YamlScalar Value)> _atPositions = [];
    private readonly Dictionary<string, List<(IReadOnlyList<string> Path, YamlScalar Value)>> _ofEntries = new(StringComparer.Ordinal);
    private readonly Dictionary<string, List<(IReadOnlyList<string> Path, YamlScalar Value)>> _ofDevices = new(StringComparer.Ordinal);
    private readonly Dictionary<string, List<(IReadOnlyList<string> Path, YamlScalar Value)>> _ofDeviceParts = new(StringComparer.Ordinal);
    private readonly Dictionary<string, YamlMap> _ofLines = new(StringComparer.Ordinal);

    /// <summary>True when nothing was measured.</summary>
    public bool IsEmpty { get; private set; } = true;

    /// <summary>Adds one at a position, or with a word of a part that is there (`driver`).</summary>
    public void AddAt(Reading reading, string? partThere, IReadOnlyList<string> path)
    {
        _atPositions.Add((reading.At.Value, partThere, path, reading.Value));
        IsEmpty = false;
    }

    /// <summary>Adds one of what a line of `fit` chooses for a position.</summary>
    public void AddOfLine(Reading reading, IReadOnlyList<string> path)
    {
        _ofLines[reading.At.Value] = Reading.Put(_ofLines.GetValueOrDefault(reading.At.Value) ?? new YamlMap(reading.Value.At, []),
            [(path, reading.Value)]);
        IsEmpty = false;
    }

    /// <summary>Adds one of an entry, wherever it is used.</summary>
    public void AddOfEntry(Reading reading, IReadOnlyList<string> path) => Add(_ofEntries, reading, path);

    /// <summary>Adds one of what the build tells of a device, or of the shared cable.</summary>
    public void AddOfDevice(Reading reading, IReadOnlyList<string> path) => Add(_ofDevices, reading, path);

    /// <summary>Adds one of the part that a device is.</summary>
    public void AddOfDevicePart(Reading reading, IReadOnlyList<string> path) => Add(_ofDeviceParts, reading, path);

    /// <summary>The build's own text with what was read of its devices.</summary>
    public YamlMap Put(YamlMap build) => build with
    {
        Entries = [.. build.Entries.Select(e => e with
        {
            Value = e switch
            {
                { Key: Supply, Value: YamlMap supply } when _ofDevices.TryGetValue(Supply, out var shared) => Reading.Put(supply, shared),
                { Key: "devices", Value: YamlList devices } => devices with { Items = [.. devices.Items.Select(OfDevice)] },
                _ => e.Value,
            },
        })],
    };

    /// <summary>The vehicle as it was read.</summary>
    /// <param name="vehicle">That of the catalog.</param>
    /// <param name="standIn">What is taken of its entry where another car is meant; null for all of it.</param>
    public Vehicle Put(Vehicle vehicle, YamlMap? standIn = null)
    {
        var there = _atPositions.Where(r => r.PartThere is null).ToLookup(r => r.Position, r => (r.Path, r.Value));
        if ((there.Count == 0 && !_ofEntries.ContainsKey(vehicle.Id) && standIn is null)
            || (standIn ?? catalog.Written(vehicle.Id)) is not YamlMap written)
            return vehicle;
        var own = _ofEntries.TryGetValue(vehicle.Id, out var ofVehicle) ? Reading.Put(written, ofVehicle) : written;
        return EntryReader.Read("vehicle", own, problems, (position, map) => Reading.Put(map, there[position])) as Vehicle ?? vehicle;
    }

    /// <summary>The catalog with the parts that were read.</summary>
    public PartsCatalog Put() => catalog.With(_ofEntries.Where(e => catalog.KindOf(e.Key) != "vehicle")
        .Select(e => (e.Key, Entry: Again(e.Key, []))).Where(e => e.Entry is not null)
        .ToDictionary(e => e.Key, e => e.Entry!, StringComparer.Ordinal));

    /// <summary>A part as it was read at one position.</summary>
    public Chosen<T>? At<T>(string position, string word, Chosen<T>? chosen) where T : Part
    {
        var read = _atPositions.Where(r => r.PartThere == word && r.Position == position).Select(r => (r.Path, r.Value)).ToList();
        return chosen is not null && read.Count > 0 && Again(chosen.Part.Id, read) is T part ? chosen with { Part = part } : chosen;
    }

    /// <summary>What was read of what a line of `fit` chooses for a position; null when nothing was.</summary>
    public Fields? OfLineAt(string position) =>
        _ofLines.TryGetValue(position, out var map) ? new Fields(map, Provenance.Measured, problems) : null;

    /// <summary>A device's part as it was read.</summary>
    public Part OfDevice(string device, Part part) =>
        _ofDeviceParts.TryGetValue(device, out var read) && Again(part.Id, read) is Part again ? again : part;

    // With all that is read of the entry wherever it is.
    private Entry? Again(string id, List<(IReadOnlyList<string> Path, YamlScalar Value)> read)
    {
        if (catalog.Written(id) is not YamlMap map)
            return null;
        var everywhere = _ofEntries.TryGetValue(id, out var own) ? Reading.Put(map, own) : map;
        return EntryReader.Read(catalog.KindOf(id)!, Reading.Put(everywhere, read), problems);
    }

    private YamlNode OfDevice(YamlNode device) => device is YamlMap map && map["id"] is YamlScalar id
        && _ofDevices.TryGetValue(id.Text, out var read) ? Reading.Put(map, read) : device;

    private void Add(Dictionary<string, List<(IReadOnlyList<string> Path, YamlScalar Value)>> to, Reading reading,
        IReadOnlyList<string> path)
    {
        if (!to.TryGetValue(reading.At.Value, out var those))
            to[reading.At.Value] = those = [];
        those.Add((path, reading.Value));
        IsEmpty = false;
    }
}
