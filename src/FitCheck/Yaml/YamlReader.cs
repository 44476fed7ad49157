using FitCheck.Foundation.Files;
using FitCheck.Foundation.Problems;
using YamlDotNet.Core;
using YamlDotNet.Core.Events;

namespace FitCheck.Yaml;

/// <summary>
/// Reads one YAML document into nodes that keep line and column. Bounded in depth, in nodes and in aliases, so that no input can exhaust
/// the stack or the memory; a duplicate key is an error that names the first one.
/// </summary>
internal sealed class YamlReader
{
    private const int MaxDepth = 32;
    private const int MaxNodes = 200_000;

    private readonly string _file;
    private readonly int _firstLine;
    private readonly Parser _parser;
    private readonly ProblemList _problems;
    private readonly Dictionary<string, YamlNode> _anchors = new(StringComparer.Ordinal);
    private int _nodes;

    private YamlReader(SourceText source, ProblemList problems)
    {
        _file = source.File;
        _firstLine = source.FirstLine;
        _problems = problems;
        _parser = new Parser(new Scanner(new StringReader(source.Text), skipComments: true));
    }

    /// <summary>The document's root, or null when there is none or it can't be read; problems say why.</summary>
    public static YamlNode? Read(SourceText source, ProblemList problems) => FastYamlReader.Read(source) ?? ReadByLibrary(source, problems);

    /// <summary>
    /// The document's root, read by the YAML library whatever the file holds, or null when there is none or it can't be read; problems say
    /// why.
    /// </summary>
    internal static YamlNode? ReadByLibrary(SourceText source, ProblemList problems) =>
        new YamlReader(source, problems).ReadDocument(source);

    private YamlNode? ReadDocument(SourceText source)
    {
        try
        {
            _parser.Consume<StreamStart>();
            if (_parser.Accept<StreamEnd>(out _))
            {
                _problems.Error(new Location(source.File, _firstLine, 1), "the file is empty; `fitcheck new` writes a starting file",
                    ProblemKind.BrokenYaml);
                return null;
            }
            _parser.Consume<DocumentStart>();
            if (ReadNode(0) is not { } root)
                return null;
            _parser.Consume<DocumentEnd>();
            if (_parser.Accept<DocumentStart>(out var second))
            {
                _problems.Error(At(second.Start), "a second document starts here; FitCheck reads one document a file",
                    ProblemKind.BrokenYaml);
                return null;
            }
            return root;
        }
        catch (YamlException e)
        {
            _problems.Error(FirstTab(source, e) ?? At(e.Start), "not valid YAML: " + Plain(e.Message), ProblemKind.BrokenYaml);
            return null;
        }
        catch (Exception e) when (e is InvalidOperationException or ArgumentException)
        {
            // The library loses its place on some broken flow mappings, and throws at tags that are no addresses, instead of saying so;
            // where it was is the best that can be told.
            _problems.Error(At(_parser.Current?.End ?? Mark.Empty), "not valid YAML: it can't be parsed from about here on",
                ProblemKind.BrokenYaml);
            return null;
        }
    }

    private YamlNode? ReadNode(int depth)
    {
        var e = _parser.Current!;
        _parser.MoveNext();
        var at = At(e.Start);
        if (++_nodes > MaxNodes)
            return Refuse(at, $"the file has more than {MaxNodes} values");
        if (depth > MaxDepth)
            return Refuse(at, $"values are nested more than {MaxDepth} deep here");
        return e switch
        {
            AnchorAlias alias => ResolveAlias(alias, at),
            Scalar scalar => Remember(scalar, new YamlScalar(at, scalar.Value, scalar.Style is not ScalarStyle.Plain)),
            SequenceStart start => ReadList(start, at, depth),
            MappingStart start => ReadMap(start, at, depth),
            _ => Refuse(at, "expected a value here"),
        };
    }

    private YamlList? ReadList(SequenceStart start, Location at, int depth)
    {
        var items = new List<YamlNode>();
        while (!_parser.Accept<SequenceEnd>(out _))
        {
            if (ReadNode(depth + 1) is not { } item)
                return null;
            items.Add(item);
        }
        _parser.MoveNext();
        return (YamlList)Remember(start, new YamlList(at, items));
    }

    private YamlMap? ReadMap(MappingStart start, Location at, int depth)
    {
        var entries = new WrittenKeys();
        while (!_parser.Accept<MappingEnd>(out _))
        {
            if (ReadNode(depth + 1) is not { } keyNode)
                return null;
            if (keyNode is not YamlScalar key)
            {
                Refuse(keyNode.At, "expected a key, found " + keyNode.Kind);
                return null;
            }
            if (ReadNode(depth + 1) is not { } value)
                return null;
            if (entries.Find(key.Text) is { } first)
                _problems.Error(key.At, $"the key `{key.Text}` appears twice; the first is in line {first.KeyAt.Line}",
                    ProblemKind.BrokenYaml);
            else
                entries.Add(new YamlEntry(key.Text, key.At, value));
        }
        _parser.MoveNext();
        return (YamlMap)Remember(start, new YamlMap(at, entries.Entries));
    }

    // An alias repeats one scalar only: a repeated collection is how a small file grows to gigabytes.
    private YamlNode? ResolveAlias(AnchorAlias alias, Location at)
    {
        if (!_anchors.TryGetValue(alias.Value.Value, out var node))
            return Refuse(at, $"nothing is named `&{alias.Value.Value}` before this place");
        return node is YamlScalar scalar
            ? scalar with { At = at }
            : Refuse(at, $"`*{alias.Value.Value}` repeats a whole block; write it out, FitCheck repeats single values only");
    }

    private YamlNode Remember(NodeEvent e, YamlNode node)
    {
        if (!e.Anchor.IsEmpty)
            _anchors[e.Anchor.Value] = node;
        if (!e.Tag.IsEmpty && !e.Tag.IsNonSpecific)
            _problems.Error(node.At, $"the tag `{e.Tag.Value}` has no meaning here; leave it out", ProblemKind.BrokenYaml);
        return node;
    }

    private YamlNode? Refuse(Location at, string message)
    {
        _problems.Error(at, message, ProblemKind.BrokenYaml);
        return null;
    }

    private Location At(in Mark mark) => new(_file, (int)Math.Max(1, mark.Line) + _firstLine - 1, (int)Math.Max(1, mark.Column));

    // The scanner names the block; what a person looks for is the tab in it.
    private Location? FirstTab(SourceText source, YamlException e)
    {
        if (!e.Message.Contains("tab", StringComparison.Ordinal))
            return null;
        var lines = source.Text.Split('\n');
        for (var i = 0; i < lines.Length; i++)
        {
            var column = lines[i].IndexOf('\t', StringComparison.Ordinal);
            if (column >= 0 && string.IsNullOrWhiteSpace(lines[i][..column]))
                return new Location(_file, i + _firstLine, column + 1);
        }
        return null;
    }

    // The parser repeats the place in its messages; ours stands in front already.
    private static string Plain(string message)
    {
        var colon = message.IndexOf("): ", StringComparison.Ordinal);
        var text = message.StartsWith("(Line", StringComparison.Ordinal) && colon > 0 ? message[(colon + 3)..] : message;
        return text.Length > 0 ? char.ToLowerInvariant(text[0]) + text[1..].TrimEnd('.') : "it can't be parsed";
    }
}
