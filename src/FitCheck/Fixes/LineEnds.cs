using FitCheck.Foundation.Problems;
using FitCheck.Yaml;
using YamlDotNet.Core;
using YamlDotNet.Core.Events;

namespace FitCheck.Fixes;

/// <summary>
/// Takes spaces and tabs off the ends of lines, and ends the last line; not inside a text of several lines, where they may mean something.
/// </summary>
internal static class LineEnds
{
    private static readonly Dictionary<Location, string> Nothing = [];

    public static IReadOnlyDictionary<Location, string> Mended(TextLines lines, YamlNode tree, List<Mended> done)
    {
        var kept = InsideTexts(lines.Joined);
        for (var i = 1; i <= lines.Count; i++)
        {
            var end = TextLines.EndOf(lines[i]);
            var text = lines[i][..^end.Length];
            var trimmed = text.TrimEnd(' ', '\t');
            if (trimmed.Length == text.Length || kept.Contains(i))
                continue;
            lines[i] = trimmed + end;
            done.Add(new Mended(new Location(tree.At.File, i, trimmed.Length + 1), "spaces at the end of the line taken off"));
        }
        if (lines.Count > 0 && lines[lines.Count] is var last && TextLines.EndOf(last).Length == 0 && last.Length > 0
            && !kept.Contains(lines.Count))
        {
            done.Add(new Mended(new Location(tree.At.File, lines.Count, last.Length + 1), "the last line ended"));
            lines[lines.Count] = last + lines.LineEnd;
        }
        return Nothing;
    }

    // The mark behind a block scalar stands where the next thing begins, so one line too many is kept; better than one too few.
    private static HashSet<int> InsideTexts(string text)
    {
        var kept = new HashSet<int>();
        var parser = new Parser(new Scanner(new StringReader(text), skipComments: true));
        while (parser.MoveNext())
        {
            if (parser.Current is not Scalar scalar
                || (scalar.Start.Line == scalar.End.Line && scalar.Style is not (ScalarStyle.Literal or ScalarStyle.Folded)))
                continue;
            var last = scalar.End is { Column: 1 } && scalar.End.Line > scalar.Start.Line ? scalar.End.Line - 1 : scalar.End.Line;
            for (var line = scalar.Start.Line; line <= last; line++)
                kept.Add((int)line);
        }
        return kept;
    }
}
