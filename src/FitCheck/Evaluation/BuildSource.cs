namespace FitCheck.Evaluation;

/// <summary>
/// A build, or a seller's list, that is to be read: a file, or a text that is in memory already. Immutable; several threads may use one.
/// </summary>
public sealed class BuildSource
{
    private BuildSource(string name, string? path, string? yaml, byte[]? bytes = null) =>
        (Name, Path, Yaml, Held) = (name, path, yaml, bytes);

    /// <summary>What places and reports call it: the path with `/`, or the name that was given to the text.</summary>
    public string Name { get; }

    /// <summary>The file; null for a text.</summary>
    internal string? Path { get; }

    /// <summary>The text; null for a file.</summary>
    internal string? Yaml { get; }

    /// <summary>What was in a file that somebody else has read, such as a workbook; null for a file and a text.</summary>
    internal byte[]? Held { get; }

    /// <summary>
    /// A file, which is read each time when it is asked for. That it doesn't exist, or can't be read, is told as a problem by who reads it.
    /// </summary>
    /// <param name="path">Its path, from the current folder on or whole.</param>
    /// <exception cref="ArgumentNullException"><paramref name="path"/> is null.</exception>
    /// <exception cref="ArgumentException"><paramref name="path"/> is empty.</exception>
    public static BuildSource File(string path)
    {
        ArgumentException.ThrowIfNullOrEmpty(path);
        return new BuildSource(path.Replace('\\', '/'), path, null);
    }

    /// <summary>
    /// A text. It is held to the same bounds as a file: 4 MB as UTF-8, and no NUL. A text that says nothing is told as a problem.
    /// </summary>
    /// <param name="name">What places and reports call it, such as `draft.yaml`. No file of this name is looked for.</param>
    /// <param name="yaml">YAML as it stands in a build's file (for a seller's list, CSV).</param>
    /// <exception cref="ArgumentNullException">An argument is null.</exception>
    /// <exception cref="ArgumentException"><paramref name="name"/> is empty.</exception>
    public static BuildSource Text(string name, string yaml)
    {
        ArgumentException.ThrowIfNullOrEmpty(name);
        ArgumentNullException.ThrowIfNull(yaml);
        return new BuildSource(name, null, yaml);
    }

    /// <summary>What was in a file that somebody else has read.</summary>
    internal static BuildSource Bytes(string name, byte[] bytes) => new(name, null, null, bytes);

    /// <summary>Files, in their order.</summary>
    /// <exception cref="ArgumentException"><paramref name="paths"/> is null, empty, or holds a path that is null or empty.</exception>
    public static IReadOnlyList<BuildSource> Files(params IReadOnlyList<string> paths) =>
        [.. Arguments.Words(paths, nameof(paths)).Select(File)];

    /// <summary>The name.</summary>
    public override string ToString() => Name;
}
