using FitCheck.Builds;
using FitCheck.Builds.Readable;
using FitCheck.Catalog;
using FitCheck.Facts.Values;
using FitCheck.Yaml;

namespace FitCheck.Facts.Contexts;

/// <summary>
/// The entries at which a subject of a build looks, and which keys nobody wrote of those that a fact reads. Nothing is parsed again before
/// somebody asks.
/// </summary>
internal sealed class RecordedEntries(Build build)
{
    // Of a source of which a fact reads more, most keys are rightly not there.
    private const int MostKeys = 12;

    private readonly List<(Entry Entry, string? Position)> _entries = [];

    public static RecordedEntries Of(Build build, FittedPosition placed) => new RecordedEntries(build).Add(placed);

    public RecordedEntries Add(FittedPosition placed)
    {
        _entries.Add((build.Vehicle, placed.Position.Id));
        return Add([placed.Driver?.Part, placed.Adapter?.Part, placed.Cup?.Part, placed.Harness?.Part, placed.Module?.Part,
            placed.NewWire?.Part, .. placed.Sundries.Select(s => s.Part)]);
    }

    public RecordedEntries Add(params IEnumerable<Entry?> entries)
    {
        foreach (var entry in entries)
        {
            if (entry is not null && !_entries.Contains((entry, null)))
                _entries.Add((entry, null));
        }
        return this;
    }

    /// <summary>What is not written of all that the fact reads, in the order in which it declares it.</summary>
    public IReadOnlyList<UnwrittenKey> Lacking(Fact fact)
    {
        var lacking = new List<UnwrittenKey>();
        foreach (var key in fact.Inputs.Where(i => i.Keys.Count <= MostKeys).SelectMany(i => i.Keys).Distinct(StringComparer.Ordinal))
        {
            var dot = key.IndexOf('.', StringComparison.Ordinal);
            if (dot < 0)
                continue;
            var (kind, path) = (key[..dot], key[(dot + 1)..]);
            foreach (var (entry, position) in _entries)
            {
                if ((position is null ? entry.Kind : "position") == kind && build.Written?.Invoke(entry.Id) is { } written
                    && !IsWritten(written, position, path))
                    lacking.Add(Told(path, entry, position));
            }
        }
        return lacking;
    }

    private UnwrittenKey Told(string path, Entry entry, string? position)
    {
        var key = position is null ? DatumKey.In(entry, path)!.Value : new DatumKey(position, DatumKey.Position, path) { Entry = entry };
        return new(path, position is null ? entry.Name : build.Vehicle.Find(position)?.Name ?? position, key.Where!) { Reading = key };
    }

    private static bool IsWritten(YamlMap root, string? position, string path)
    {
        if (position is null)
            return Has(root, path.Split('.'));
        // What a mirrored position does not write itself stands at the other side.
        var own = PositionOf(root, position);
        return Has(own, path.Split('.'))
            || (own?["mirror_of"] is YamlScalar { Text: var other } && Has(PositionOf(root, other), path.Split('.')));
    }

    private static YamlMap? PositionOf(YamlMap vehicle, string id) => (vehicle["positions"] as YamlList)?.Items.OfType<YamlMap>()
        .FirstOrDefault(p => p["id"] is YamlScalar own && own.Text == id);

    // Of a list every item has to have it; `none` says all that could be said below it.
    private static bool Has(YamlNode? node, ReadOnlySpan<string> path)
    {
        if (node is null || path.IsEmpty || node is YamlScalar)
            return node is not null;
        if (node is YamlMap map)
            return Has(map[path[0]], path[1..]);
        foreach (var item in ((YamlList)node).Items)
        {
            if (!Has(item, path))
                return false;
        }
        return true;
    }
}
