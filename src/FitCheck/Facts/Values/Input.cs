namespace FitCheck.Facts.Values;

/// <summary>
/// What a fact looks at, seen from its subject: the driver at its position, the output that feeds it, every device of the build.
/// </summary>
/// <param name="Name">In words, as it is told.</param>
/// <param name="RestsOn">What a chart takes it for.</param>
/// <param name="Kind">The kind of entry that is looked at, `build` for the build itself; null where there are several.</param>
/// <param name="Keys">The keys that whoever looks at it reads, each after its kind (`driver.parameters`); empty where every fact names its
/// own.</param>
internal sealed record Source(string Name, RestsOn RestsOn, string? Kind, params IReadOnlyList<string> Keys)
{
    /// <summary>Every key of whatever it is.</summary>
    public const string Everything = "*";

    /// <summary>
    /// These keys of it: of an entry from its top (`dimensions.depth`), of a position from there (`mounting.depth`). A key stands for all
    /// under it.
    /// </summary>
    public Input this[params string[] keys] => new(this, Kind is null ? keys : Array.ConvertAll(keys, key => $"{Kind}.{key}"));

    /// <summary>Which it is, and the keys that everyone reads of it.</summary>
    public Input Itself => new(this, Keys);
}

/// <summary>Something that a fact reads.</summary>
/// <param name="Source">Where it stands.</param>
/// <param name="Keys">Keys, each after its kind of entry.</param>
internal sealed record Input(Source Source, IReadOnlyList<string> Keys)
{
    /// <summary>True when it says that this key of this kind of entry is read, with or under what it names.</summary>
    public bool Covers(string kind, string key) =>
        Keys.Any(k => k == Source.Everything || IsUnder($"{kind}.{key}", k) || IsUnder(k, $"{kind}.{key}"));

    private static bool IsUnder(string key, string above) => key == above || key.StartsWith(above + ".", StringComparison.Ordinal);
}
