using FitCheck.Foundation.Problems;
using FitCheck.Schemas;
using FitCheck.Yaml;

namespace FitCheck.Builds;

/// <summary>Holds the value of a reading against the schema of what it is read of: a length is told where a length belongs.</summary>
internal static class ReadingShape
{
    private static readonly SchemaCheck Schemas = new();

    /// <summary>What is wrong with the value where it would stand; whatever else an entry must have is left out, and not missed.</summary>
    public static IReadOnlyList<Problem> Problems(Reading reading, IReadOnlyList<string> path, string kind, string? list)
    {
        // Somewhere else than the value, so that what is told of it can be told apart.
        var elsewhere = new Location(reading.Value.At.File, reading.Value.At.Line + 1_000_000, 1);
        YamlNode node = reading.Value;
        for (var i = path.Count - 1; i >= 0; i--)
        {
            var isItem = i > 0 && path[i - 1] == "obstructions";
            node = isItem ? new YamlList(elsewhere, [node])
                : new YamlMap(elsewhere, [new YamlEntry(path[i], reading.Value.At, node)]);
        }
        if (list is not null)
            node = new YamlMap(elsewhere, [new YamlEntry(list, elsewhere, new YamlList(elsewhere, [node]))]);
        var told = new ProblemList();
        Schemas.Tell(kind, node, told);
        return [.. told.All.Where(p => p.At == reading.Value.At)];
    }
}
