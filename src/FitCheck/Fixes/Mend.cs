using System.Text;
using FitCheck.Foundation.Files;
using FitCheck.Foundation.Problems;
using FitCheck.Yaml;

namespace FitCheck.Fixes;

/// <summary>One thing that was put right: where it stood, and what was done, as half a sentence.</summary>
internal sealed record Mended(Location At, string What);

/// <summary>A file as it should be, and what was done to it; no edits when it is so already.</summary>
internal sealed record MendedFile(byte[] Bytes, IReadOnlyList<Mended> Edits);

/// <summary>
/// Puts right what has one safe answer: the spelling of units, the order of the keys, spaces at line ends, a missing last line end. All
/// other bytes stay: comments, line ends, quotes, flow mappings, a byte order mark. Each step is read again, and one after which anything
/// but the meant values reads differently is not taken.
/// </summary>
internal static class Mend
{
    /// <summary>The file put right. One that can't be read as YAML is left alone; lint tells why.</summary>
    /// <param name="file">The name under which edits are told.</param>
    /// <param name="bytes">What is in it.</param>
    /// <param name="kind">Which schema it keeps: `driver`, `build`.</param>
    /// <param name="keyOrder">The keys of a starting file of this kind, in its order; empty to leave the order alone.</param>
    public static MendedFile Of(string file, byte[] bytes, string kind, IReadOnlyList<string> keyOrder)
    {
        ArgumentNullException.ThrowIfNull(bytes);
        var edits = new List<Mended>();
        var problems = new ProblemList();
        if (SourceText.Decode(file, bytes, problems) is not { } source || HasOtherLineEnds(source.Text) || Tree(source) is null)
            return new MendedFile(bytes, edits);
        var text = source.Text;
        text = Step(file, text, edits, Units);
        text = Step(file, text, edits, LineEnds.Mended);
        text = Step(file, text, edits, (lines, tree, done) => KeyOrder.Mended(lines, tree, keyOrder, done));
        return edits.Count == 0 ? new MendedFile(bytes, edits)
            : new MendedFile([.. bytes.AsSpan(0, bytes.Length - Encoding.UTF8.GetByteCount(source.Text)), .. Encoding.UTF8.GetBytes(text)],
            edits);

        IReadOnlyDictionary<Location, string> Units(TextLines lines, YamlNode tree, List<Mended> done) =>
            UnitEdits.Mended(lines, tree, kind, done);
    }

    /// <summary>The top-level keys of a YAML text, in its order; empty when it is none.</summary>
    public static IReadOnlyList<string> KeysOf(string text) =>
        Tree(new SourceText("", text)) is YamlMap map ? [.. map.Entries.Select(e => e.Key)] : [];

    private static string Step(string file, string text, List<Mended> edits,
        Func<TextLines, YamlNode, List<Mended>, IReadOnlyDictionary<Location, string>> step)
    {
        var before = Tree(new SourceText(file, text))!;
        var lines = new TextLines(text);
        var done = new List<Mended>();
        var meant = step(lines, before, done);
        if (done.Count == 0 || Tree(new SourceText(file, lines.Joined)) is not { } after || !SameData.Holds(before, after, meant))
            return text;
        edits.AddRange(done);
        return lines.Joined;
    }

    // YAML counts these as line ends too, editors mostly don't; the places of values can't be trusted then.
    private static bool HasOtherLineEnds(string text) =>
        text.AsSpan().ContainsAny('\u0085', '\u2028', '\u2029')
            || text.Replace("\r\n", "", StringComparison.Ordinal).Contains('\r', StringComparison.Ordinal);

    private static YamlNode? Tree(SourceText source)
    {
        var problems = new ProblemList();
        var root = YamlReader.Read(source, problems);
        return problems.HasErrors ? null : root;
    }
}
