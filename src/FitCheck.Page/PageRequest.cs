namespace FitCheck.Page;

/// <summary>What a browser asks, by whatever it came. All that the page knows travels with it.</summary>
public sealed record PageRequest
{
    /// <summary>What is asked for, the last word of the address: empty for the page itself, `choices`, `ways`, `print`.</summary>
    public required string Name { get; init; }

    /// <summary>The fields of a form, in their order; a name may come several times.</summary>
    public IReadOnlyList<KeyValuePair<string, string>> Fields { get; init; } = [];

    /// <summary>Files that were given with it, not larger than a build may be.</summary>
    public IReadOnlyList<PageFile> Files { get; init; } = [];

    /// <summary>True where a script takes a part of the page; false for a whole page.</summary>
    public bool IsPart { get; init; }

    /// <summary>Told in words what goes on; null for nobody. It may be called on any thread.</summary>
    public IProgress<string>? Progress { get; init; }

    /// <summary>The field of this name, the last one where there are several; null where there is none.</summary>
    /// <param name="name">Its name.</param>
    public string? this[string name] => Fields.LastOrDefault(f => f.Key == name) is { Key: not null } field ? field.Value : null;
}

/// <summary>A file that somebody opened on the page.</summary>
/// <param name="Field">The field that it was given in.</param>
/// <param name="FileName">Its name, without a folder; only told, never opened.</param>
/// <param name="Bytes">What is in it.</param>
public sealed record PageFile(string Field, string FileName, byte[] Bytes);
