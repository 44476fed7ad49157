using System.Globalization;
using FitCheck.Builds;
using FitCheck.Foundation.Files;
using FitCheck.Foundation.Problems;
using FitCheck.Suggestions.Choices;
using FitCheck.Yaml;

namespace FitCheck.Suggestions.Trials;

/// <summary>
/// Writes the seller's list of a changed build anew: what is missing is added, what the changes made superfluous is taken out.
/// </summary>
internal static class QuoteText
{
    /// <summary>The text of the build with the changes, its list renewed where it has one.</summary>
    /// <param name="evaluator">The build as it was given.</param>
    /// <param name="changes">What is chosen otherwise.</param>
    /// <param name="besides">What else is written into the text.</param>
    /// <param name="onlyNeeded">True to take out also what was superfluous before, where that stands in the way.</param>
    public static string Renewed(ProposalEvaluator evaluator, IReadOnlyList<Change> changes, IReadOnlyList<TextEdit>? besides = null,
        bool onlyNeeded = false)
    {
        var text = evaluator.TextOf(changes, besides)!;
        if (evaluator.ReadText(text) is not { Quote: { } quote } build
            || YamlReader.Read(new SourceText(build.File, text), new ProblemList()) is not YamlMap { } root
            || root["quote"] is not YamlList lines)
            return text;
        var editor = new YamlEditor(text);
        var edits = new List<TextEdit>();
        var added = new List<(string Part, string Packs)>();
        var needed = Shopping.List(build);
        var neededBefore = Shopping.List(evaluator.Build);
        foreach (var line in needed)
        {
            var missing = line.Packs - Listed(line.Part);
            if (missing == 0 || (missing < 0 && !onlyNeeded && !IsTooMuchNow(line.Part)))
                continue;
            if (Of(lines, line.Part) is { } map && map["packs"] is YamlScalar old)
                edits.Add(editor.Replace(old, Text(Math.Max(1, missing + quote.First(q => q.Part.Id == line.Part).Packs))));
            else
                added.Add((line.Part, Text(missing)));
        }
        var before = neededBefore.Select(l => l.Part).ToHashSet(StringComparer.Ordinal);
        var gone = Enumerable.Range(0, lines.Items.Count)
            .Where(i => PartOf(lines.Items[i]) is { } part && (onlyNeeded || before.Contains(part)) && needed.All(l => l.Part != part))
            .ToHashSet();
        // Where nothing of a list stays, it is what takes a line's place; where nothing comes either, the last line stays or the list goes.
        if (gone.Count == lines.Items.Count && gone.Count > 0)
        {
            gone.Remove(0);
            if (added.Count > 0)
                edits.AddRange(Instead((YamlMap)lines.Items[0], added[0]));
            else if (onlyNeeded)
                return TextEdit.Apply(text, [editor.RemoveKey(root, "quote")])!;
            added = [.. added.Skip(1)];
        }
        edits.AddRange(added.Select(a => editor.AddItem(lines, $"{{part: {a.Part}, packs: {a.Packs}}}")));
        edits.AddRange(editor.RemoveItems(lines, gone));
        return TextEdit.Apply(text, edits)!;

        int Listed(string part) => quote.Where(q => q.Part.Id == part).Sum(q => q.Packs);

        // What was no more than the build needed before the changes; what was too much then is not theirs to take out.
        bool IsTooMuchNow(string part) => neededBefore.FirstOrDefault(l => l.Part == part) is { } was && Listed(part) <= was.Packs;

        IEnumerable<TextEdit> Instead(YamlMap map, (string Part, string Packs) line) =>
            [editor.Replace((YamlScalar)map["part"]!, line.Part), editor.Replace((YamlScalar)map["packs"]!, line.Packs),
                .. map["price"] is null ? [] : new[] { editor.RemoveKey(map, "price") }];
    }

    private static string Text(int packs) => packs.ToString(CultureInfo.InvariantCulture);

    private static YamlMap? Of(YamlList lines, string part) => lines.Items.OfType<YamlMap>().FirstOrDefault(m => PartOf(m) == part);

    private static string? PartOf(YamlNode line) => ((line as YamlMap)?["part"] as YamlScalar)?.Text;
}
