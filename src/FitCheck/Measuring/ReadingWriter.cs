using FitCheck.Builds;
using FitCheck.Builds.Readable;
using FitCheck.Foundation.Files;
using FitCheck.Foundation.Problems;
using FitCheck.Yaml;

namespace FitCheck.Measuring;

/// <summary>Puts a reading into the text of a build; every other byte stays.</summary>
internal static class ReadingWriter
{
    // The words of `measured` at a line of `fit`, which say the same as a reading.
    private static readonly Dictionary<string, string> OfLine = new(StringComparer.Ordinal)
    {
        ["mounting.depth"] = "depth",
        ["mounting.cutout"] = "cutout",
        ["mounting.grille_gap"] = "grille_gap",
    };

    /// <summary>The text with the reading, in place of one of the same datum; or a sentence that says why it can't be written.</summary>
    public static (string? Text, string? Wrong) Written(string text, DatumKey key, TypedReading reading, DateOnly on)
    {
        var problems = new ProblemList();
        if (YamlReader.Read(new SourceText("build", text), problems) is not YamlMap root || problems.HasErrors)
            return (null, "the build can't be read any more");
        var editor = new YamlEditor(text);
        if (Same(root, key) is { } item)
            return Done(text, Replaced(editor, item, reading, on));
        if (OfLine.TryGetValue(key.Of, out var word) && key.Kind == DatumKey.Position && Measured(root, key.At) is var (line, measured)
            && measured[word] is YamlScalar told)
        {
            return line["at"] is YamlList { Items.Count: > 1 }
                ? (null, $"line {told.At.Line} of the build has `measured` for several places; write them there one by one")
                : Done(text, [editor.Replace(told, reading.Tolerance is { } off ? $"{reading.Value} ± {off}" : reading.Value)]);
        }
        var filled = ReadingLine.Filled(key, reading.Value, reading.Tolerance, on);
        return Done(text, [root["readings"] is YamlList list ? editor.AddItem(list, filled)
            : editor.IsInBrackets(root) ? editor.AddKey(root, "readings", $"[{filled}]") : editor.AddUnder("readings", filled)]);
    }

    private static (string? Text, string? Wrong) Done(string text, IEnumerable<TextEdit> edits) =>
        TextEdit.Apply(text, edits) is { } written ? (written, null) : (null, "the reading that is there already can't be replaced");

    private static YamlMap? Same(YamlMap root, DatumKey key) => (root["readings"] as YamlList)?.Items.OfType<YamlMap>()
        .FirstOrDefault(r => r["at"] is YamlScalar at && at.Text == key.At && r["of"] is YamlScalar of
            && (of.Text == key.Of || $"mounting.{of.Text}" == key.Of) && r["value"] is YamlScalar);

    private static (YamlMap Line, YamlMap Measured)? Measured(YamlMap root, string position) => (root["fit"] as YamlList)?.Items
        .OfType<YamlMap>().Where(l => l["measured"] is YamlMap && At(l["at"]).Contains(position))
        .Select(l => ((YamlMap, YamlMap)?)(l, (YamlMap)l["measured"]!)).FirstOrDefault();

    private static IEnumerable<string> At(YamlNode? node) => node switch
    {
        YamlScalar one => [one.Text],
        YamlList several => several.Items.OfType<YamlScalar>().Select(s => s.Text),
        _ => [],
    };

    private static IEnumerable<TextEdit> Replaced(YamlEditor editor, YamlMap item, TypedReading reading, DateOnly on)
    {
        yield return editor.Replace((YamlScalar)item["value"]!, reading.Value);
        foreach (var (key, now) in new[] { ("tolerance", reading.Tolerance), ("on", ReadingLine.Day(on)) })
        {
            if (item[key] is YamlScalar before && now is not null)
                yield return editor.Replace(before, now);
            else if (item[key] is not null)
                yield return editor.RemoveKey(item, key);
            else if (now is not null)
                yield return editor.AddKey(item, key, now);
        }
    }
}
