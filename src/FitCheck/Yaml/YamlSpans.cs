using YamlDotNet.Core;
using YamlDotNet.Core.Events;

namespace FitCheck.Yaml;

/// <summary>Where a node begins and ends in its text, and whether it is written in brackets.</summary>
internal readonly record struct YamlSpan(int Start, int End, bool InBrackets);

/// <summary>
/// The spans of a document that <see cref="YamlReader"/> has read without problems, so that parts of its text can be changed and all else
/// stays.
/// </summary>
internal sealed class YamlSpans
{
    private readonly Dictionary<(int Line, int Column), YamlSpan> _scalars = [];
    private readonly Dictionary<(int Line, int Column), YamlSpan> _maps = [];
    private readonly Dictionary<(int Line, int Column), YamlSpan> _lists = [];
    private readonly Parser _parser;

    private YamlSpans(string text)
    {
        _parser = new Parser(new Scanner(new StringReader(text), skipComments: true));
        _parser.Consume<StreamStart>();
        _parser.Consume<DocumentStart>();
        Visit();
    }

    /// <summary>Measures every node of a document.</summary>
    public static YamlSpans Of(string text) => new(text);

    /// <summary>The span of a node of the same text.</summary>
    public YamlSpan this[YamlNode node] =>
        (node switch { YamlMap => _maps, YamlList => _lists, _ => _scalars })[(node.At.Line, node.At.Column)];

    // A block ends where its last value does: what follows, blank lines and comments, belongs to nobody.
    private YamlSpan Visit()
    {
        var e = _parser.Current!;
        _parser.MoveNext();
        var at = ((int)e.Start.Line, (int)e.Start.Column);
        if (e is not (MappingStart or SequenceStart))
            return _scalars[at] = new YamlSpan((int)e.Start.Index, (int)e.End.Index, InBrackets: false);
        var brackets = e is MappingStart { Style: MappingStyle.Flow } or SequenceStart { Style: SequenceStyle.Flow };
        var end = (int)e.End.Index;
        while (_parser.Current is not (MappingEnd or SequenceEnd))
            end = Visit().End;
        // The parser marks the closing bracket, not what follows it.
        if (brackets)
            end = (int)_parser.Current!.End.Index + 1;
        _parser.MoveNext();
        return (e is MappingStart ? _maps : _lists)[at] = new YamlSpan((int)e.Start.Index, end, brackets);
    }
}
