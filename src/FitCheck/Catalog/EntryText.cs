using FitCheck.Foundation.Files;
using FitCheck.Foundation.Problems;
using FitCheck.Yaml;

namespace FitCheck.Catalog;

/// <summary>
/// The text of one entry: a file of its own, or an item of a file that lists several. An item is found by the dash that begins it, without
/// parsing, so that entries are read one by one, when asked for, wherever they stand.
/// </summary>
/// <param name="Kind">The kind of the folder.</param>
/// <param name="File">The name under which the file is reported.</param>
/// <param name="Bytes">The whole file.</param>
/// <param name="Start">Where the entry begins in it.</param>
/// <param name="Length">How many bytes it has.</param>
/// <param name="Line">The line of the file in which it begins, from 1.</param>
/// <param name="InList">True for an item of a list.</param>
internal sealed record EntryText(string Kind, string File, byte[] Bytes, int Start, int Length, int Line, bool InList)
{
    public ReadOnlySpan<byte> Text => Bytes.AsSpan(Start, Length);

    /// <summary>True when the other has the same words at the same place.</summary>
    public bool IsAs(EntryText other) =>
        Kind == other.Kind && File == other.File && Line == other.Line && InList == other.InList && Text.SequenceEqual(other.Text);

    /// <summary>
    /// The entries of a file. A file whose first line of content begins with a dash is a list; every line that begins with a dash at the
    /// same depth begins an entry.
    /// </summary>
    public static IEnumerable<EntryText> Of(string kind, string file, byte[] bytes) => Of(kind, file, bytes, bytes.Length, 1);

    /// <summary>
    /// The same of the first bytes of an array, which begin in a line of the file: all of it, or some whole items of a list.
    /// </summary>
    public static IEnumerable<EntryText> Of(string kind, string file, byte[] bytes, int length, int line)
    {
        if (FirstItem(bytes.AsSpan(0, length)) is not var (_, depth))
        {
            yield return new EntryText(kind, file, bytes, 0, length, line, InList: false);
            yield break;
        }
        var (start, startLine) = (-1, 0);
        for (var at = Mark(bytes.AsSpan(0, length)); at < length; line++)
        {
            if (IsItem(bytes.AsSpan(0, length), at, depth))
            {
                if (start >= 0)
                    yield return new EntryText(kind, file, bytes, start, at - start, startLine, InList: true);
                (start, startLine) = (at, line);
            }
            at = AfterLine(bytes.AsSpan(0, length), at);
        }
        yield return new EntryText(kind, file, bytes, start, length - start, startLine, InList: true);
    }

    /// <summary>
    /// Where the last item of a list begins for certain, when more of the list may follow the text; 0 when no item stands before it, and
    /// for no list.
    /// </summary>
    public static int LastItem(ReadOnlySpan<byte> text)
    {
        if (FirstItem(text) is not var (first, depth))
            return 0;
        for (var end = text.LastIndexOf((byte)'\n'); end >= first; end = text[..end].LastIndexOf((byte)'\n'))
        {
            // Behind the dash it takes one letter to see that it is one.
            if (end + 1 + depth + 1 < text.Length && IsItem(text, end + 1, depth))
                return end + 1;
        }
        return 0;
    }

    /// <summary>
    /// The id as it is written in the first line of the entry, or in a later one that begins as far in; null when the entry has to be
    /// parsed for it.
    /// </summary>
    public string? WrittenId() => IdLine() is var (_, at, column) ? Word(Text[(at + column + 4)..]) : null;

    /// <summary>False when the word surely stands nowhere in the entry; behind a backslash it might be written in another way.</summary>
    public bool MayHave(ReadOnlySpan<byte> word) => Text.IndexOf(word) >= 0 || Text.Contains((byte)'\\');

    /// <summary>
    /// How many of its lines, without what indents them, are among those known by a digest that is good enough for a guess.
    /// </summary>
    public int CountLines(HashSet<ulong> known, bool add = false)
    {
        var count = 0;
        for (var at = 0; at < Length;)
        {
            var next = AfterLine(Text, at);
            var line = Text[at..next].Trim(" \r\n"u8);
            at = next;
            if (line.IsEmpty)
                continue;
            // FNV-1a, 64 bits.
            var digest = 14695981039346656037UL;
            foreach (var letter in line)
                digest = (digest ^ letter) * 1099511628211UL;
            if (add ? known.Add(digest) : known.Contains(digest))
                count++;
        }
        return count;
    }

    /// <summary>
    /// True when the key, given with its colon, surely is one of the entry's own: it begins a line as far in as the id does.
    /// </summary>
    public bool HasKey(ReadOnlySpan<byte> key)
    {
        if (IdLine() is not var (_, _, column))
            return false;
        for (var at = AfterLine(Text, 0); at < Length; at = AfterLine(Text, at))
        {
            var rest = Text[at..];
            if (rest.Length > column && rest[column..].StartsWith(key) && rest[..column].IndexOfAnyExcept((byte)' ') < 0)
                return true;
        }
        return false;
    }

    /// <summary>Where the id is written; where the entry begins, when that can't be told without parsing.</summary>
    public Location IdPlace() => IdLine() is var (line, _, column) ? new Location(File, line, column + 5) : new Location(File, Line, 1);

    private (int Line, int At, int Column)? IdLine()
    {
        var text = Text;
        var column = 0;
        if (InList)
        {
            while (column < text.Length && text[column] is (byte)' ' or (byte)'-')
                column++;
        }
        for (int at = 0, line = Line; at < text.Length; at = AfterLine(text, at), line++)
        {
            var rest = text[at..];
            if (rest.Length > column && rest[column..].StartsWith("id: "u8)
                && ((at == 0 && InList) || rest[..column].IndexOfAnyExcept((byte)' ') < 0))
                return (line, at, column);
        }
        return null;
    }

    /// <summary>The entry's node; null when it can't be read, which problems tell.</summary>
    public YamlNode? Parse(ProblemList problems)
    {
        if (SourceText.Decode(File, Text, problems) is not { } source
            || YamlReader.Read(source with { FirstLine = Line }, problems) is not { } root)
            return null;
        return InList && root is YamlList { Items: [var item] } ? item : root;
    }

    // What stands alone in the line, in the letters of an id.
    private static string? Word(ReadOnlySpan<byte> text)
    {
        var end = text.IndexOfAnyExceptInRange((byte)'-', (byte)'z');
        var rest = end < 0 ? [] : text[end..AfterLine(text, end)].TrimEnd("\r\n "u8);
        return end != 0 && rest.IsEmpty ? System.Text.Encoding.ASCII.GetString(end < 0 ? text : text[..end]) : null;
    }

    // Where the list begins, and how far in its dashes stand.
    private static (int At, int Depth)? FirstItem(ReadOnlySpan<byte> text)
    {
        for (var at = Mark(text); at < text.Length; at = AfterLine(text, at))
        {
            var line = text[at..AfterLine(text, at)];
            var depth = line.IndexOfAnyExcept((byte)' ');
            if (depth < 0 || line[depth] is (byte)'\n' or (byte)'\r' or (byte)'#' || line.TrimEnd("\r\n "u8).SequenceEqual("---"u8))
                continue;
            return IsItem(text, at, depth) ? (at, depth) : null;
        }
        return null;
    }

    private static bool IsItem(ReadOnlySpan<byte> text, int at, int depth)
    {
        var dash = at + depth;
        return dash < text.Length && text[dash] == (byte)'-'
            && (dash + 1 == text.Length || text[dash + 1] is (byte)' ' or (byte)'\n' or (byte)'\r')
            && text[at..dash].IndexOfAnyExcept((byte)' ') < 0;
    }

    // A byte order mark is no content.
    private static int Mark(ReadOnlySpan<byte> text) => text.StartsWith((ReadOnlySpan<byte>)[0xEF, 0xBB, 0xBF]) ? 3 : 0;

    private static int AfterLine(ReadOnlySpan<byte> text, int at)
    {
        var end = text[at..].IndexOf((byte)'\n');
        return end < 0 ? text.Length : at + end + 1;
    }
}
