using FitCheck.Findings;
using YamlDotNet.RepresentationModel;

namespace FitCheck.Tests.Mistakes;

/// <summary>One edit of a file: a value put there, an item added to a list, or something left out.</summary>
/// <param name="In">The entry that is edited, such as `vehicles/tansy-hatch`; null for the row's own build or entry.</param>
/// <param name="At">A path within it.</param>
internal sealed record Edit(string? In, string At, YamlNode? Be, YamlNode? Add, bool Drop);

/// <summary>
/// A reference build, or an entry, with one mistake, and what the trade says of it; or with a variation that is good practice.
/// </summary>
internal sealed record MistakeRow
{
    public required string Id { get; init; }
    /// <summary>A reference build; null where an entry of the catalog is judged by itself.</summary>
    public string? Build { get; init; }
    public string? Entry { get; init; }
    public required IReadOnlyList<Edit> Edits { get; init; }
    /// <summary>The status of the finding; null for a variation that is sound, and for an input that is refused.</summary>
    public Status? Says { get; init; }
    /// <summary>For an input that is refused: what is told.</summary>
    public string? Tells { get; init; }
    /// <summary>The rule that says so; null where any may, of this status or a worse one, that did not say so before the edit.</summary>
    public string? Rule { get; init; }
    /// <summary>The key of what the finding is about; null for anything.</summary>
    public string? At { get; init; }
    /// <summary>Rules that say nothing worse than pass.</summary>
    public IReadOnlyList<string> Sound { get; init; } = [];

    public static IReadOnlyList<string> Files { get; } =
        [.. Directory.GetFiles(RepositoryRoot.Of("tests", "mistakes"), "*.yaml").Order(StringComparer.Ordinal)];

    public static IReadOnlyList<MistakeRow> All() => [.. Files.SelectMany(Read)];

    public static IReadOnlyList<MistakeRow> Read(string file)
    {
        var stream = new YamlStream();
        using (var reader = new StreamReader(file))
            stream.Load(reader);
        return [.. ((YamlSequenceNode)stream.Documents[0].RootNode).Select(n => One((YamlMappingNode)n))];
    }

    private static MistakeRow One(YamlMappingNode row)
    {
        var says = Text(row, "says");
        HashSet<string> known = ["id", "build", "entry", "edit", "says", "tells", "rule", "at", "sound", "why"];
        Assert(row, row.Children.Keys.All(k => known.Contains(((YamlScalarNode)k).Value!)), "has a key that nobody knows");
        Assert(row, Text(row, "why") is not null, "says nothing of why");
        Assert(row, Text(row, "build") is null != Text(row, "entry") is null, "is of a build or of an entry");
        Assert(row, says is null == row.Children.ContainsKey(new YamlScalarNode("sound")), "either says something or is sound");
        return new MistakeRow
        {
            Id = Text(row, "id") ?? throw new InvalidDataException("a row has no id"),
            Build = Text(row, "build"),
            Entry = Text(row, "entry"),
            Edits = [.. ((YamlSequenceNode)row["edit"]).Select(e => EditOf((YamlMappingNode)e))],
            Says = says is null or "refused" ? null : Enum.Parse<Status>(says, ignoreCase: true),
            Tells = says == "refused" ? Text(row, "tells") ?? "" : null,
            Rule = Text(row, "rule"),
            At = Text(row, "at"),
            Sound = Node(row, "sound") is YamlSequenceNode list ? [.. list.Select(s => ((YamlScalarNode)s).Value!)] : [],
        };
    }

    private static Edit EditOf(YamlMappingNode edit) =>
        new(Text(edit, "in"), Text(edit, "at")!, Node(edit, "be"), Node(edit, "add"), Text(edit, "drop") == "true");

    private static YamlNode? Node(YamlMappingNode map, string key) =>
        map.Children.TryGetValue(new YamlScalarNode(key), out var value) ? value : null;

    private static string? Text(YamlMappingNode map, string key) => (Node(map, key) as YamlScalarNode)?.Value;

    private static void Assert(YamlMappingNode row, bool holds, string otherwise)
    {
        if (!holds)
            throw new InvalidDataException($"the row {Text(row, "id")} {otherwise}");
    }
}
