using System.Text;
using FitCheck.Foundation.Files;
using FitCheck.Foundation.Problems;

namespace FitCheck.Yaml;

/// <summary>
/// Reads what nearly all files are written in: block mappings and lists with simple keys, values on one line, flow collections, folded and
/// literal text. It gives what the YAML library gives, in a fraction of the time that loading the library takes. Anything else, and
/// anything that is wrong, is the library's.
/// </summary>
internal sealed class FastYamlReader
{
    private const int MaxDepth = 16;
    private const int End = -1;

    private readonly string _text;
    private readonly string _file;
    private int _at;
    private int _line;
    private int _lineStart;
    private int _depth;

    // Spaces before the content at hand; End behind the last.
    private int _indent;

    private FastYamlReader(SourceText source) => (_text, _file, _line) = (source.Text, source.File, source.FirstLine);

    private char Current => _at < _text.Length ? _text[_at] : '\n';

    private char Next => _at + 1 < _text.Length ? _text[_at + 1] : '\n';

    private Location Here => new(_file, _line, _at - _lineStart + 1);

    private bool IsItem => Current == '-' && Next == ' ';

    /// <summary>The document's root; null when it holds something that only the library reads, or a mistake.</summary>
    public static YamlNode? Read(SourceText source)
    {
        foreach (var c in source.Text)
        {
            // Control characters, the line breaks of Unicode, halves of characters and byte order marks.
            if ((c < ' ' && c != '\n')
                || c is (>= '\u007F' and <= '\u00A0') or '\u2028' or '\u2029' or '\uFEFF' or >= '\uD800' and <= '\uDFFF' or '\uFFFE'
                or '\uFFFF')
                return null;
        }
        var reader = new FastYamlReader(source);
        reader.ToContent();
        return reader._indent == 0 && reader.Block() is { } root && reader._indent == End ? root : null;
    }

    // Every reader of a block value leaves the cursor at the content that follows it.
    private YamlNode? Block()
    {
        if (++_depth > MaxDepth)
            return null;
        YamlNode? node = IsItem ? List(_indent) : Map(_indent);
        _depth--;
        return node;
    }

    private YamlMap? Map(int indent)
    {
        var at = Here;
        var entries = new WrittenKeys();
        while (true)
        {
            var keyAt = Here;
            if (Key() is not { } key || entries.Find(key) is not null || ValueOf(indent) is not { } value)
                return null;
            entries.Add(new YamlEntry(key, keyAt, value));
            if (_indent < indent)
                return new YamlMap(at, entries.Entries);
            if (_indent > indent)
                return null;
        }
    }

    private YamlList? List(int indent)
    {
        var at = Here;
        var items = new List<YamlNode>();
        while (_indent == indent && IsItem)
        {
            _at++;
            Spaces();
            if (Item(indent) is not { } item)
                return null;
            items.Add(item);
        }
        return _indent <= indent ? new YamlList(at, items) : null;
    }

    private YamlNode? Item(int indent)
    {
        if (!IsKey())
            return Inline(indent);
        if (++_depth > MaxDepth)
            return null;
        var map = Map(_at - _lineStart);
        _depth--;
        return map;
    }

    // A key, its colon and what parts them from the value.
    private string? Key()
    {
        if (!IsKey())
            return null;
        var start = _at;
        while (Current != ':')
            _at++;
        return _text[start.._at++];
    }

    private bool IsKey()
    {
        var end = _at;
        while (end < _text.Length && (char.IsAsciiLetterOrDigit(_text[end]) || (end > _at && _text[end] is '_' or '-')))
            end++;
        return end > _at && end < _text.Length && _text[end] == ':' && (end + 1 == _text.Length || _text[end + 1] is ' ' or '\n');
    }

    private YamlNode? ValueOf(int indent)
    {
        Spaces();
        if (Current != '\n' && Current != '#')
            return Inline(indent);
        if (!ToNextLine())
            return null;
        if (_indent == indent && IsItem)
            return List(indent);
        return _indent > indent ? Block() : null;
    }

    private YamlNode? Inline(int indent)
    {
        if (Current is '|' or '>')
            return BlockText(indent);
        YamlNode? node = Current switch
        {
            '"' or '\'' => Quoted(),
            '[' => FlowList(indent),
            '{' => FlowMap(indent),
            _ => Plain(inFlow: false),
        };
        return node is not null && ToNextLine() ? node : null;
    }

    private YamlScalar? Quoted()
    {
        var at = Here;
        var quote = Current;
        var start = ++_at;
        while (Current != quote)
        {
            if (Current is '\n' or '\\')
                return null;
            _at++;
        }
        var text = _text[start.._at++];
        // Twice, it would stand for itself.
        return Current == quote ? null : new YamlScalar(at, text, Quoted: true);
    }

    private YamlScalar? Plain(bool inFlow)
    {
        if (!(char.IsAsciiLetterOrDigit(Current) || Current is '.' or '(' or '+' or '/' or > '\u00A0'
            || (Current == '-' && char.IsAsciiLetterOrDigit(Next))))
            return null;
        var at = Here;
        var start = _at;
        var end = _at;
        for (; Current != '\n'; _at++)
        {
            if (Current == '#' && _text[_at - 1] == ' ')
                break;
            if (inFlow && Current is ',' or ']' or '}')
                break;
            if (inFlow && (Current is '[' or '{' or ':' or '?'))
                return null;
            if (Current == ':' && Next is ' ' or '\n')
                return null;
            if (Current != ' ')
                end = _at + 1;
        }
        return new YamlScalar(at, _text[start..end], Quoted: false);
    }

    private YamlNode? Flow(int indent) => Current switch
    {
        '"' or '\'' => Quoted(),
        '[' => FlowList(indent),
        '{' => FlowMap(indent),
        _ => Plain(inFlow: true),
    };

    private YamlList? FlowList(int indent)
    {
        var at = Here;
        var items = new List<YamlNode>();
        if (++_depth > MaxDepth)
            return null;
        _at++;
        if (!FlowSpace(indent))
            return null;
        while (Current != ']' || items.Count > 0)
        {
            if (Flow(indent) is not { } item || !FlowSpace(indent))
                return null;
            items.Add(item);
            if (Current == ']')
                break;
            if (!Comma(indent))
                return null;
        }
        _at++;
        _depth--;
        return new YamlList(at, items);
    }

    private YamlMap? FlowMap(int indent)
    {
        var at = Here;
        var entries = new WrittenKeys();
        if (++_depth > MaxDepth)
            return null;
        _at++;
        if (!FlowSpace(indent))
            return null;
        while (Current != '}' || entries.Entries.Count > 0)
        {
            var keyAt = Here;
            if (Key() is not { } key || entries.Find(key) is not null || !FlowSpace(indent) || Flow(indent) is not { } value
                || !FlowSpace(indent))
                return null;
            entries.Add(new YamlEntry(key, keyAt, value));
            if (Current == '}')
                break;
            if (!Comma(indent))
                return null;
        }
        _at++;
        _depth--;
        return new YamlMap(at, entries.Entries);
    }

    private bool Comma(int indent)
    {
        if (Current != ',')
            return false;
        _at++;
        return FlowSpace(indent);
    }

    // A flow collection may go on in the next line, further in than what it belongs to.
    private bool FlowSpace(int indent)
    {
        Spaces();
        while (Current == '\n')
        {
            if (_at >= _text.Length)
                return false;
            NewLine();
            Spaces();
            if (Current != '\n' && _at - _lineStart <= indent)
                return false;
        }
        return Current != '#';
    }

    // Folded (`>`) or literal (`|`) text, with or without the line break at its end.
    private YamlScalar? BlockText(int indent)
    {
        var at = Here;
        var folded = Current == '>';
        _at++;
        var strip = Current == '-';
        if (strip)
            _at++;
        Spaces();
        if (Current != '\n' || _at >= _text.Length)
            return null;
        NewLine();
        Spaces();
        var inner = _at - _lineStart;
        if (inner <= indent || Current == '\n')
            return null;
        var text = new StringBuilder();
        var breaks = 0;
        while (Current == '\n' ? _at < _text.Length : _at - _lineStart >= inner)
        {
            if (Current == '\n')
            {
                if (_at - _lineStart > inner)
                    return null;
                breaks++;
            }
            else
            {
                if (folded && _at - _lineStart > inner)
                    return null;
                if (text.Length > 0 && folded && breaks == 1)
                    text.Append(' ');
                else if (text.Length > 0)
                    text.Append('\n', folded ? breaks - 1 : breaks);
                var start = _lineStart + inner;
                while (Current != '\n')
                    _at++;
                text.Append(_text, start, _at - start);
                breaks = 1;
            }
            if (_at >= _text.Length)
                return null;
            NewLine();
            Spaces();
        }
        if (!strip)
            text.Append('\n');
        _at = _lineStart;
        ToContent();
        return new YamlScalar(at, text.ToString(), Quoted: true);
    }

    // Nothing but a comment may stand in the rest of this line.
    private bool ToNextLine()
    {
        Spaces();
        if (Current == '#' && _text[_at - 1] != ' ')
            return false;
        if (Current != '\n' && Current != '#')
            return false;
        ToContent();
        return true;
    }

    // To the next character that is no space, no line break and not in a comment.
    private void ToContent()
    {
        while (true)
        {
            Spaces();
            if (Current == '#')
            {
                while (Current != '\n')
                    _at++;
            }
            if (Current != '\n')
                break;
            if (_at >= _text.Length)
            {
                _indent = End;
                return;
            }
            NewLine();
        }
        _indent = _at - _lineStart;
    }

    private void Spaces()
    {
        while (Current == ' ')
            _at++;
    }

    private void NewLine()
    {
        _at++;
        _line++;
        _lineStart = _at;
    }
}
