using System.Runtime.InteropServices;

namespace FitCheck.Yaml;

/// <summary>
/// The entries of a mapping while it is read. Nearly all have a few keys, which are looked through quickest; one of a hundred thousand is
/// looked up.
/// </summary>
internal sealed class WrittenKeys
{
    private const int Few = 32;

    private Dictionary<string, YamlEntry>? _byKey;

    public List<YamlEntry> Entries { get; } = [];

    /// <summary>The entry that has this key already; null when none has.</summary>
    public YamlEntry? Find(string key)
    {
        if (_byKey is not null)
            return _byKey.GetValueOrDefault(key);
        foreach (var entry in CollectionsMarshal.AsSpan(Entries))
        {
            if (entry.Key == key)
                return entry;
        }
        return null;
    }

    /// <summary>Adds one whose key nobody has.</summary>
    public void Add(YamlEntry entry)
    {
        Entries.Add(entry);
        if (_byKey is not null)
            _byKey.Add(entry.Key, entry);
        else if (Entries.Count > Few)
            _byKey = Entries.ToDictionary(e => e.Key, StringComparer.Ordinal);
    }
}
