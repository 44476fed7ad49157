using System.Globalization;
using YamlDotNet.RepresentationModel;

namespace FitCheck.Tests.Mistakes;

/// <summary>
/// A YAML file with some edits made to it. A path names keys with dots and items with brackets, by the item's `id` (or `name`) or by its
/// number from 0 on: `positions[front-door-left].mounting.depth`.
/// </summary>
internal static class EditedYaml
{
    public static string Of(string file, IEnumerable<Edit> edits)
    {
        var stream = new YamlStream();
        using (var reader = new StreamReader(file))
            stream.Load(reader);
        foreach (var edit in edits)
            Apply(stream.Documents[0].RootNode, edit);
        using var text = new StringWriter(CultureInfo.InvariantCulture);
        stream.Save(text, assignAnchors: false);
        return text.ToString();
    }

    private static void Apply(YamlNode root, Edit edit)
    {
        var steps = Steps(edit.At);
        var parent = root;
        foreach (var step in steps[..^1])
            parent = Below(parent, step, edit);
        var last = steps[^1];
        if (edit.Drop)
            Drop(parent, last, edit);
        else if (edit.Add is { } item)
            ListAt(parent, last, edit).Add(item);
        else if (edit.Be is { } value && parent is YamlMappingNode map && last.Key is { } key)
            map.Children[new YamlScalarNode(key)] = value;
        else if (edit.Be is { } replaced && parent is YamlSequenceNode list && IndexOf(list, last) is >= 0 and var index)
            list.Children[index] = replaced;
        else
            throw Nothing(edit);
    }

    private static YamlNode Below(YamlNode node, Step step, Edit edit)
    {
        if (step.Key is { } key && node is YamlMappingNode map)
        {
            // What a value is put into may be missing too: a reading in `measured` where nothing was measured yet.
            if (!map.Children.TryGetValue(new YamlScalarNode(key), out var value))
            {
                value = edit.Be is null ? throw Nothing(edit) : new YamlMappingNode();
                map.Add(new YamlScalarNode(key), value);
            }
            return value;
        }
        return node is YamlSequenceNode list && IndexOf(list, step) is >= 0 and var index ? list.Children[index] : throw Nothing(edit);
    }

    private static void Drop(YamlNode parent, Step last, Edit edit)
    {
        var dropped = parent switch
        {
            YamlMappingNode map when last.Key is { } key => map.Children.Remove(new YamlScalarNode(key)),
            YamlSequenceNode list when IndexOf(list, last) is >= 0 and var index => list.Children.Remove(list.Children[index]),
            _ => false,
        };
        if (!dropped)
            throw Nothing(edit);
    }

    private static YamlSequenceNode ListAt(YamlNode parent, Step last, Edit edit)
    {
        if (parent is YamlMappingNode map && last.Key is { } key && !map.Children.ContainsKey(new YamlScalarNode(key)))
            map.Add(new YamlScalarNode(key), new YamlSequenceNode());
        return Below(parent, last, edit) as YamlSequenceNode ?? throw Nothing(edit);
    }

    private static int IndexOf(YamlSequenceNode list, Step step)
    {
        if (int.TryParse(step.Item, NumberStyles.None, CultureInfo.InvariantCulture, out var index))
            return index < list.Children.Count ? index : -1;
        for (var i = 0; i < list.Children.Count; i++)
        {
            if (list.Children[i] is YamlMappingNode map
                && new[] { "id", "name" }.Any(key => map.Children.TryGetValue(new YamlScalarNode(key), out var id)
                    && id is YamlScalarNode { Value: { } value } && value == step.Item))
                return i;
        }
        return -1;
    }

    private static List<Step> Steps(string path)
    {
        var steps = new List<Step>();
        foreach (var part in path.Split(']', StringSplitOptions.RemoveEmptyEntries))
        {
            var bracket = part.IndexOf('[', StringComparison.Ordinal);
            var keys = bracket < 0 ? part : part[..bracket];
            steps.AddRange(keys.Split('.', StringSplitOptions.RemoveEmptyEntries).Select(k => new Step(k, null)));
            if (bracket >= 0)
                steps.Add(new Step(null, part[(bracket + 1)..]));
        }
        return steps;
    }

    private static InvalidDataException Nothing(Edit edit) => new($"`{edit.At}` names nothing{(edit.In is null ? "" : $" in {edit.In}")}");

    // A key of a mapping, or an item of a list.
    private readonly record struct Step(string? Key, string? Item);
}
