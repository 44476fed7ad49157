namespace FitCheck.Benchmarks.Synthetic;

/// <summary>A catalog of invented parts, the same for the same numbers, which lint finds nothing wrong with.</summary>
/// <param name="Parts">How many parts.</param>
/// <param name="Vehicles">How many vehicles.</param>
internal sealed record SyntheticCatalog(int Parts, int Vehicles)
{
    private int Radios => Part(3);
    private int Drivers => Parts - Others().Sum(k => k.Count);

    /// <summary>Writes it; with one entry a file, the file is named after it, else files hold lists of entries.</summary>
    /// <param name="folder">Must not exist, or be empty.</param>
    /// <param name="entriesInFile">1, more, or <see cref="int.MaxValue"/> for one file a kind.</param>
    /// <returns>How many files were written, and their bytes together.</returns>
    public (int Files, long Bytes) Write(string folder, int entriesInFile)
    {
        var files = 0;
        var bytes = 0L;
        foreach (var (kind, place, count, entry) in All())
        {
            var inside = Directory.CreateDirectory(Path.Combine(folder, place)).FullName;
            for (var first = 0; first < count; first += Math.Min(entriesInFile, count))
            {
                var entries = Enumerable.Range(first, Math.Min(entriesInFile, count - first)).Select(entry).ToList();
                var name = entriesInFile == 1 ? entries[0].Id : entriesInFile >= count ? place : $"{place}-{first / entriesInFile:0000}";
                var path = Path.Combine(inside, name + ".yaml");
                File.WriteAllText(path, entriesInFile == 1 ? entries[0].Alone(kind) : string.Concat(entries.Select(e => e.Item())));
                files++;
                bytes += new FileInfo(path).Length;
            }
        }
        return (files, bytes);
    }

    private IEnumerable<Group> All() =>
        Others().Append(new Group("driver", "drivers", Drivers, SyntheticDrivers.Of))
            .Append(new Group("vehicle", "vehicles", Vehicles, i => SyntheticElectronics.Vehicle(i + 1, Radios)));

    private IEnumerable<Group> Others() =>
    [
        new("adapter", "adapters", Part(14), i => SyntheticParts.Adapter(i, Vehicles)),
        new("amplifier", "amplifiers", Part(7), SyntheticElectronics.Amplifier),
        new("line-converter", "converters", Part(2), SyntheticElectronics.Converter),
        new("crossover", "crossovers", Part(6), SyntheticParts.Crossover),
        new("cup", "cups", Part(4), i => SyntheticParts.Cup(i, Vehicles)),
        new("harness", "harnesses", Part(6), SyntheticParts.Harness),
        new("component-set", "sets", Part(5), i => SyntheticParts.Set(i, Drivers, Part(6), Part(5))),
        new("source-unit", "sources", Radios, SyntheticElectronics.Radio),
        new("sundry", "sundries", Part(5), SyntheticParts.Sundry),
        new("wiring", "wiring", Part(4), SyntheticParts.Cable),
    ];

    private int Part(int percent) => Math.Max(1, Parts * percent / 100);

    private sealed record Group(string Kind, string Folder, int Count, Func<int, EntryText> Entry);
}
