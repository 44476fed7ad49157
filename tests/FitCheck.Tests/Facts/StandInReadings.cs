using System.Globalization;
using FitCheck.Builds.Readable;
using FitCheck.Catalog;
using FitCheck.Evaluation;
using FitCheck.Foundation.Problems;
using FitCheck.Measuring;
using FitCheck.Yaml;

namespace FitCheck.Tests.Facts;

/// <summary>
/// Answers what a build on a stand-in asks for, as if the car that is meant were like the catalog's vehicle in every respect.
/// </summary>
internal sealed class StandInReadings(string vehicle)
{
    private readonly YamlMap _entry =
        (YamlMap)PartsCatalog.Open([RepositoryRoot.Of("catalog")], new ProblemList()).Written(vehicle)!;

    /// <summary>The build with all that can be answered, question after question, and what is still open then.</summary>
    /// <param name="build">Its text.</param>
    /// <param name="only">Which questions are answered; null for all.</param>
    public (string Text, BuildResult Result) Answered(string build, Func<OpenReading, bool>? only = null)
    {
        var lines = new Dictionary<DatumKey, string>();
        while (true)
        {
            var text = lines.Count == 0 ? build
                : $"{build}\nreadings:\n{string.Concat(lines.Values.Select(l => $"  - {l}\n"))}";
            var result = Trial.Of(text);
            var before = lines.Count;
            foreach (var reading in OpenReadings.Of(result).Where(r => !lines.ContainsKey(r.Key) && only?.Invoke(r) != false))
            {
                if (Value(reading.Key) is { } value)
                    lines[reading.Key] = $"{{at: {reading.Key.At}, of: {reading.Key.Of}, value: {value}}}";
            }
            if (lines.Count == before)
                return (text, result);
        }
    }

    private string? Value(DatumKey key)
    {
        var path = key.Of.Split('.');
        if (key.Kind == "vehicle" && key.At == vehicle)
            return Text(At(_entry, path));
        if (key.Kind != DatumKey.Position || Position(key.At) is not { } own)
            return null;
        if (At(own, path) is { } written)
            return Text(written);
        if (own["mirror_of"] is not YamlScalar { Text: var other } || Text(At(Position(other), path)) is not { } mirrored)
            return null;
        return path[^1] == "aim_clock"
            ? (12 - double.Parse(mirrored, CultureInfo.InvariantCulture)).ToString(CultureInfo.InvariantCulture) : mirrored;
    }

    private YamlMap? Position(string id) => ((YamlList)_entry["positions"]!).Items.OfType<YamlMap>()
        .FirstOrDefault(p => p["id"] is YamlScalar own && own.Text == id);

    private static YamlNode? At(YamlNode? node, ReadOnlySpan<string> path) => path.IsEmpty ? node
        : node is YamlMap map ? At(map[path[0]], path[1..])
        : node is YamlList list ? At(Named(list, path[0]), path[1..]) : null;

    private static YamlMap? Named(YamlList list, string name) =>
        list.Items.OfType<YamlMap>().FirstOrDefault(m => m["name"] is YamlScalar own && own.Text == name);

    private static string? Text(YamlNode? node) => node switch
    {
        YamlScalar scalar => scalar.Text,
        YamlList { Items.Count: 0 } => "none",
        _ => null,
    };
}
