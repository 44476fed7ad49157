using System.Text;

namespace FitCheck.Yaml;

/// <summary>A piece of a text and what takes its place.</summary>
public sealed record TextEdit(int Start, int Length, string Text)
{
    public int End => Start + Length;

    /// <summary>A line that stands once before all edits that share it.</summary>
    public string? Heading { get; init; }

    /// <summary>The text with all edits made; null when one writes into what another takes out. Insertions at one place keep their order; deletions may overlap.</summary>
    public static string? Apply(string text, IEnumerable<TextEdit> edits)
    {
        var result = new StringBuilder(text.Length + 200);
        var at = 0;
        var headings = new HashSet<string>(StringComparer.Ordinal);
        foreach (var edit in edits.OrderBy(e => e.Start).ThenBy(e => e.Length))
        {
            if (edit.Start < at && edit.Text.Length > 0)
                return null;
            if (edit.Start > at)
                result.Append(text, at, edit.Start - at);
            if (edit.Heading is { } heading && headings.Add(heading))
                result.Append(heading);
            result.Append(edit.Text);
            at = Math.Max(at, edit.End);
        }
        return result.Append(text, at, text.Length - at).ToString();
    }
}

/// <summary>Turns changes of a YAML document into edits of its text, so that comments and formatting stay where nothing changes.</summary>
/// <param name="text">The text that the nodes were read from.</param>
public sealed class YamlEditor(string text)
{
    private readonly YamlSpans _spans = YamlSpans.Of(text);
    private readonly string _newLine = text.Contains("\r\n", StringComparison.Ordinal) ? "\r\n" : "\n";

    public string Text => text;

    /// <summary>Another value in the place of a scalar.</summary>
    public TextEdit Replace(YamlScalar scalar, string value)
    {
        var span = _spans[scalar];
        return new TextEdit(span.Start, span.End - span.Start, value);
    }

    /// <summary>A key that the mapping lacks, behind its last one.</summary>
    public TextEdit AddKey(YamlMap map, string key, string value) => Append(map, map.Entries[0].KeyAt.Column - 1, $"{key}: {value}");

    /// <summary>An item behind the last one. Further lines of the item are indented with it.</summary>
    public TextEdit AddItem(YamlList list, string item)
    {
        var span = _spans[list];
        return span.InBrackets ? Append(list, 0, item) : Append(list, list.At.Column - 1, "- " + item.Replace("\n", $"{_newLine}{new string(' ', list.At.Column + 1)}", StringComparison.Ordinal));
    }

    /// <summary>An item under a key that the document lacks, at its end.</summary>
    public TextEdit AddUnder(string key, string item) =>
        new(text.TrimEnd().Length, 0, $"{_newLine}  - {item}") { Heading = $"{_newLine}{_newLine}{key}:" };

    /// <summary>Takes a key and its value out; the mapping must have another one.</summary>
    public TextEdit RemoveKey(YamlMap map, string key)
    {
        var index = map.Entries.ToList().FindIndex(e => e.Key == key);
        var (start, end) = (KeyStart(map, index), _spans[map.Entries[index].Value].End);
        if (index + 1 < map.Entries.Count && (index == 0 || _spans[map].InBrackets))
            return Cut(start, KeyStart(map, index + 1));
        return _spans[map].InBrackets ? Cut(_spans[map.Entries[index - 1].Value].End, end) : Cut(LineEnd(start, back: true), LineEnd(end));
    }

    /// <summary>Takes an item out; the list must have another one.</summary>
    public TextEdit RemoveItem(YamlList list, int index)
    {
        var span = _spans[list.Items[index]];
        if (_spans[list].InBrackets)
            return index + 1 < list.Items.Count ? Cut(span.Start, _spans[list.Items[index + 1]].Start) : Cut(_spans[list.Items[index - 1]].End, span.End);
        return Cut(LineEnd(span.Start, back: true), LineEnd(span.End));
    }

    private TextEdit Append(YamlNode collection, int indent, string addition)
    {
        var span = _spans[collection];
        if (!span.InBrackets)
            return new TextEdit(LineEnd(span.End), 0, _newLine + new string(' ', indent) + addition);
        var end = span.End - 1;
        while (end > span.Start + 1 && char.IsWhiteSpace(text[end - 1]))
            end--;
        return new TextEdit(end, 0, end == span.Start + 1 ? addition : ", " + addition);
    }

    private static TextEdit Cut(int start, int end) => new(start, end - start, "");

    private int KeyStart(YamlMap map, int index) => _spans[new YamlScalar(map.Entries[index].KeyAt, map.Entries[index].Key, Quoted: false)].Start;

    // The end of the line, or of the one before it.
    private int LineEnd(int at, bool back = false)
    {
        if (back)
        {
            var before = at == 0 ? -1 : text.LastIndexOf('\n', at - 1);
            return before < 0 ? 0 : before > 0 && text[before - 1] == '\r' ? before - 1 : before;
        }
        var end = text.IndexOf('\n', at);
        return end < 0 ? text.Length : end > 0 && text[end - 1] == '\r' ? end - 1 : end;
    }
}
