namespace FitCheck.Yaml;

/// <summary>Turns changes of a YAML document into edits of its text, so that comments and formatting stay where nothing changes.</summary>
/// <param name="text">The text that the nodes were read from.</param>
internal sealed class YamlEditor(string text)
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

    /// <summary>Another key and another value in the place of both.</summary>
    public TextEdit Replace(YamlMap map, string key, string otherKey, string value)
    {
        var index = IndexOf(map, key);
        var start = KeyStart(map, index);
        return new TextEdit(start, _spans[map.Entries[index].Value].End - start, $"{otherKey}: {value}");
    }

    /// <summary>A key that the mapping lacks, behind its last one.</summary>
    public TextEdit AddKey(YamlMap map, string key, string value) => Append(map, ColumnOf(map), 2 * ColumnOf(map), $"{key}: {value}");

    /// <summary>An item of a list under a key that the mapping lacks; several that are added share the list.</summary>
    public TextEdit AddListed(YamlMap map, string key, string item)
    {
        var opened = AddKey(map, key, "[");
        return opened with { Text = item, Heading = opened.Text, Joint = (", ", "]") };
    }

    /// <summary>An item behind the last one. Further lines of the item, a mapping, are indented with it.</summary>
    public TextEdit AddItem(YamlList list, string item)
    {
        if (!_spans[list].InBrackets)
            return Append(list, list.At.Column - 1, (2 * list.At.Column) - 1,
                "- " + item.Replace("\n", $"{_newLine}{new string(' ', list.At.Column + 1)}", StringComparison.Ordinal));
        var added = Append(list, 0, 0,
            item.Contains('\n', StringComparison.Ordinal) ? $"{{{item.Replace("\n", ", ", StringComparison.Ordinal)}}}" : item);
        return list.Items.Count > 0 ? added : added with { Heading = "", Joint = (", ", "") };
    }

    /// <summary>An item under a key that the document lacks, at its end.</summary>
    public TextEdit AddUnder(string key, string item) =>
        new(LineEnd(DocumentEnd()), 0, $"{_newLine}  - {item}") { Heading = $"{_newLine}{_newLine}{key}:", Depth = -1 };

    /// <summary>A key that the mapping lacks, before its first one.</summary>
    public TextEdit AddFirst(YamlMap map, string key, string value) =>
        new(KeyStart(map, 0), 0, $"{key}: {value}{(_spans[map].InBrackets ? ", " : _newLine + new string(' ', ColumnOf(map)))}");

    /// <summary>A list of items, each in one line, under a key that the mapping lacks, behind its last one.</summary>
    public TextEdit AddList(YamlMap map, string key, params IReadOnlyList<string> items)
    {
        if (items.Count == 0 || _spans[map].InBrackets)
            return AddKey(map, key, $"[{string.Join(", ", items)}]");
        var indent = _newLine + new string(' ', ColumnOf(map));
        return new TextEdit(LineEnd(_spans[map].End), 0,
            string.Concat(items.Select(i => $"{indent}  - {i}")))
        { Heading = $"{_newLine}{indent}{key}:", Depth = 2 * ColumnOf(map) };
    }

    /// <summary>Takes a key and its value out; the mapping must have another one.</summary>
    public TextEdit RemoveKey(YamlMap map, string key)
    {
        var index = IndexOf(map, key);
        var (start, end) = (KeyStart(map, index), _spans[map.Entries[index].Value].End);
        if (index + 1 < map.Entries.Count && (index == 0 || _spans[map].InBrackets))
            return Cut(start, KeyStart(map, index + 1));
        return _spans[map].InBrackets ? Cut(_spans[map.Entries[index - 1].Value].End, end) : Cut(LineEnd(start, back: true), LineEnd(end));
    }

    /// <summary>Takes items out; of a list that is not in brackets one must stay.</summary>
    public IEnumerable<TextEdit> RemoveItems(YamlList list, IReadOnlySet<int> indices)
    {
        for (var i = 0; i < list.Items.Count; i++)
        {
            if (!indices.Contains(i))
                continue;
            var span = _spans[list.Items[i]];
            // In brackets a comma goes with each: the one before it where nothing stays behind it.
            var isLast = Enumerable.Range(i, list.Items.Count - i).All(indices.Contains);
            yield return !_spans[list].InBrackets ? Cut(LineEnd(span.Start, back: true), LineEnd(span.End))
                : isLast ? Cut(i > 0 ? _spans[list.Items[i - 1]].End : span.Start, span.End)
                : Cut(span.Start, _spans[list.Items[i + 1]].Start);
        }
    }

    /// <summary>Whether a collection is written in brackets.</summary>
    public bool IsInBrackets(YamlNode collection) => _spans[collection].InBrackets;

    // Before the dots that may close a document.
    private int DocumentEnd()
    {
        var end = text.AsSpan().TrimEnd();
        return (end.EndsWith("\n...", StringComparison.Ordinal) ? end[..^"...".Length].TrimEnd() : end).Length;
    }

    private TextEdit Append(YamlNode collection, int indent, int depth, string addition)
    {
        var span = _spans[collection];
        if (!span.InBrackets)
            return new TextEdit(LineEnd(span.End), 0, _newLine + new string(' ', indent) + addition) { Depth = depth };
        var end = span.End - 1;
        while (end > span.Start + 1 && char.IsWhiteSpace(text[end - 1]))
            end--;
        return new TextEdit(end, 0, end == span.Start + 1 ? addition : ", " + addition);
    }

    private static TextEdit Cut(int start, int end) => new(start, end - start, "");

    private static int ColumnOf(YamlMap map) => map.Entries[0].KeyAt.Column - 1;

    private static int IndexOf(YamlMap map, string key) => map.Entries.ToList().FindIndex(e => e.Key == key);

    private int KeyStart(YamlMap map, int index) =>
        _spans[new YamlScalar(map.Entries[index].KeyAt, map.Entries[index].Key, Quoted: false)].Start;

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
