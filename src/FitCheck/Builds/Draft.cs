using FitCheck.Catalog;
using FitCheck.Yaml;

namespace FitCheck.Builds;

/// <summary>A build that somebody has only begun: what a whole one must have may be missing, and comes with the first choice.</summary>
internal static class Draft
{
    /// <summary>The document with stand-ins for what is missing, so that its form can be checked like that of any build.</summary>
    public static YamlMap Completed(YamlMap root)
    {
        var (entries, at) = (root.Entries.Where(e => e is not { Key: "fit", Value: YamlList { Items: [] } }).ToList(), root.At);
        Add("kind", new YamlScalar(at, "build", Quoted: false));
        Add("name", new YamlScalar(at, "A build", Quoted: true));
        Add("fit", new YamlList(at,
            [new YamlMap(at, [new YamlEntry("at", at, new YamlList(at, [new YamlScalar(at, "somewhere", Quoted: false)]))])]));
        return new YamlMap(at, entries);

        void Add(string key, YamlNode value)
        {
            if (!entries.Exists(e => e.Key == key))
                entries.Add(new YamlEntry(key, at, value));
        }
    }

    /// <summary>What says that it is a build, and its name, where these are missing.</summary>
    public static IEnumerable<TextEdit> Heads(YamlMap root, YamlEditor editor, Vehicle vehicle)
    {
        if (root["kind"] is null)
            yield return editor.AddFirst(root, "kind", "build");
        if (root["name"] is null)
            yield return editor.AddFirst(root, "name", YamlText.Quoted(vehicle.Name));
    }
}
