using System.Globalization;
using FitCheck.Builds;
using FitCheck.Yaml;

namespace FitCheck.Suggestions;

/// <summary>Writes the seller's list of a changed build anew: what is missing is added, what the changes made superfluous is taken out.</summary>
internal static class QuoteText
{
    /// <summary>The text of the build with the changes, its list renewed where it has one.</summary>
    public static string Renewed(Bench bench, IReadOnlyList<Change> changes)
    {
        var text = bench.TextOf(changes)!;
        if (bench.ReadText(text) is not { Quote: { } quote } build || YamlReader.Read(new SourceText(build.File, text), new ProblemList()) is not YamlMap { } root || root["quote"] is not YamlList lines)
            return text;
        var editor = new YamlEditor(text);
        var edits = new List<TextEdit>();
        var needed = Shopping.List(build);
        var before = Shopping.List(bench.Build).Select(l => l.Part).ToHashSet(StringComparer.Ordinal);
        foreach (var line in needed)
        {
            var quoted = quote.Where(q => q.Part.Id == line.Part).Sum(q => q.Packs);
            if (quoted >= line.Packs)
                continue;
            var packs = line.Packs.ToString(CultureInfo.InvariantCulture);
            edits.Add(Of(lines, line.Part) is { } map && map["packs"] is YamlScalar old ? editor.Replace(old, packs) : editor.AddItem(lines, $"{{part: {line.Part}, packs: {packs}}}"));
        }
        var kept = lines.Items.Count;
        for (var i = 0; i < lines.Items.Count; i++)
        {
            if (lines.Items[i] is YamlMap map && map["part"] is YamlScalar part && before.Contains(part.Text) && needed.All(l => l.Part != part.Text) && --kept > 0)
                edits.Add(editor.RemoveItem(lines, i));
        }
        return TextEdit.Apply(text, edits)!;
    }

    private static YamlMap? Of(YamlList lines, string part) => lines.Items.OfType<YamlMap>().FirstOrDefault(m => (m["part"] as YamlScalar)?.Text == part);
}
